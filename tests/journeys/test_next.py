"""What to get next, with what stands in its way."""

import datetime
from collections.abc import Mapping
from fractions import Fraction
from pathlib import Path
from types import MappingProxyType

import pytest

from paradestate.core.advice.advice import Aim
from paradestate.core.choice import Choice
from paradestate.core.journal_entry import EntryKind
from paradestate.core.play.event import Ended, Event, Opened, Played
from paradestate.journeys.next import NextAnswer, NextAsked, NextFound, what_next
from tests.chance.next.examples import OSK
from tests.cli.test_next import QUAY
from tests.forces import HEAD
from tests.journeys.logging_to import logged

TODAY = datetime.date(2026, 3, 1)


def asked(
    folder: Path,
    *texts: str,
    game: str | None = None,
    money: Fraction | None = None,
    hours: int = 0,
    wish: Mapping[str, int] = MappingProxyType({}),
) -> NextAnswer:
    for number, text in enumerate((HEAD, *texts)):
        (folder / f"{number}.yaml").write_text(text, encoding="utf-8")
    return what_next(
        folder,
        today=TODAY,
        choice=Choice(game=game),
        grades={},
        asked=NextAsked(money=money, hours=Fraction(hours), wish=wish),
    )


def codes(answer: NextAnswer) -> list[str]:
    assert answer.found is None
    return [finding.code for finding in answer.checked.findings if finding.level.value == "stop"]


def found(answer: NextAnswer) -> NextFound:
    assert isinstance(answer.found, NextFound)
    return answer.found


MONEY = Fraction(20)


@pytest.mark.parametrize(
    ("texts", "game", "wish", "code"),
    [
        ((OSK,), None, {}, "nothing-to-buy"),
        ((OSK, QUAY), "morning", {}, "unknown-choice"),
        ((OSK, QUAY), None, {"Quay/mortar": 1}, "unknown-choice"),
        ((OSK.replace("games:", "by hand: x\n#"), QUAY), None, {}, "game-unsaid"),
        ((OSK, QUAY, "wrong: 1"), None, {}, "unknown-word"),
    ],
)
def test_what_prevents_it_is_said(
    tmp_path: Path, texts: tuple[str, ...], game: str | None, wish: dict[str, int], code: str
) -> None:
    assert code in codes(asked(tmp_path, *texts, game=game, money=MONEY, wish=wish))


def test_without_minutes_hours_bring_nothing_known(tmp_path: Path) -> None:
    answer = asked(tmp_path, OSK, hours=1)
    assert codes(answer) == ["minutes-missing"]
    (finding,) = (each for each in answer.checked.findings if each.code == "minutes-missing")
    assert "minutes: {foot: {based: 20}}" in finding.hint


def test_an_unknown_stand_is_not_wished_for(tmp_path: Path) -> None:
    answer = asked(tmp_path, OSK, QUAY, hours=1, wish={"mortar": 1})
    assert codes(answer) == ["unknown-choice"]


def test_what_is_no_candidate_is_said_with_the_reason(tmp_path: Path) -> None:
    more = "      dear: {price: 90, holds: {tank: 1}}\n      cook: {price: 1, holds: {cook: 1}}\n"
    prices = QUAY.replace("bench:", f"{more}bench:")
    force = OSK.replace("officer: {}}", "officer: {}, cook: {}}", 1)
    answer = found(asked(tmp_path, force, prices, money=MONEY))
    assert {each.name: each.reason for each in answer.left_out} == {
        "Quay/dear": "it is dearer than the money",
        "Quay/cook": "nothing wants what it holds",
    }


def test_without_worths_it_is_the_share_that_counts(tmp_path: Path) -> None:
    answer = found(asked(tmp_path, OSK.split("worths:")[0], QUAY, money=MONEY))
    assert (answer.advice.aim, answer.has_worths) == (Aim.SHARE, False)


def of_two_games() -> str:
    games = (
        "{evening: {allowance: 4, posture: attack, weight: 3}, "
        "day: {allowance: 8, posture: attack}}"
    )
    return OSK.replace("{evening: {allowance: 2 + 1d3 x 2, posture: attack}}", games)


def test_games_that_were_played_count_beside_their_weight(tmp_path: Path) -> None:
    text = of_two_games()
    asked(tmp_path, text, QUAY, money=MONEY)
    told: tuple[tuple[str, Event], ...] = (
        ("a", Opened(game="day")),
        ("b", Opened(game="evening")),
        ("a", Ended()),
        ("c", Ended()),
    )
    for game, event in told:
        logged(tmp_path, EntryKind.PLAYED, played=Played(game=game, event=event))
    answer = found(asked(tmp_path, text, QUAY, money=MONEY))
    assert (answer.shares.played, answer.shares.games) == ({"evening": 0, "day": 1}, 1)
    assert answer.games == {"evening": Fraction(9, 14), "day": Fraction(5, 14)}
    assert answer.advice.best.value == Fraction(9, 14) * 7 + Fraction(5, 14) * 14
    alone = what_next(
        tmp_path,
        today=TODAY,
        choice=Choice(),
        grades={},
        asked=NextAsked(money=MONEY, by_weight=True),
    )
    assert found(alone).games == {"evening": Fraction(3, 4), "day": Fraction(1, 4)}


def test_games_count_by_their_weight(tmp_path: Path) -> None:
    text = of_two_games()
    answer = found(asked(tmp_path, text, QUAY, money=MONEY))
    assert answer.games == {"evening": Fraction(3, 4), "day": Fraction(1, 4)}
    assert answer.advice.best.value == Fraction(3, 4) * 7 + Fraction(14, 4)
    one = found(asked(tmp_path, text, QUAY, money=MONEY, game="day"))
    assert one.games == {"day": 1}


def test_work_reckons_what_the_must_layer_has_begun(tmp_path: Path) -> None:
    """A staff in packets is painted first; a stand in work lends its figures."""
    force = OSK.replace(
        "officer: {painted: 1}", "officer: {in packet: 1}, field gun: {in packet: 1}"
    )
    stands = "stock stands: {tank: {in packet: 1}, machine-gun team: {painted: 1}}\n"
    answer = found(asked(tmp_path, force, QUAY, stands, hours=4))
    alone = {each.candidate.name: each.priced.cost for each in answer.advice.alone}
    assert alone == {"staff": 30, "field gun": 90, "tank": 120}
    assert answer.must_lacks == 1
    assert answer.advice.best.basket == (0, 1, 0)


def test_what_is_on_order_is_not_bought_again_and_not_worked_on(tmp_path: Path) -> None:
    before = found(asked(tmp_path, OSK, QUAY, money=MONEY)).advice
    at_bench = found(asked(tmp_path, OSK, QUAY, hours=4)).advice
    logged(
        tmp_path,
        EntryKind.ORDERED,
        figures={"Quay/gun": 2},
        on=TODAY,
        expected=TODAY + datetime.timedelta(days=9),
    )
    after = found(asked(tmp_path, OSK, QUAY, money=MONEY)).advice
    assert before.best.basket == (2, 0, 0)
    assert after.now.value == before.best.value > before.now.value
    assert found(asked(tmp_path, OSK, QUAY, hours=4)).advice.now == at_bench.now


CHEAPER_TOGETHER = """
sources:
  Quay:
    currency: GBP
    carriage: {0: 9.00, 20: 0}
    packs:
      gun: {price: 15.00, holds: {field gun: 1}}
      flags: {price: 5.00, holds: {flag: 1}}
      rags: {price: 30.00, holds: {flag: 1}}
"""


@pytest.mark.parametrize(("money", "bought"), [(20, (1, 1)), (19, (0, 0))])
def test_a_pack_that_nobody_wants_may_make_the_rest_cheaper(
    tmp_path: Path, money: int, bought: tuple[int, int]
) -> None:
    """A gun alone is 24.00 with carriage; with the flags it comes free for 20.00."""
    force = OSK.replace("officer: {}}", "officer: {}, flag: {}}")
    answer = found(asked(tmp_path, force, CHEAPER_TOGETHER, money=Fraction(money)))
    named = {
        each.name: number
        for each, number in zip(answer.advice.candidates, answer.advice.best.basket, strict=True)
    }
    assert (named.get("Quay/gun", 0), named.get("Quay/flags", 0)) == bought
    assert "Quay/rags" not in named
