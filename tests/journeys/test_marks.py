"""Marks judged, colours chosen, a mark looked up."""

import datetime
from pathlib import Path

import pytest

from paradestate.core.certainty import Exact
from paradestate.core.choice import Choice
from paradestate.core.mark.mark_finding import Marked
from paradestate.core.mark.reading import Doubt
from paradestate.journeys.marks import AskedMarks, MarksAnswer, marks, wanted_of
from paradestate.journeys.memory import Memory
from tests.forces import EXAMPLES

TODAY = datetime.date(2026, 3, 1)
HEAD = """\
format: 1
title: Small
figures: {man: {}}
stands: {rifle: {base: none, figures: {man: 4}}}
raise: {formation: top}
"""
THREE = HEAD + "formations: {top: {parts: {company: 3}}, company: {parts: {rifle: 2}}}\n"


def asked(folder: Path, **asked: object) -> MarksAnswer:
    return marks(folder, today=TODAY, choice=Choice(), asked=AskedMarks(**asked))  # type: ignore[arg-type]


def written(folder: Path, text: str) -> Path:
    (folder / "force.yaml").write_text(text, encoding="utf-8")
    return folder


def marked(answer: MarksAnswer) -> Marked:
    assert answer.marked is not None
    return answer.marked


def stops_of(answer: MarksAnswer) -> list[str]:
    return [each.message for each in answer.checked.findings if each.code == "unknown-colour"]


def test_the_example_is_judged_and_nothing_chosen() -> None:
    answer = asked(EXAMPLES / "marenz")
    assert len(marked(answer).marks.by_mark) == 17
    assert (answer.proposal, answer.reading) == (None, None)


def test_the_best_four_of_the_nine_are_those_of_the_example() -> None:
    """Story of the design: colour-blind safe."""
    answer = asked(EXAMPLES / "marenz", choose=4)
    assert answer.proposal is not None
    assert answer.proposal.choice.certainty == Exact()
    assert answer.proposal.choice.least == 3_400
    four = ("royal blue", "mid yellow", "sky blue", "brown")
    assert answer.proposal.lists == {"company": four}
    assert answer.proposal.after == answer.checked.force.marks


@pytest.mark.parametrize("name", ["kelmar", "ommerath", "sillen", "vellmark"])
def test_every_example_can_have_its_colours_chosen(name: str) -> None:
    answer = asked(EXAMPLES / name, choose=0)
    assert answer.proposal is not None
    assert all(marked(answer).marks.marks) or not marked(answer).marks.companies
    made = answer.proposal.marked.marks
    assert all(made.marks.values())
    assert all(len(units) == 1 for units in made.by_mark.values())


def test_colours_are_shared_out_among_several_formations() -> None:
    answer = asked(EXAMPLES / "sillen", choose=5)
    assert wanted_of(marked(answer)) == {"bridge company": 2, "town company": 1}
    assert answer.proposal is not None
    lists = answer.proposal.lists
    assert [len(lists[name]) for name in ("bridge company", "town company")] == [2, 3]
    one = asked(EXAMPLES / "sillen", choose=1).proposal
    assert one is not None
    assert list(one.lists) == ["bridge company"]


def test_colours_are_chosen_from_those_at_hand_and_from_new_ones(tmp_path: Path) -> None:
    folder = written(tmp_path, THREE)
    hand = ("black", "bone = e3dac9", "", "sky blue", "violet")
    answer = asked(folder, choose=3, at_hand=hand)
    assert answer.proposal is not None
    assert answer.proposal.values == {"black": "202020", "bone": "E3DAC9", "violet": "7B4FA3"}


def test_who_has_a_colour_that_stays_keeps_it(tmp_path: Path) -> None:
    marks_now = "marks: {company: {colours: [violet, orange, bone]}, colours: {bone: E3DAC9}}\n"
    folder = written(tmp_path, THREE + marks_now)
    answer = asked(folder, choose=3, at_hand=("sky blue", "black", "orange"))
    assert answer.proposal is not None
    assert answer.proposal.lists == {"company": ("sky blue", "orange", "black")}
    assert answer.proposal.after.colours["bone"] == "E3DAC9"


def test_the_enemys_colours_are_kept_away_from(tmp_path: Path) -> None:
    folder = written(tmp_path, THREE + "opponent: {colours: [sky blue, black]}\n")
    answer = asked(folder, choose=3)
    assert answer.proposal is not None
    assert not {"sky blue", "black"} & set(answer.proposal.choice.colours)
    assert all(each.code != "enemy-alike" for each in answer.checked.findings)


@pytest.mark.parametrize(
    ("hand", "said"),
    [
        (("sky bleu",), "Nothing says how 'sky bleu' looks."),
        (("bone=E3DA",), "Nothing says how 'bone=E3DA' looks."),
        (("brown=123456", "black"), "brown is 6B4A2B in the folder, and 123456 here."),
        (tuple(f"c{n}=0000{n}" for n in range(10, 71)), "61 colours are at hand."),
        (("black", "orange"), "3 are to be chosen of 2 colours at hand."),
    ],
)
def test_what_cant_be_taken_is_told_and_nothing_chosen(hand: tuple[str, ...], said: str) -> None:
    answer = asked(EXAMPLES / "marenz", choose=3, at_hand=hand)
    assert stops_of(answer) == [said]
    assert answer.proposal is None


def test_doubts_are_about_the_colours_chosen_where_some_are(tmp_path: Path) -> None:
    now = "marks: {company: {colours: [brick red, leaf green, brown]}}\n"
    folder = written(tmp_path, THREE + now)
    assert any(each.code == "colours-alike" for each in asked(folder).checked.findings)
    chosen = asked(folder, choose=3)
    assert all(each.code != "colours-alike" for each in chosen.checked.findings)
    few = asked(folder, choose=2)
    assert any(each.code == "marks-too-few" for each in few.checked.findings)


def test_a_mark_is_looked_up() -> None:
    found = asked(EXAMPLES / "marenz", read="yellow, three bars").reading
    assert found is not None
    assert found.doubt is Doubt.NONE
    assert found.bearers[0].unit.name == "No 2 Company / 3 Platoon"


def test_a_force_that_cant_be_counted_has_no_marks(tmp_path: Path) -> None:
    folder = written(tmp_path, HEAD)
    answer = asked(folder, choose=3)
    assert (answer.marked, answer.count) == (None, None)
    assert answer.checked.is_stopped


def test_what_was_compared_is_kept_in_mind() -> None:
    memory = Memory()
    one, other = (
        marks(EXAMPLES / "marenz", today=TODAY, choice=Choice(), asked=AskedMarks(), memory=memory)
        for _ in range(2)
    )
    assert one.marked is other.marked
