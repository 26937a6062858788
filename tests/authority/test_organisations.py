"""Published organisations, rolled up and compared at each level.

The figures and their sources stand in `organisations/SOURCE.txt`; each set is written as a force
folder beside it. Strength figures are facts; no text was copied.
"""

import csv
from dataclasses import dataclass
from pathlib import Path

import pytest

from paradestate.core.establishment import establishment
from paradestate.core.finding import Level
from paradestate.core.ratio import men_of_nodes
from paradestate.core.structure import structure
from paradestate.text.folder import read_folder

FOLDER = Path(__file__).parent / "organisations"


@dataclass(frozen=True, slots=True, kw_only=True)
class Row:
    """One body of a published set."""

    path: tuple[str, ...]
    number: int
    men: int


def published() -> dict[str, list[Row]]:
    sets: dict[str, list[Row]] = {}
    with (FOLDER / "organisations.csv").open(encoding="utf-8", newline="") as file:
        for line in csv.DictReader(file):
            row = Row(
                path=tuple(line["path"].split("/")),
                number=int(line["count_per_parent"]),
                men=int(line["total_each"]),
            )
            sets.setdefault(line["set"], []).append(row)
    return sets


SETS = published()


def folder_of(name: str) -> Path:
    return FOLDER / name.lower().replace("_", "-")


def called(path: tuple[str, ...], name: str) -> bool:
    """Whether a formation's name is that of a published body: its own, or with its parent's."""
    return name in {path[-1], " ".join(path[-2:])}


def test_eight_sets_are_published() -> None:
    assert len(SETS) == 8
    assert all(folder_of(name).is_dir() for name in SETS)


@pytest.mark.parametrize("name", SETS)
def test_men_add_up_at_every_level(name: str) -> None:
    force = read_folder(folder_of(name)).force
    settled, findings = structure(force)
    assert settled is not None
    assert not findings
    men = {formation: total for (formation, _), total in men_of_nodes(force, settled).items()}
    compared = set()
    for row in SETS[name]:
        exact = [formation for formation in men if formation == " ".join(row.path[-2:])]
        formation = exact[0] if exact else row.path[-1]
        assert called(row.path, formation)
        assert men[formation].least == men[formation].most == row.men, row.path
        compared.add(formation)
    assert compared == set(men)


@pytest.mark.parametrize("name", SETS)
def test_printed_totals_raise_no_finding_and_bodies_are_as_many_as_published(name: str) -> None:
    reading = read_folder(folder_of(name))
    assert not reading.findings
    answer, findings = establishment(reading.force)
    assert answer is not None
    assert not findings
    root = SETS[name][0]
    assert answer.must.men.least == root.men
    times: dict[tuple[str, ...], int] = {(): 1}
    expected: dict[str, int] = {}
    for row in SETS[name]:
        times[row.path] = row.number * times.get(row.path[:-1], 1)
        short = " ".join(row.path[-2:])
        formation = short if short in reading.force.formations else row.path[-1]
        expected[formation] = expected.get(formation, 0) + times[row.path]
    assert answer.number_of == expected


def test_the_battalion_of_july_1943_is_printed_ten_men_too_many() -> None:
    """126 + 3 x 193 + 156 = 861, against a printed 871 (secondary account)."""
    reading = read_folder(FOLDER / "us-july-1943-battalion")
    answer, findings = establishment(reading.force)
    assert answer is not None
    assert answer.must.men.least == 861
    assert [(found.code, found.level) for found in findings] == [("men-do-not-add-up", Level.WARN)]
    assert "10 short of the 871" in findings[0].message
    assert findings[0].place.line == 10


def test_27_rifle_companies_of_192() -> None:
    """US Army tables of March 1943: 27 x 192 = 5,184 (AGF Study No. 8, chapter 12)."""
    reading = read_folder(FOLDER / "us-march-1943-rifle-companies")
    answer, _ = establishment(reading.force)
    assert answer is not None
    assert answer.must.men.least == 5184
    assert answer.number_of["rifle squad"] == 27 * 9
