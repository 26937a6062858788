"""What is owned, from the files and from everything that happened since."""

import datetime
from pathlib import Path

from paradestate.core.choice import Choice
from paradestate.core.finding import Level, stops
from paradestate.core.journal_entry import EntryKind
from paradestate.journeys.count import count
from paradestate.journeys.holdings import checked_with_journal, holdings
from paradestate.journeys.order import Request, Search, order
from tests.entries import figures, number_of
from tests.journeys.logging_to import TODAY, logged

DAY = datetime.timedelta(days=1)
PRICES = """\
sources:
  North:
    currency: GBP
    carriage: {0: 0}
    packs: {N1: {price: 9.00, holds: {rifleman: 4}}}
"""


def test_without_a_journal_the_files_say_what_is_owned(guard: Path) -> None:
    known = holdings(guard, today=TODAY)
    assert known.state is not None
    assert known.state.held == figures(rifleman={"in packet": 8, "painted": 2})
    assert not (guard / "journal.sqlite").exists()


def test_what_happened_is_added_up(guard: Path) -> None:
    logged(guard, EntryKind.RECEIVED, figures={"boat": 1})
    logged(
        guard, EntryKind.MOVED, figures={"rifleman": 3}, from_stage="in packet", to_stage="based"
    )
    known = holdings(guard, today=TODAY)
    assert known.state is not None
    assert known.state.held == figures(
        rifleman={"in packet": 5, "painted": 2, "based": 3}, boat={"in packet": 1}
    )


def test_any_past_day_can_be_shown_again(guard: Path) -> None:
    for days in range(4):
        logged(guard, EntryKind.RECEIVED, figures={"boat": 1}, on=TODAY - days * DAY)
    for days in range(-1, 5):
        known = holdings(guard, today=TODAY, on=TODAY - days * DAY)
        assert known.state is not None
        assert number_of("boat", known.state.held) == max(0, min(4, 4 - days))


def test_the_forces_of_a_collection_share_what_is_owned(club: Path) -> None:
    logged(club, EntryKind.RECEIVED, figures={"rifleman": 4})
    known = holdings(club / "watch", today=TODAY)
    assert known.state is not None
    assert known.state.held.figures == {"rifleman": {"in packet": 12, "painted": 3}}
    assert known.state.held.stands == {"rifle section": {"based": 1}}
    for force in ("guard", "watch"):
        counted = count(club / force, today=TODAY, choice=Choice()).count
        assert counted is not None
        assert counted.strength.held["rifleman"] == 19


def test_a_stop_in_one_force_leaves_the_holdings_of_all_unknown(club: Path) -> None:
    logged(club, EntryKind.RECEIVED, figures={"rifleman": 4})
    (club / "watch" / "force.yaml").write_text("stands: {", encoding="utf-8")
    known = holdings(club / "guard", today=TODAY)
    assert known.state is None
    assert {Path(found.place.file).parent.name for found in stops(known.findings)} == {"watch"}
    assert count(club / "guard", today=TODAY, choice=Choice()).count is None


def test_the_count_takes_what_is_here_and_the_order_all_that_is_owned(guard: Path) -> None:
    (guard / "prices.yaml").write_text(PRICES, encoding="utf-8")
    logged(guard, EntryKind.LENT, figures={"rifleman": 5}, from_stage="in packet")
    answer = count(guard, today=TODAY, choice=Choice())
    assert answer.count is not None
    assert answer.count.strength.deficiency == {"rifleman": 3, "boat": 1}
    assert [found.code for found in answer.checked.findings] == ["lent-out"]
    journey = order(
        guard,
        today=TODAY,
        choice=Choice(),
        request=Request(),
        search=Search(seconds=9),
    )
    assert journey.want == {"boat": 1}
    assert "lent-out" not in {found.code for found in journey.checked.findings}


def test_the_count_lacks_what_is_on_order_and_the_order_does_not_buy_it_again(
    guard: Path,
) -> None:
    (guard / "prices.yaml").write_text(PRICES, encoding="utf-8")
    logged(guard, EntryKind.ORDERED, figures={"boat": 1}, source="North")
    answer = count(guard, today=TODAY, choice=Choice())
    assert answer.count is not None
    assert answer.count.strength.deficiency == {"boat": 1}
    assert [found.code for found in answer.checked.findings] == ["on-order"]
    journey = order(
        guard, today=TODAY, choice=Choice(), request=Request(), search=Search(seconds=9)
    )
    assert journey.want == {}
    (remark,) = (found for found in journey.checked.findings if found.code == "on-order")
    assert remark.effect == "They count as there, so they aren't ordered again."
    logged(guard, EntryKind.RECEIVED, figures={"boat": 1}, source="North")
    known = holdings(guard, today=TODAY)
    assert known.state is not None
    assert known.state.on_order == ()


def test_names_and_stages_that_the_files_lost_are_doubted(guard: Path) -> None:
    logged(guard, EntryKind.RECEIVED, figures={"boat": 1})
    logged(guard, EntryKind.RECEIVED, figures={"rifleman": 1}, to_stage="undercoated")
    file = guard / "force.yaml"
    text = file.read_text(encoding="utf-8").replace("boat", "ferry")
    file.write_text(f"{text}bench: {{stages: [in packet, painted, based]}}\n", encoding="utf-8")
    found = checked_with_journal(guard, today=TODAY).findings
    assert [(each.level, each.code) for each in found] == [
        (Level.WARN, "held-at-unknown-stage"),
        (Level.WARN, "held-unknown"),
    ]
    counted = count(guard, today=TODAY, choice=Choice()).count
    assert counted is not None
    assert counted.strength.held == {"rifleman": 10}


def test_stock_that_was_taken_out_of_the_files_later_shows(guard: Path) -> None:
    logged(guard, EntryKind.LOST, figures={"rifleman": 2}, from_stage="painted")
    file = guard / "force.yaml"
    file.write_text(
        file.read_text(encoding="utf-8").replace("painted: 2", "painted: 1"), encoding="utf-8"
    )
    known = holdings(guard, today=TODAY)
    assert [found.code for found in known.findings] == ["held-below-nought"]
    assert count(guard, today=TODAY, choice=Choice()).count is None


def test_the_ways_out_of_holdings_below_nought_can_be_gone(guard: Path) -> None:
    lost = logged(guard, EntryKind.LOST, figures={"rifleman": 2}, from_stage="painted").entry
    assert lost is not None
    file = guard / "force.yaml"
    text = file.read_text(encoding="utf-8").replace(", painted: 2", "")
    file.write_text(text, encoding="utf-8")
    day_before = TODAY - DAY
    logged(guard, EntryKind.RECEIVED, figures={"rifleman": 1}, to_stage="painted", on=day_before)
    assert holdings(guard, today=TODAY).is_stopped
    logged(guard, EntryKind.STRUCK_OUT, struck_out=lost.id, note="none were there")
    known = holdings(guard, today=TODAY)
    assert known.findings == ()
    assert known.state is not None
    assert known.state.held == figures(rifleman={"in packet": 8, "painted": 1})


def test_stands_of_one_name_and_other_figures_in_a_collection_are_doubted(club: Path) -> None:
    file = club / "watch" / "force.yaml"
    text = file.read_text(encoding="utf-8").replace("{rifleman: 4}", "{rifleman: 5}")
    file.write_text(text, encoding="utf-8")
    logged(club, EntryKind.NOTED, note="the club's boxes")
    known = holdings(club, today=TODAY)
    assert [found.code for found in known.findings] == ["stands-differ"]


def test_a_renamed_kind_that_is_lent_can_come_back(guard: Path) -> None:
    logged(guard, EntryKind.RECEIVED, figures={"boat": 1})
    logged(guard, EntryKind.LENT, figures={"boat": 1})
    file = guard / "force.yaml"
    file.write_text(file.read_text(encoding="utf-8").replace("boat", "ferry"), encoding="utf-8")
    assert [found.code for found in holdings(guard, today=TODAY).findings] == ["held-unknown"]
    logged(guard, EntryKind.RETURNED, figures={"boat": 1}, from_stage="in packet")
    logged(guard, EntryKind.LOST, figures={"boat": 1})
    assert holdings(guard, today=TODAY).findings == ()
