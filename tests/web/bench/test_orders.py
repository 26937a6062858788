"""What to order when, as the sheet of the bench shows it."""

import re
from pathlib import Path

import pytest
from httpx2 import Response

from paradestate.core.certainty import Within
from paradestate.core.order_outcome import OrderAnswer, Outcome
from paradestate.journeys import order as order_journey
from paradestate.solve.order import cheapest_order
from paradestate.web.bench import orders
from paradestate.web.search import Searches, TooManySearchesError
from tests.journeys.bench.test_bench_months import COLUMN, LORRY, ONE, THREE, column
from tests.journeys.conftest import written
from tests.web.visitor import Visitor, words_of

HEAD = "so that a force is playable soonest and the bench has work"


def seen(folder: Path) -> Response:
    """The sheet once the orders are found."""
    owner = Visitor(folder)
    answer = owner.get("bench")
    for _ in range(100):
        if 'hx-trigger="load delay:1s"' not in answer.text:
            break
        answer = owner.get("bench")
    assert answer.status_code == 200
    return answer


def test_the_orders_stand_by_month_with_what_they_are_for(tmp_path: Path) -> None:
    answer = seen(column(tmp_path, THREE))
    words = words_of(answer)
    assert (
        "3 parcels for £90.50, with £30.00 a month: the smallest legal force can be played on 29 "
        "April 2026, decided by the parcel from North."
    ) in words
    assert "April 2026 North smallest legal force £48.50 15 Apr" in words
    assert "The bench stands idle for 6 weeks from 5 March 2026 to 15 April 2026" in words
    assert "moves from 2 April 2026 to 29 April 2026." in words
    assert "The days rest on your own week of 4 h" in words
    assert "Exact, at that pace" in words
    assert re.search(r'href="[^"]*/purchases#months"', answer.text)


def test_another_way_to_order_and_days_that_nobody_knows_are_said(tmp_path: Path) -> None:
    text = COLUMN.replace("a month: 30.00", "a month: 40.00")
    one = ONE.replace("lead days: 7, ", "")
    words = words_of(seen(written(tmp_path / "one", text + LORRY + one)))
    assert "In 1 order it costs £6.00 less" in words
    assert "£30.00 not known" in words
    assert "How long the parcel from North takes isn't known." in words


def test_how_far_the_orders_may_be_above_the_least_stands_there_as_in_the_command(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    def unproved(*args: object, **options: object) -> Outcome:
        found = cheapest_order(*args, **options)  # type: ignore[arg-type]
        assert isinstance(found, OrderAnswer)
        return OrderAnswer(order=found.order, certainty=Within(bound=found.order.total - 100))

    monkeypatch.setattr(order_journey, "cheapest_order", unproved)
    words = words_of(seen(column(tmp_path, THREE)))
    assert "Within: the orders cost at most £3.00 above the least possible." in words


@pytest.mark.parametrize(
    ("text", "words"),
    [
        ("aim: {a month: 30.00}\n", "Say under Purchases what may be spent in a month"),
        (", week: 4 h", "Say under bench how many hours you work in a week"),
    ],
)
def test_what_is_lacking_for_a_plan_is_said(text: str, words: str, tmp_path: Path) -> None:
    whole = COLUMN.replace(text, "")
    folder = written(tmp_path / "own", whole + LORRY + THREE)
    assert words.replace("`", "") in words_of(seen(folder)).replace("`", "")


def test_why_there_is_no_plan_is_said(tmp_path: Path) -> None:
    without = THREE.replace("holds: {cook: 2}", "holds: {lorry: 1}")
    words = words_of(seen(column(tmp_path, without)))
    assert "There is no plan of what to order when." in words
    assert "no pack on the list contains" in words


@pytest.mark.parametrize(
    ("texts", "stock"),
    [
        ((), LORRY),
        ((THREE,), "stock: {rifleman: {based: 8}, lorry: {based: 3}, cook: {in packet: 2}}\n"),
    ],
)
def test_without_anything_to_buy_nothing_is_said_of_it(
    texts: tuple[str, ...], stock: str, tmp_path: Path
) -> None:
    assert HEAD not in words_of(seen(column(tmp_path, *texts, stock=stock)))


def test_while_it_is_looked_for_the_sheet_is_there(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(orders, "AT_ONCE", 0)
    answer = Visitor(column(tmp_path, THREE)).get("bench")
    assert "The orders are being looked for." in words_of(answer)
    assert 'hx-select="#orders"' in answer.text
    assert "Look again" in words_of(answer)


def test_where_other_searches_run_it_is_said(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    def busy(*_: object, **__: object) -> None:
        raise TooManySearchesError(4)

    monkeypatch.setattr(Searches, "begun", busy)
    answer = Visitor(column(tmp_path, THREE)).get("bench")
    assert answer.status_code == 200
    assert "Other searches run; this one begins when the sheet is asked again." in words_of(answer)
