"""Folders that tests of pages work on."""

from tests.journeys.conftest import club, guard

__all__ = ["club", "guard"]
