"""Stands laid into trays: what is asked, moves, and an arrangement that is kept and put back."""

import datetime
from pathlib import Path

import pytest

from paradestate.core.choice import Choice
from paradestate.core.tray.moving import Barred, Swap, Transfer
from paradestate.core.tray.plan import Want
from paradestate.journeys.new import new_from_example
from paradestate.journeys.rewriting import ChangedSinceError
from paradestate.journeys.trays import (
    AskedToPack,
    Kept,
    TraysAnswer,
    keep,
    put_packed_back,
    trays,
    with_moves,
)
from paradestate.text.editing import Put
from paradestate.text.error import EditError
from tests.journeys.conftest import FERRY_GUARD, written

TODAY = datetime.date(2026, 3, 5)
NOW = datetime.datetime(2026, 3, 5, 20, 0, tzinfo=datetime.UTC)
BOX = "trays: {box: {inside: 90 x 70 mm, gap: 2 mm, number: 2, height: 30 mm}}\n"


@pytest.fixture
def marenz(tmp_path: Path) -> Path:
    folder = tmp_path / "marenz"
    new_from_example(folder, name="marenz")
    return folder


def asked(folder: Path, *, game: str | None = None, **known: object) -> TraysAnswer:
    choice = Choice(game=game)
    return trays(folder, today=TODAY, asked=AskedToPack(choice=choice, **known))  # type: ignore[arg-type]


def codes(answer: TraysAnswer) -> list[str]:
    return [found.code for found in answer.checked.findings]


def test_the_example_goes_into_one_case_and_the_trays_hold_exactly_the_packing_list(
    marenz: Path,
) -> None:
    """Story 21: all 8 markers have found a place."""
    answer = asked(marenz)
    assert answer.plan is not None
    assert (len(answer.plan.trays), answer.is_whole, answer.is_barred) == (1, True, False)
    assert list(answer.trays) == ["case 1", "case 2"]
    assert "height-unsaid" in codes(answer)


def test_a_game_brings_its_plan_and_typed_troops_hold_before_it(marenz: Path) -> None:
    typed = asked(marenz, plan="machine-gun platoon=2")
    assert typed.ground is not None
    assert len(typed.ground.things) == 47
    game = asked(marenz, game="whole-day attack")
    assert game.ground is not None
    assert len(game.ground.things) == 45
    assert codes(asked(marenz, plan="elephants=2"))[-1] == "unknown-choice"
    assert asked(marenz, plan="light tank=2").plan is None
    assert asked(marenz, plan="light tanks").plan is None


def test_without_trays_or_with_too_many_stands_nothing_is_laid(tmp_path: Path) -> None:
    bare = asked(written(tmp_path / "bare", FERRY_GUARD))
    assert (bare.plan, bare.trays, bare.is_whole, bare.is_barred) == (None, {}, False, False)
    assert "no-trays" in codes(bare)
    assert with_moves(bare, [Swap(one="a", other="b")]) == (bare, None, ())
    many = FERRY_GUARD.replace("rifle section: 2", "rifle section: 700") + BOX
    assert "too-many-to-lay" in codes(asked(written(tmp_path / "many", many)))
    broken = asked(written(tmp_path / "broken", "format: 1\ntitle: x\n"))
    assert broken.plan is None


def test_only_what_is_finished_is_laid_where_that_is_asked(tmp_path: Path) -> None:
    text = FERRY_GUARD.replace("painted: 2", "based: 5") + BOX
    answer = asked(written(tmp_path / "guard", text), only_finished=True)
    assert answer.ground is not None
    assert [each.name for each in answer.ground.things] == ["1 Rifle Section"]


def test_a_stand_too_high_for_every_tray_is_a_stop(tmp_path: Path) -> None:
    text = FERRY_GUARD.replace("20 x 60 mm, f", "20 x 60 mm, height: 44 mm, f") + BOX
    answer = asked(written(tmp_path / "guard", text))
    assert answer.plan is not None
    assert (answer.is_barred, answer.is_whole) == (True, False)
    assert [each.want for each in answer.plan.misfits] == [Want.TOO_HIGH]


def moved_and_kept(folder: Path, *moves: Swap | Transfer) -> Kept:
    answer, barred, made = with_moves(asked(folder), moves)
    assert (barred, made) == (None, moves)
    assert answer.plan is not None
    return keep(folder, today=TODAY, at=NOW, laid_trays=answer.plan.trays)


def test_what_is_moved_by_hand_is_kept_in_the_folder_and_put_back(marenz: Path) -> None:
    before = (marenz / "force.yaml").read_bytes()
    kept = moved_and_kept(marenz, Transfer(thing="1 Truck", to="case 2"))
    assert kept.file == marenz / "force.yaml"
    again = asked(marenz)
    assert again.plan is not None
    assert (again.plan.is_by_hand, len(again.plan.trays), again.is_whole) == (True, 2, True)
    anew = asked(marenz, anew=True)
    assert anew.plan is not None
    assert len(anew.plan.trays) == 1
    assert keep(marenz, today=TODAY, at=NOW, laid_trays=again.plan.trays).file is None
    assert kept.former is not None
    put_packed_back(marenz, today=TODAY, at=NOW, former=kept.former.name)
    assert (marenz / "force.yaml").read_bytes() == before


def test_an_arrangement_taken_out_leaves_the_tool_to_lay(marenz: Path) -> None:
    moved_and_kept(marenz, Transfer(thing="1 Truck", to="case 2"))
    keep(marenz, today=TODAY, at=NOW, laid_trays=())
    assert "packed" not in (marenz / "force.yaml").read_text(encoding="utf-8")


def test_what_was_written_since_is_not_put_back_over(marenz: Path) -> None:
    kept = moved_and_kept(marenz, Transfer(thing="1 Truck", to="case 2"))
    text = (marenz / "force.yaml").read_text(encoding="utf-8")
    (marenz / "force.yaml").write_text(text.replace("men: 10", "men: 9"), encoding="utf-8")
    assert kept.former is not None
    with pytest.raises(ChangedSinceError):
        put_packed_back(marenz, today=TODAY, at=NOW, former=kept.former.name)
    with pytest.raises(ChangedSinceError):
        put_packed_back(marenz, today=TODAY, at=NOW, former="other.yaml")


def test_a_former_version_that_can_not_be_read_is_not_put_back(marenz: Path) -> None:
    kept = moved_and_kept(marenz, Transfer(thing="1 Truck", to="case 2"))
    assert kept.former is not None
    kept.former.write_text("format: 1\n", encoding="utf-8")
    answer = put_packed_back(marenz, today=TODAY, at=NOW, former=kept.former.name)
    assert answer.checked.is_stopped
    assert answer.file is None


def test_moves_go_as_far_as_a_rule_lets_them(marenz: Path) -> None:
    answer = asked(marenz)
    swap = Swap(one="Battalion Command", other="1 Truck")
    barred = Swap(one="Battalion Command", other="No 1 Company / 1 Platoon / 1 Section")
    after, found, made = with_moves(answer, [swap, barred, swap])
    assert isinstance(found, Barred)
    assert made == (swap,)
    assert after.plan != answer.plan
    assert with_moves(answer, [Swap(one="nobody", other="1 Truck")]) == (answer, None, ())


def test_a_file_that_would_say_something_else_is_not_written(
    marenz: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    answer = asked(marenz)
    assert answer.plan is not None
    before = (marenz / "force.yaml").read_bytes()
    monkeypatch.setattr("paradestate.journeys.trays.packed_of", lambda _: {"case 9": {}})
    monkeypatch.setattr(
        "paradestate.journeys.trays._edit",
        lambda _: Put(path=("title",), value="Other"),
    )
    with pytest.raises(EditError):
        keep(marenz, today=TODAY, at=NOW, laid_trays=answer.plan.trays)
    assert (marenz / "force.yaml").read_bytes() == before
