"""Folders that tests of journeys work on."""

from pathlib import Path

import pytest

FERRY_GUARD = """\
format: 1
title: Ferry guard
figures:
  rifleman: {}
  boat: {sort: vehicle}
stands:
  rifle section: {base: 40 x 20 mm, figures: {rifleman: 4}}
  boat: {base: none, footprint: 20 x 60 mm, figures: {boat: 1}}
formations: {guard: {parts: {rifle section: 2, boat: 1}}}
raise: {formation: guard}
stock:
  rifleman: {in packet: 8, painted: 2}
"""

TOWN_WATCH = """\
format: 1
title: Town watch
figures: {rifleman: {}}
stands: {rifle section: {base: 40 x 20 mm, figures: {rifleman: 4}}}
formations: {watch: {parts: {rifle section: 2}}}
raise: {formation: watch}
stock:
  rifleman: {painted: 1}
stock stands:
  rifle section: {based: 1}
"""


@pytest.fixture
def guard(tmp_path: Path) -> Path:
    """A small lone force: 10 riflemen owned of 8 wanted, and no boat."""
    return written(tmp_path / "guard", FERRY_GUARD)


@pytest.fixture
def club(tmp_path: Path) -> Path:
    """A collection of two forces that share their riflemen."""
    written(tmp_path / "club" / "guard", FERRY_GUARD)
    written(tmp_path / "club" / "watch", TOWN_WATCH)
    return tmp_path / "club"


def written(folder: Path, text: str) -> Path:
    """A folder with one file in it."""
    folder.mkdir(parents=True)
    (folder / "force.yaml").write_text(text, encoding="utf-8")
    return folder
