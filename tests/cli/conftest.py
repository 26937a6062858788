"""Folders that tests of commands work on."""

import shutil
from pathlib import Path

import pytest

from tests.forces import EXAMPLES


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    """A copy of the bundled example."""
    copy = tmp_path / "marenz"
    shutil.copytree(EXAMPLES / "marenz", copy)
    return copy
