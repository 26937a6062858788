"""The command `bench --supplies`."""

from pathlib import Path

import pytest

from paradestate.core.sentence.caution import FIRST
from tests.cli.calling import call
from tests.forces import EXAMPLES

MARENZ = EXAMPLES / "marenz"
DONE = """\
format: 1
title: Done
figures: {rifleman: {height: 10 mm}}
stands: {section: {base: none, figures: {rifleman: 1}}}
formations: {top: {parts: {section: 1}}}
raise: {formation: top}
bench: {minutes: {foot: {painted: 1}}}
"""


@pytest.fixture
def done(tmp_path: Path) -> Path:
    """A force of one figure, which stands on no base."""
    (tmp_path / "force.yaml").write_text(DONE, encoding="utf-8")
    return tmp_path


def test_what_the_work_uses_up_for_people() -> None:
    answer = call("bench", MARENZ, "--supplies")
    assert answer.status == 0
    for line in (
        "Supplies for 9 batches: 37 stands.",
        "40 x 20 mm      28          31              70",
        "Ground to cover: 279 cm\N{SUPERSCRIPT TWO}, with 10% spare 307 cm\N{SUPERSCRIPT TWO}.",
        "1 sheet of 297 x 210 mm is enough for all bases with their spares: no fewer would do.",
        "The paint is a guess until you have measured (common practice, no source):",
        "undercoat            guess         125   8.1 ml      8.9 ml        1",
        "Exact: the bases; discs with pi to 14 decimals.",
    ):
        assert line in answer.out
    said = " ".join(answer.out.split())
    assert said.count(FIRST) == 1


def test_as_far_as_a_milestone() -> None:
    answer = call("bench", MARENZ, "--supplies", "--up-to", "smallest legal force")
    assert "Supplies for 6 batches until the smallest legal force: 21 stands." in answer.out


def test_the_same_for_programs() -> None:
    document = call("bench", MARENZ, "--supplies", "--json").document
    assert (document["batches"], document["stands"], document["bottle"]) == (9, 37, "17")
    assert [each["for"] for each in document["paint"]] == ["undercoat", "colour", "varnish"]
    assert document["paint"][1]["colour"] is None
    assert {each["base"]: each["number"] for each in document["bases"]} == {
        "40 mm disc": 1,
        "30 mm disc": 6,
        "40 x 20 mm": 28,
    }
    assert document["sheet"] == {
        "size": "297 x 210 mm",
        "enough": 1,
        "least": 1,
        "too_large": [],
        "certainty": "exact",
    }
    assert document["cautions"]["first"] == FIRST


def test_without_bases_and_paint_there_are_no_tables(done: Path) -> None:
    assert "Bases" not in call("bench", done, "--supplies").out
    force = (done / "force.yaml").read_text(encoding="utf-8")
    (done / "force.yaml").write_text(force.replace("{height: 10 mm}", "{}"), encoding="utf-8")
    answer = call("bench", done, "--supplies")
    assert "Bottles" not in answer.out
    assert "[painted-surface-unknown]" in answer.err
    assert "Left out, for no size is given: 1 rifleman." in answer.out


def test_a_base_larger_than_the_sheet_comes_from_none(done: Path) -> None:
    force = (done / "force.yaml").read_text(encoding="utf-8")
    large = force.replace("base: none", "base: 400 x 300 mm")
    (done / "force.yaml").write_text(large, encoding="utf-8")
    answer = call("bench", done, "--supplies")
    assert "Larger than the sheet, and so left out: 400 x 300 mm." in answer.out
    assert answer.out.count(" none\n") == 1


def test_a_bench_with_nothing_to_do_uses_nothing_up(done: Path) -> None:
    (done / "stock.yaml").write_text("stock: {rifleman: {based: 1}}\n", encoding="utf-8")
    answer = call("bench", done, "--supplies")
    assert answer.out.endswith("Nothing is left to do at the bench, so nothing is used up.\n")


def test_a_milestone_that_is_none_is_a_stop() -> None:
    answer = call("bench", MARENZ, "--supplies", "--up-to", "tomorrow")
    assert (answer.status, answer.out) == (1, "")
    assert "There is no milestone 'tomorrow'. [milestone-unknown]" in answer.err


@pytest.mark.parametrize(
    "words",
    [
        ("--supplies", "--cards"),
        ("--by-kind", "--cards"),
        ("--up-to", "x"),
        ("--keep", "--supplies"),
        ("--calendar", "x.ics", "--cards"),
    ],
)
def test_one_thing_is_shown_at_a_time(words: tuple[str, ...]) -> None:
    assert call("bench", MARENZ, *words).status == 2
