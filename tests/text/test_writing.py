"""Forces written and read again."""

from dataclasses import fields
from random import Random

import pytest
import yaml
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from paradestate.core.bench import Bench
from paradestate.core.ceiling import ceiling
from paradestate.core.establishment import establishment
from paradestate.core.figure import FigureKind
from paradestate.core.finding import stops
from paradestate.core.force import Aim, Force, Marks, Raise
from paradestate.core.formation import Formation, Part
from paradestate.core.game import Game, Grade, Reserves
from paradestate.core.scenario import Arrival
from paradestate.core.source import Pack, Source
from paradestate.core.stand import StandPattern
from paradestate.core.strength import strength
from paradestate.core.support.entry import Entry, GroupLimit, Limit
from paradestate.core.table import Opponent, Table, Tray
from paradestate.text.folder import read_files
from paradestate.text.writing import PlainDumper, force_text
from tests.forces import marenz
from tests.text import drawn_entries as drawn
from tests.text.drawn_values import COUNT
from tests.text.forces import forces

WORLD = drawn.World(
    figures=["f"],
    stands=["s"],
    formations=["c"],
    entries=["e"],
    stages=["raw", "done"],
    grades={"g": ["low", "high"]},
)


def read_again(text: str) -> Force:
    reading = read_files({"force.yaml": text.encode()})
    assert stops(reading.findings) == (), text
    return reading.force


def test_the_example_reads_the_same_when_it_is_written() -> None:
    assert read_again(force_text(marenz())) == marenz()


@pytest.mark.slow
@settings(max_examples=12, suppress_health_check=[HealthCheck.too_slow, HealthCheck.data_too_large])
@given(forces())
def test_any_force_reads_the_same_when_it_is_written(force: Force) -> None:
    assert read_again(force_text(force)) == force


def test_line_ends_of_other_systems_change_nothing() -> None:
    assert read_again(force_text(marenz()).replace("\n", "\r\n")) == marenz()


DRAWN_FROM: dict[type, drawn.Fields] = {
    FigureKind: drawn.figure(WORLD),
    StandPattern: drawn.stand(WORLD),
    Part: drawn.part(WORLD),
    Formation: drawn.formation(WORLD),
    Raise: drawn.raised(WORLD),
    Source: drawn.source(COUNT),
    Pack: drawn.pack(WORLD, COUNT),
    Game: drawn.game(WORLD),
    Grade: drawn.grade(["low"]),
    Arrival: drawn.ARRIVAL,
    Limit: drawn.limit(WORLD),
    Entry: drawn.entry(WORLD),
    GroupLimit: drawn.GROUP_LIMIT,
    Reserves: drawn.reserves(WORLD),
    Bench: drawn.bench(WORLD),
    Marks: drawn.marks(WORLD),
    Opponent: drawn.OPPONENT,
    Tray: drawn.tray(),
    Table: drawn.TABLE,
    Aim: drawn.AIM,
}


@pytest.mark.parametrize("record", DRAWN_FROM, ids=lambda record: record.__name__)
def test_the_lot_leaves_no_field_out(record: type) -> None:
    """What a record is drawn from without its name, or with what hangs below it, is drawn apart."""
    apart = {"name", "group", "currency", "packs"}
    assert {field.name for field in fields(record)} - apart == set(DRAWN_FROM[record]) - apart


def shuffled(value: object, lot: Random) -> object:
    """The same mappings with their keys in another order; lists keep theirs."""
    if isinstance(value, dict):
        keys = list(value)
        lot.shuffle(keys)
        return {key: shuffled(value[key], lot) for key in keys}
    return [shuffled(item, lot) for item in value] if isinstance(value, list) else value


@settings(max_examples=12)
@given(st.randoms(use_true_random=False))
def test_a_permuted_file_gives_the_same_answers(lot: Random) -> None:
    written = yaml.load(force_text(marenz()), Loader=yaml.BaseLoader)  # noqa: S506 - text only
    force = read_again(yaml.dump(shuffled(written, lot), Dumper=PlainDumper, sort_keys=False))
    made, again = establishment(marenz())[0], establishment(force)[0]
    assert made is not None
    assert again is not None
    assert again.must == made.must
    assert again.wished == made.wished
    assert again.rollup.chains == made.rollup.chains
    assert strength(force, again).deficiency == strength(marenz(), made).deficiency
    assert ceiling(force, again) == ceiling(marenz(), made)
