"""Folders that tests of pages work on, and templates that are compiled once for all of them."""

from collections.abc import Iterator
from functools import cache

import pytest

from paradestate.web import application
from tests.journeys.conftest import club, guard

__all__ = ["club", "guard"]


@pytest.fixture(scope="session", autouse=True)
def _templates_compiled_once() -> Iterator[None]:
    """Else every site would compile every page anew, and that takes longer than the tests."""
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(application, "_templates", cache(application._templates))  # noqa: SLF001
        yield
