"""Money and bench together, from a folder to what is ordered in which month."""

import datetime
from fractions import Fraction
from pathlib import Path

import pytest

from paradestate.core.certainty import Exact, Within
from paradestate.core.choice import CHOSEN_HERE, Choice
from paradestate.core.order_outcome import OrderAnswer, Outcome
from paradestate.core.work.bench_plan import BenchPlan
from paradestate.journeys import order as order_journey
from paradestate.journeys.bench.bench_months import BenchMonths, months_at_bench
from paradestate.journeys.months import Terms
from paradestate.journeys.order import Request, Search
from paradestate.solve.order import cheapest_order
from tests.forces import EXAMPLES
from tests.journeys.conftest import written

TODAY = datetime.date(2026, 3, 2)
MARENZ = EXAMPLES / "marenz"
COLUMN = """\
format: 1
title: Ferry Column
figures:
  rifleman: {}
  lorry: {sort: vehicle}
  cook: {}
stands:
  section: {base: none, figures: {rifleman: 4}}
  lorry: {base: none, figures: {lorry: 1}}
  field kitchen: {base: none, figures: {cook: 2}}
formations:
  column:
    parts:
      - {of: section, number: 2}
      - {of: lorry, number: 1-3, usual: 3}
      - {of: field kitchen, number: 1, need: wished}
raise: {formation: column, wished: all}
aim: {a month: 30.00}
bench: {minutes: {foot: {painted: 60}, vehicle: {painted: 120}}, week: 4 h}
"""
LORRY = "stock: {lorry: {based: 1}}\n"
"""One lorry is fit to drive, so the smallest legal force lacks riflemen only."""
THREE = """\
sources:
  North:
    currency: GBP
    carriage: {0: 4.50}
    packs: {N1: {price: 44.00, lead days: 14, holds: {rifleman: 8}}}
  East:
    currency: GBP
    carriage: {0: 4.00}
    packs: {E1: {price: 20.00, lead days: 7, holds: {lorry: 2}}}
  South:
    currency: GBP
    carriage: {0: 3.00}
    packs: {S1: {price: 15.00, lead days: 7, holds: {cook: 2}}}
"""
ONE = """\
sources:
  North:
    currency: GBP
    carriage: {0: 6.00}
    packs:
      N1: {price: 24.00, lead days: 7, holds: {rifleman: 8}}
      N2: {price: 12.00, lead days: 7, holds: {lorry: 1}}
      N3: {price: 6.00, lead days: 7, holds: {cook: 4}}
"""


def column(place: Path, *texts: str, without: str = "", stock: str = LORRY) -> Path:
    """Two sections, three lorries and a kitchen, of which one lorry is owned if nothing else."""
    text = "\n".join(line for line in COLUMN.splitlines() if not without or without not in line)
    return written(place / "column", "".join((text, "\n", stock, *texts)))


def asked(
    folder: Path, *, limit: int | None = None, request: Request | None = None, carried: int = 0
) -> BenchMonths:
    return months_at_bench(
        folder,
        today=TODAY,
        choice=Choice(),
        request=request or Request(),
        search=Search(seconds=20),
        terms=Terms(
            begins=TODAY,
            limit=None if limit is None else Fraction(limit),
            carried=Fraction(carried),
        ),
    )


def plan_of(answer: BenchMonths) -> BenchPlan:
    assert answer.chosen is not None
    return answer.chosen.plan


def bought(plan: BenchPlan) -> list[tuple[str, ...]]:
    return [month.orders for month in plan.spread.months]


def codes(answer: BenchMonths) -> list[str]:
    return [found.code for found in answer.checked.findings]


def on(month: int, day: int) -> datetime.date:
    return datetime.date(2026, month, day)


def test_story_23_the_main_parcel_comes_first_and_decides_the_day_of_the_first_game(
    tmp_path: Path,
) -> None:
    """30.00 a month; orders of 48.50, 24.00 and 18.00 in months 2, 3 and 4.

    Bought on 1 April, the main parcel is there on the 15th; eight hours at four a week from the
    16th are done on the 29th.
    """
    answer = asked(column(tmp_path, THREE))
    plan = plan_of(answer)
    assert bought(plan) == [(), ("North",), ("East",), ("South",)]
    assert [month.spent for month in plan.spread.months] == [0, 4850, 2400, 1800]
    assert [month.balance for month in plan.spread.months] == [3000, 1150, 1750, 2950]
    first = plan.playable[0]
    assert (first.name, first.day) == ("smallest legal force", on(4, 29))
    assert first.awaits == first.needs == ("North",)
    assert [each.milestones[0] for each in plan.ordered] == [
        "smallest legal force",
        "whole column",
        "with the wished items",
    ]
    assert plan.is_proved
    assert answer.chosen is not None
    assert answer.chosen.certainty == Exact()


def test_row_32_the_limit_moves_the_day_of_the_first_game(tmp_path: Path) -> None:
    """Bought on 2 March, it would be there on the 16th and done with on the 30th."""
    folder = column(tmp_path, THREE)
    (found,) = asked(folder).checked.findings
    assert (found.code, found.level) == ("limit-moves-the-date", "warn")
    assert found.message == (
        "£48.50 for the parcel that the smallest legal force waits for is needed by 2 March 2026; "
        "£30.00 a month allows it in April 2026."
    )
    assert found.effect == (
        "The day on which it can be played moves from 30 March 2026 to 29 April 2026."
    )
    assert found.hint == "With £48.50 a month, or with £18.50 carried, it could be as soon."
    assert found.place.line == COLUMN.splitlines().index("aim: {a month: 30.00}") + 1
    for limit, carried in ((49, 0), (30, 19)):
        mended = asked(folder, limit=limit, carried=carried)
        assert mended.checked.findings == ()
        assert plan_of(mended).playable[0].day == on(3, 30)
    assert asked(folder, limit=30).checked.findings[0].place == CHOSEN_HERE


def test_the_bench_is_idle_until_the_first_parcel_comes_and_between_two(tmp_path: Path) -> None:
    plan = plan_of(asked(column(tmp_path, THREE)))
    idle = [(each.first, each.last, each.days) for each in plan.idle]
    # After the sections nothing is owned until the lorries come on 8 May.
    assert idle[0] == (on(3, 2), on(4, 15), 45)
    assert idle[1] == (on(4, 30), on(5, 8), 9)
    assert [plan.ordered[min(each.awaits)].parcel.name for each in plan.idle] == [
        "North",
        "East",
        "South",
    ]


def test_what_is_owned_is_worked_on_while_the_parcel_is_on_its_way(tmp_path: Path) -> None:
    stock = "stock: {lorry: {based: 1}, rifleman: {in packet: 4}}\n"
    plan = plan_of(asked(column(tmp_path, THREE, stock=stock), limit=50))
    assert bought(plan)[0] == ("North",)
    # Four hours of one section fill a week of the fortnight until the parcel is there.
    assert (plan.idle[0].first, plan.idle[0].days) == (on(3, 9), 8)
    assert plan.playable[0].day == on(3, 23)


def test_orders_are_joined_where_that_has_them_sooner_and_the_difference_is_said(
    tmp_path: Path,
) -> None:
    """Carriage of 6.00 for each parcel: apart 30.00 + 30.00 + 12.00, all joined 60.00."""
    answer = asked(column(tmp_path, ONE), limit=40)
    plan = plan_of(answer)
    ways = {
        len(way.orders): way.plan.total
        for way in (*answer.others, *([answer.chosen] if answer.chosen else []))
    }
    assert ways[3] == 7200
    assert ways[1] == 6000
    assert plan.total == 6600
    assert bought(plan) == [("North 1",), ("North 2",)]
    assert [each.milestones for each in plan.ordered] == [
        ("smallest legal force",),
        ("whole column", "with the wished items"),
    ]
    (cheapest,) = answer.notable
    assert cheapest.plan.total == 6000
    assert cheapest.plan.playable[0].day > plan.playable[0].day


def test_what_one_order_leaves_over_serves_the_next(tmp_path: Path) -> None:
    """A box for the first force brings two cooks as well, so the kitchen needs no order."""
    text = ONE.replace("holds: {rifleman: 8}", "holds: {rifleman: 8, cook: 2}")
    answer = asked(column(tmp_path, text), limit=30)
    plan = plan_of(answer)
    assert answer.chosen is not None
    assert len(answer.chosen.orders) == 2
    assert [dict(each.figures) for each in plan.ordered] == [
        {"rifleman": 8, "cook": 2},
        {"lorry": 2},
    ]
    assert plan.playable[-1].needs == ("North 1", "North 2")


def test_the_sooner_way_is_said_where_the_chosen_one_has_the_first_force_later() -> None:
    answer = asked(MARENZ, limit=30)
    (sooner,) = answer.notable
    assert len(sooner.orders) == 2
    assert sooner.plan.playable[0].day < plan_of(answer).playable[0].day
    assert codes(answer).count("lead-time-unknown") == 2
    assert "week-unsaid" not in codes(answer)


def test_a_parcel_that_comes_after_the_deadline_is_said(tmp_path: Path) -> None:
    """Mistakes row 34."""
    text = COLUMN.replace("a month: 30.00", "deadline: 2026-04-01, a month: 60.00")
    late = THREE.replace("lead days: 7, holds: {lorry", "lead days: 61, holds: {lorry")
    answer = asked(written(tmp_path / "late", text + LORRY + late))
    found = {each.code: each for each in answer.checked.findings}
    said = {
        each.message for each in answer.checked.findings if each.code == "parcel-after-deadline"
    }
    assert any("The parcel from East comes on" in each for each in said)
    assert found["parcel-after-deadline"].effect == (
        "What it brings isn't part of what is ready by then."
    )


def test_nothing_lacking_is_nothing_to_buy(tmp_path: Path) -> None:
    stock = (
        "stock: {rifleman: {in packet: 8}, lorry: {based: 1, in packet: 2}, cook: {in packet: 2}}\n"
    )
    answer = asked(column(tmp_path, stock=stock))
    plan = plan_of(answer)
    assert (plan.ordered, plan.total, plan.idle) == ((), 0, ())
    assert plan.playable[0].day == on(3, 15)
    assert answer.notable == ()


def test_nothing_left_to_do_has_no_days(tmp_path: Path) -> None:
    stock = "stock: {rifleman: {based: 8}, lorry: {based: 3}, cook: {based: 2}}\n"
    answer = asked(column(tmp_path, stock=stock))
    assert plan_of(answer).playable == ()
    assert answer.notable == ()


def test_away_days_move_the_day(tmp_path: Path) -> None:
    stock = (
        "stock: {rifleman: {in packet: 8}, lorry: {based: 1, in packet: 2}, cook: {in packet: 2}}\n"
    )
    text = COLUMN.replace("week: 4 h", "week: 4 h, away: [2026-03-02 to 2026-03-08]")
    plan = plan_of(asked(written(tmp_path / "away", text + stock)))
    assert plan.playable[0].day == on(3, 22)


@pytest.mark.parametrize(
    ("without", "texts", "code"),
    [
        ("a month", (THREE,), "limit-missing"),
        ("bench", (THREE, "bench: {minutes: {foot: {painted: 60}}}\n"), "pace-missing"),
        ("", (), "nobody-sells"),
        ("", (THREE.replace("44.00", "44444.00"),), "too-many-months"),
        ("raise", (THREE,), "missing-word"),
    ],
)
def test_why_there_is_no_plan(
    without: str, texts: tuple[str, ...], code: str, tmp_path: Path
) -> None:
    answer = asked(column(tmp_path, *texts, without=without))
    assert answer.chosen is None
    assert answer.notable == ()
    assert code in codes(answer)


def test_an_order_that_isnt_proved_says_by_how_much(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    def unproved(*args: object, **options: object) -> Outcome:
        found = cheapest_order(*args, **options)  # type: ignore[arg-type]
        assert isinstance(found, OrderAnswer)
        bound = Within(bound=found.order.total - 100)
        return OrderAnswer(order=found.order, certainty=bound)

    monkeypatch.setattr(order_journey, "cheapest_order", unproved)
    answer = asked(column(tmp_path, THREE))
    assert answer.chosen is not None
    assert answer.chosen.certainty == Within(bound=9050 - 300)
