"""Two versions of a list compared, folder by folder, and one folder with itself as amended."""

import datetime
import shutil
from pathlib import Path

import pytest

from paradestate.chance.force import diagram
from paradestate.core.certainty import NotComputed
from paradestate.core.choice import Choice
from paradestate.core.support.amendment import LimitAmendment, PriceAmendment
from paradestate.core.support.comparison import ListComparison
from paradestate.journeys.amending import Amending, ListAsked
from paradestate.journeys.compare import CompareAnswer, Compared, comparison_of
from tests.forces import EXAMPLES

TODAY = datetime.date(2026, 3, 1)
MARENZ = EXAMPLES / "marenz"
ATTACK = "whole-day attack"


def answer(
    old: Path,
    new: Path | None = None,
    *,
    game: str | None = ATTACK,
    points: int | None = 5,
    amending: Amending = Amending(),  # noqa: B008 - a frozen value
) -> CompareAnswer:
    asked = ListAsked(choice=Choice(game=game), grades={}, points=points, amending=amending)
    return comparison_of(old, new, today=TODAY, asked=asked)


def found(old: Path, new: Path | None = None, **asked: object) -> Compared:
    made = answer(old, new, **asked)  # type: ignore[arg-type] # handed on as they are
    assert made.found is not None
    return made.found


def codes(made: CompareAnswer) -> list[str]:
    return [each.code for each in made.checked[0].findings if each.code != "stands-alike"]


def changed(tmp_path: Path, before: str, *, after: str) -> Path:
    """The example with one text of its list put otherwise."""
    folder = tmp_path / "changed"
    shutil.copytree(MARENZ, folder)
    file = folder / "supporting-troops.yaml"
    text = file.read_text()
    assert before in text
    file.write_text(text.replace(before, after))
    return folder


def test_one_price_in_two_folders_is_found_and_said(tmp_path: Path) -> None:
    """Of the 19 forces with 5 points (section 3.12) the one gun of 4 is in one; it is lost."""
    new = changed(tmp_path, "cost: {1: 4, 2: 7, 3: 10}", after="cost: {1: 6, 2: 7, 3: 10}")
    made = found(MARENZ, new)
    assert [(each.name, each.part) for each in made.changes] == [("anti-tank guns", "cost")]
    (game,) = made.games
    assert game.amendments == (PriceAmendment(entry="anti-tank guns", number=1, points=6),)
    assert isinstance(game.comparison, ListComparison)
    assert (game.comparison.level.lost, game.comparison.level.gained) == (1, 0)


def test_games_that_one_version_has_alone_are_left_out(tmp_path: Path) -> None:
    new = changed(tmp_path, "evening attack:", after="night attack:")
    made = found(MARENZ, new, game=None)
    assert [each.game for each in made.games] == [
        "evening defence",
        "whole-day attack",
        "whole-day defence",
    ]
    assert made.left_out == dict.fromkeys(
        ("evening attack", "night attack"), "only one version has it"
    )
    assert [each.section for each in made.changes] == ["games", "games"]


def test_points_that_either_version_may_leave_are_compared(tmp_path: Path) -> None:
    new = changed(tmp_path, "18 + 2d6", after="20 + 1d6")
    (game,) = found(MARENZ, new, points=None).games
    assert isinstance(game.comparison, ListComparison)
    assert game.comparison.old.points == tuple(range(13, 24))
    assert {(each.lost, each.gained) for each in game.comparison.levels} == {(0, 0)}


def test_a_list_with_itself_as_amended() -> None:
    amending = Amending(
        prices=("anti-tank guns(1)=6",), limits=("bicycle troop=any",), worths=("light tanks=3",)
    )
    (game,) = found(MARENZ, amending=amending).games
    assert game.amendments[:2] == (
        PriceAmendment(entry="anti-tank guns", number=1, points=6),
        LimitAmendment(entry="bicycle troop", most=None),
    )


def test_games_that_an_amendment_doesn_t_fit_are_left_out() -> None:
    made = found(MARENZ, game=None, amending=Amending(prices=("field works for a company=3",)))
    assert [each.game for each in made.games] == ["evening defence", "whole-day defence"]
    assert made.left_out["whole-day attack"] == (
        "field works for a company: it isn't on offer: only in defence, and this is attack"
    )


@pytest.mark.parametrize(
    ("amending", "code"),
    [
        (Amending(prices=("gold=3",)), "amendment-unfitting"),
        (Amending(prices=("anti-tank guns(9)=3",)), "amendment-unfitting"),
        (Amending(limits=("bicycle troop=-1",)), "not-a-whole-number"),
        (Amending(worths=("bicycle troop=dear",)), "not-a-number"),
        (Amending(prices=("nothing",)), "not-names-and-numbers"),
    ],
)
def test_what_can_t_be_amended_is_a_stop(amending: Amending, code: str) -> None:
    made = answer(MARENZ, amending=amending)
    assert made.found is None
    assert codes(made) == [code]


def test_a_stop_in_either_folder_prevents_the_comparison(tmp_path: Path) -> None:
    (tmp_path / "force.yaml").write_text("format: 1\ntitle: T\n")
    assert answer(tmp_path, MARENZ).found is None
    assert answer(MARENZ, tmp_path).found is None
    alone = answer(tmp_path, game=None, amending=Amending(prices=("a=1",)))
    assert codes(alone) == ["missing-word"]


def test_what_is_too_large_isn_t_computed(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(diagram, "MOST_STEPS", 0)
    (game,) = found(MARENZ, MARENZ).games
    assert isinstance(game.comparison, NotComputed)
    (game,) = found(MARENZ, amending=Amending(prices=("bicycle troop=5",))).games
    assert isinstance(game.comparison, NotComputed)
