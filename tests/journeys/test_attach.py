"""Giving the weapon sections of a plan their hosts."""

import datetime
from fractions import Fraction
from pathlib import Path

import pytest

from paradestate.core.certainty import Exact
from paradestate.core.choice import Choice
from paradestate.core.finding import Level, stops
from paradestate.core.support.attachment import INDEPENDENT
from paradestate.journeys.attach import AskedToAttach, AttachAnswer, attach, write_worths
from paradestate.journeys.spreadsheet import CannotWriteError
from tests.forces import EXAMPLES
from tests.journeys.conftest import written

TODAY = datetime.date(2026, 3, 1)
MARENZ = EXAMPLES / "marenz"
PLAN = "machine-gun platoon=3, pioneers(flame)=2, light tanks=2"
OWN_PLAN = """\
format: 1
title: Test
stands: {a: {base: none}}
formations: {top: {parts: {platoon: 3}}, platoon: {parts: {a: 1}}}
raise: {formation: top}
games: {evening: {allowance: 12, posture: attack, plan: [guns=4]}}
supporting troops: {guns: {cost: {4: 2, 900: 8}, attach: {to: platoon, most per host: 1}}}
"""


def asked(
    plan: str = PLAN,
    *,
    folder: Path = MARENZ,
    game: str | None = "whole-day attack",
    worths: Path | None = None,
    must: tuple[str, ...] = (),
) -> AttachAnswer:
    return attach(
        folder,
        today=TODAY,
        choice=Choice(game=game),
        grades={},
        asked=AskedToAttach(plan=plan, worths=worths, must=must),
    )


def codes(answer: AttachAnswer, *, level: Level = Level.STOP) -> list[str]:
    return [found.code for found in answer.checked.findings if found.level is level]


def test_every_section_has_a_host_and_what_is_not_attached_is_left_out() -> None:
    answer = asked()
    assert answer.best is not None
    assert (answer.best.total, answer.best.certainty) == (Fraction(5), Exact())
    assert list(answer.best.attached.values())[:4] == [
        "No 1 Company / 1 Platoon",
        "No 1 Company / 2 Platoon",
        "No 1 Company / 3 Platoon",
        "No 2 Company / 1 Platoon",
    ]
    assert len(answer.moves["pioneers(flame) 1"]) == 12


def test_the_plan_of_the_game_is_taken_where_none_is_typed(tmp_path: Path) -> None:
    answer = asked("", folder=written(tmp_path / "own", OWN_PLAN), game=None)
    assert answer.best is not None
    assert (answer.game, answer.best.total) == ("evening", Fraction(3))
    assert answer.best.attached["guns 4"] == INDEPENDENT


def test_where_all_must_be_attached_it_is_said_who_shares_too_few_places(tmp_path: Path) -> None:
    """Worked by hand."""
    folder = written(tmp_path / "own", OWN_PLAN)
    for must in (("all",), ("guns",)):
        answer = asked("", folder=folder, game=None, must=must)
        assert answer.best is None
        assert [each.alone for each in answer.short] == [1]
        assert answer.nearest is not None
        assert answer.nearest.attached["guns 4"] == INDEPENDENT
        assert answer.nearest.total == Fraction(3)
        (stop,) = stops(answer.checked.findings)
        assert stop.code == "no-attachment"
        assert stop.message == (
            "Four sections share three places; at least one has no host. "
            "They are guns, attached to platoons."
        )


def test_worths_come_from_a_file_and_go_to_one(tmp_path: Path) -> None:
    form = tmp_path / "worths.csv"
    before = asked()
    assert before.question is not None
    write_worths(form, before.question)
    text = form.read_text(encoding="utf-8-sig")
    assert text.count("\n") == 1 + 5 * 13
    changed = text.replace(
        "pioneers(flame) 1,No 4 Company / 3 Platoon,1",
        "pioneers(flame) 1,No 4 Company / 3 Platoon,4.5",
    )
    form.write_text(changed, encoding="utf-8")
    after = asked(worths=form)
    assert after.best is not None
    assert after.best.total == Fraction(17, 2)
    assert after.best.attached["pioneers(flame) 1"] == "No 4 Company / 3 Platoon"


def test_nothing_is_overwritten_and_only_csv_is_written(tmp_path: Path) -> None:
    question = asked().question
    assert question is not None
    for name, said in (("there.csv", "already"), ("worths.xlsx", r"\.csv")):
        (tmp_path / name).touch()
        with pytest.raises(CannotWriteError, match=said):
            write_worths(tmp_path / name, question)


def test_slips_in_the_file_stop_it(tmp_path: Path) -> None:
    file = tmp_path / "worths.csv"
    file.write_text("section,host,worth\nmachine-gun platon 1,No 1 Company / 1 Platoon,2\n")
    answer = asked(worths=file)
    assert answer.question is None
    assert codes(answer) == ["unknown-section"]


@pytest.mark.parametrize(
    ("plan", "must", "code"),
    [
        ("machine-gun platoon", (), "not-a-purchase"),
        ("machine-gun platon=2", (), "unknown-name"),
        ("machine-gun platoon=9", (), "number-not-priced"),
        ("anti-tank rifles=1", (), "not-in-force"),
        (PLAN, ("light tanks",), "unknown-choice"),
        (PLAN, ("machine-gun platon",), "unknown-choice"),
        (PLAN, ("nobody",), "unknown-choice"),
    ],
)
def test_what_there_is_not_is_not_attached(plan: str, must: tuple[str, ...], code: str) -> None:
    answer = asked(plan, must=must)
    assert answer.question is None
    assert codes(answer) == [code]


def test_a_plan_that_is_not_legal_is_attached_all_the_same() -> None:
    answer = asked("tank squadron commander=1, machine-gun platoon=3")
    assert answer.best is not None
    assert "need-missing" in codes(answer, level=Level.WARN)
    assert codes(answer) == []


def test_more_sections_than_are_named_are_refused(tmp_path: Path) -> None:
    answer = asked("guns=900", folder=written(tmp_path / "own", OWN_PLAN), game=None)
    assert (answer.question, codes(answer)) == (None, ["too-many-sections"])


def test_the_game_has_to_be_said_where_there_are_several() -> None:
    assert codes(asked(game=None)) == ["game-unsaid"]
