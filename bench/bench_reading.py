"""How long it takes to read and check a folder of 25,000 lines.

Conditions: four files of invented troops in the usual mix of block and brace style, sound but for
remarks; files already in the disk cache; one process, at least five rounds.
"""

import datetime
from collections.abc import Iterator
from pathlib import Path

import pytest
from pytest_benchmark.fixture import BenchmarkFixture

from paradestate.core.finding import Level
from paradestate.journeys.check import checked

LINES = 25_000
ON = datetime.date(2026, 3, 5)

FIGURES = 600
STANDS = 1_000
PLATOONS = 1_500
COMPANIES = 500
SOURCES = 35
PACKS = 60
ENTRIES = 200


def figures() -> Iterator[str]:
    yield "figures:"
    for number in range(FIGURES):
        yield f"  figure {number}: {{height: {10 + number % 5} mm, footprint: {5 + number % 3} mm}}"


BASES = ("40 x 20 mm", "40 x 30 mm", "40 x 40 mm", "60 x 20 mm", "60 x 50 mm")
DISCS = ("20 mm disc", "30 mm disc", "40 mm disc")


def stands() -> Iterator[str]:
    """Half in block style, half in braces; each is known by a figure of its own."""
    yield "stands:"
    for number in range(STANDS):
        figure = number % FIGURES
        if number % 2:
            yield f"  stand {number}:"
            yield f"    base: {BASES[(number + number // FIGURES) % len(BASES)]}"
            yield "    called: Section"
            yield f"    men: {8 + number % 5}"
            yield f"    figures: {{figure {figure}: 4}}"
            yield f"    shows: [figure {figure}]"
        else:
            yield (
                f"  stand {number}: {{base: {DISCS[(number + number // FIGURES) % len(DISCS)]}, "
                f"men: 5, figures: {{figure {figure}: 2}}, shows: [figure {figure}]}}"
            )


def formations() -> Iterator[str]:
    yield "formations:"
    for number in range(PLATOONS):
        yield f"  platoon {number}:"
        yield "    echelon: platoon"
        yield "    arm: infantry"
        yield "    parts:"
        yield f"      - {{of: stand {number % STANDS}, number: 3, until: 1942-05}}"
        yield f"      - {{of: stand {number % STANDS}, number: 2, from: 1942-06}}"
        yield f"      - {{of: stand {(number + 7) % STANDS}, number: 1, need: wished}}"
        yield ""
    for number in range(COMPANIES):
        yield f"  company {number}:"
        yield "    echelon: company"
        yield f"    parts: {{platoon {3 * number}: 3, platoon {3 * number + 1}: 2}}"
        yield f"    by hand: company {number} marches last"
    yield "  brigade:"
    yield "    echelon: brigade"
    yield "    parts:"
    for number in range(COMPANIES):
        yield f"      company {number}: 1"
        yield f"      platoon {3 * number + 2}: 1"
    yield "raise: {formation: brigade, date: 1943}"


def sources() -> Iterator[str]:
    yield "sources:"
    for source in range(SOURCES):
        yield f"  source {source}:"
        yield "    currency: GBP"
        yield "    carriage: {0: 5.00, 40: 0}"
        yield "    packs:"
        for pack in range(PACKS):
            figure = (source * PACKS + pack) % FIGURES
            yield (
                f"      P{pack}: {{name: box of {figure}, price: {4 + pack % 9}.50, "
                f"holds: {{figure {figure}: 10}}}}"
            )
    yield "stock:"
    for number in range(FIGURES):
        yield f"  figure {number}: {{painted: {number % 7}, assembled: {number % 3}}}"


def supporting_troops() -> Iterator[str]:
    yield "games:"
    yield "  attack: {allowance: 18 + 2d6, posture: attack}"
    yield "supporting troops:"
    for number in range(ENTRIES):
        yield f"  entry {number}:"
        yield "    held at: division"
        yield "    cost: {1: 4, 2: 7, 3: 10}"
        yield f"    each: {{stand {number}: 1}}"
        yield f"    bars: [entry {(number + 1) % ENTRIES}]"
        yield "    availability:"
        yield "      roll: 1d12"
        yield "      allows: {1-2: 0, 3-8: 1, 9-12: all}"
        yield "    when refused: points kept"
        yield ""


def notes(number: int) -> Iterator[str]:
    """So many lines of notes, as owners leave them."""
    for line in range(number):
        yield f"# note {line}: nobody has looked at the buttons yet"


def folder_in(path: Path) -> Path:
    """A folder of exactly LINES lines."""
    files = {
        "1-troops.yaml": ["format: 1", "title: Bench", *figures(), *stands()],
        "2-formations.yaml": list(formations()),
        "3-prices.yaml": list(sources()),
        "4-points.yaml": list(supporting_troops()),
    }
    missing = LINES - sum(map(len, files.values()))
    assert 0 <= missing < LINES // 4
    files["4-points.yaml"].extend(notes(missing))
    for name, lines in files.items():
        (path / name).write_text("\n".join(lines) + "\n", encoding="utf-8")
    return path


@pytest.fixture(scope="module")
def folder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    return folder_in(tmp_path_factory.mktemp("force"))


def bench_reading(benchmark: BenchmarkFixture, folder: Path) -> None:
    """Wall time from files to every finding."""
    read = benchmark(lambda: checked(folder, today=ON))
    assert len(read.force.formations) == PLATOONS + COMPANIES + 1
    assert {found.level for found in read.findings} <= {Level.WARN, Level.REMARK}
