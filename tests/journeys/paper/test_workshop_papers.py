"""Papers of the workshop and the club, from folders."""

import datetime
import shutil
from dataclasses import replace
from pathlib import Path

import pytest

from paradestate.core.choice import Choice
from paradestate.core.game import Purchase
from paradestate.core.imposition.layout import Layout
from paradestate.core.journal_entry import EntryKind
from paradestate.core.log_request import LogRequest
from paradestate.core.paper.ground import Ground
from paradestate.journeys.count import count
from paradestate.journeys.log import log
from paradestate.journeys.marking import marking_of
from paradestate.journeys.memory import Memory
from paradestate.journeys.paper.club_papers import notice_of
from paradestate.journeys.paper.money_papers import box_list_of, purchase_slips_of
from paradestate.journeys.paper.paper_kind import Desk
from paradestate.journeys.paper.return_paper import parade_state_of
from paradestate.journeys.paper.workshop_papers import (
    colours_of,
    jobs_of,
    packed_for,
    packing_list_of,
    private_sheet_of,
    stock_take_of,
    tray_plans_of,
)
from tests.forces import EXAMPLES

ON = datetime.date(2026, 3, 5)
SQUAD = """\
format: 1
title: Squad
figures: {rifleman: {footprint: 6 mm}, drummer: {}}
stands: {section: {base: 40 x 20 mm, height: 12 mm, figures: {rifleman: 4}}}
formations: {top: {parts: {section: 2}}}
raise: {formation: top}
"""
PLAIN = "{currency: GBP, carriage: {0: 0}"


def desk_of(folder: Path, *, game: str = "", plan: tuple[Purchase, ...] = ()) -> Desk:
    choice = Choice(game=game or None)
    counted = count(folder, today=ON, choice=choice).count
    assert counted is not None
    ground = Ground(
        force=counted.force,
        made=counted.made,
        marks=marking_of(counted),
        date=ON,
        layout=Layout(),
        game=game,
        plan=plan,
    )
    return Desk(ground=ground, folder=folder, today=ON, choice=choice, memory=Memory())


def squad(tmp_path: Path, *texts: str) -> Desk:
    folder = tmp_path / "squad"
    folder.mkdir(exist_ok=True)
    (folder / "force.yaml").write_text(SQUAD + "".join(texts))
    return desk_of(folder)


@pytest.fixture(scope="module")
def marenz() -> Desk:
    return desk_of(EXAMPLES / "marenz")


def test_what_is_counted_is_what_the_files_say_is_owned() -> None:
    shown = stock_take_of(desk_of(EXAMPLES / "vellmark")).shown
    assert shown is not None
    rows = {row.name: row.held for row in shown.tables[0].rows}
    assert rows["musketeer"] == (24, 12, 12, 6, 30)
    assert sum(map(sum, rows.values())) == 126


def test_cards_are_those_of_the_bench(marenz: Desk) -> None:
    jobs = jobs_of(marenz).shown
    assert jobs is not None
    assert [card.number for card in jobs.cards] == list(range(1, len(jobs.cards) + 1))
    assert colours_of(marenz).shown is None  # no colours are said
    colours = colours_of(desk_of(EXAMPLES / "vellmark")).shown
    assert colours is not None
    assert colours.cards[0].outline


def test_without_minutes_there_are_no_cards(tmp_path: Path) -> None:
    assert jobs_of(squad(tmp_path)).shown is None
    assert colours_of(squad(tmp_path)).shown is None


def test_every_stand_of_the_example_lies_in_its_tray_and_the_list_says_so(marenz: Desk) -> None:
    plans = tray_plans_of(marenz).shown
    assert plans is not None
    assert len(plans.pages) == 2
    (tick,) = packing_list_of(marenz).ticks
    assert tick.words == "45 stands in trays for 45 stands to pack"
    assert tick.holds


def test_stands_on_a_lid_bear_the_mark_of_their_rear_and_markers_none() -> None:
    desk = desk_of(EXAMPLES / "marenz")
    packed = packed_for(desk)
    assert packed is not None
    borne = {stand.name: stand.mark for lid in packed.lids for stand in lid.stands}
    section = borne["No 2 Company / 1 Platoon / 1 Section"]
    assert section is not None
    assert (section.colour, section.bars) == ("mid yellow", 1)
    assert borne["No 2 Company / 1 Hidden-movement Marker"] is None


def test_the_order_of_battle_says_tray_and_row_only_where_the_owner_laid_them(
    tmp_path: Path,
) -> None:
    trays = "trays: {case: {inside: 100 x 60 mm}}\n"
    plain = private_sheet_of(squad(tmp_path, trays)).shown
    assert plain is not None
    assert [line.where for line in plain.units] == [""]
    packed = "packed: {case: {1 Section: 0 x 0 mm, 2 Section: 0 x 30 mm}}\n"
    (tmp_path / "own").mkdir()
    own = private_sheet_of(squad(tmp_path / "own", trays, packed)).shown
    assert own is not None
    assert [line.where for line in own.units] == ["Case, rows 1 and 2"]


def test_what_a_plan_brings_is_packed_too() -> None:
    tanks = Purchase(entry="light tanks", number=2)
    (tick,) = packing_list_of(desk_of(EXAMPLES / "marenz", plan=(tanks,))).ticks
    assert tick.words == "47 stands in trays for 47 stands to pack"


def test_a_force_without_trays_has_no_papers_of_them(tmp_path: Path) -> None:
    desk = squad(tmp_path)
    assert packed_for(desk) is None
    assert tray_plans_of(desk).shown is None
    assert packing_list_of(desk).shown is None


def test_row_72_a_stand_that_is_too_high_for_the_tray_is_on_the_list_without_a_place(
    tmp_path: Path,
) -> None:
    desk = squad(tmp_path, "trays: {case: {inside: 100 x 60 mm, height: 10 mm}}\n")
    draft = packing_list_of(desk)
    assert draft.shown is not None
    assert draft.shown.trays == ()
    assert draft.shown.left_out == ("1 Section", "2 Section")
    assert [tick.holds for tick in draft.ticks] == [True]


def test_the_notice_shows_game_nights_and_what_is_promised(tmp_path: Path) -> None:
    desk = squad(
        tmp_path,
        "aim: {game nights: [2026-03-12]}\n",
        "stock: {rifleman: {painted: 9}}\n",
    )
    request = LogRequest(
        id="0190c0de-0000-7000-8000-000000000001",
        kind=EntryKind.PROMISED,
        written=datetime.datetime(2026, 3, 5, 20, tzinfo=datetime.UTC),
        on=datetime.date(2026, 3, 12),
        figures={"rifleman": 8},
    )
    log(desk.folder, today=ON, request=request)
    shown = notice_of(replace(desk, memory=Memory())).shown
    assert shown is not None
    (row,) = shown.tables[0].rows
    assert row.force == "Squad"
    assert row.bookings[0].is_game_night
    assert row.bookings[0].promised == ("8 riflemen",)
    assert shown.short_days == 0


def test_where_no_night_is_named_and_nothing_promised_there_is_no_notice(tmp_path: Path) -> None:
    assert notice_of(squad(tmp_path)).shown is None


def test_the_slips_are_those_of_the_cheapest_order(marenz: Desk) -> None:
    shown = purchase_slips_of(marenz).shown
    assert shown is not None
    assert (shown.total, shown.sure) == ("£89.50", "exact: nothing that does it costs less")
    assert [slip.total for slip in shown.slips] == ["£41.00", "£48.50"]


def test_where_nobody_sells_anything_there_is_no_slip(tmp_path: Path) -> None:
    assert purchase_slips_of(squad(tmp_path)).shown is None
    source = f"sources: {{A: {PLAIN}, packs: {{a: {{price: 1.00, holds: {{drummer: 1}}}}}}}}}}\n"
    assert purchase_slips_of(squad(tmp_path, source)).shown is None


def test_the_box_list_says_what_is_in_each_tray_and_what_lies_beside(tmp_path: Path) -> None:
    desk = squad(
        tmp_path,
        "trays: {case: {inside: 100 x 60 mm}}\n",
        "stock: {rifleman: {painted: 9}}\n",
        "sources: {A: {currency: GBP, carriage: {0: 2.00}, "
        "packs: {a: {price: 3.00, holds: {rifleman: 3}}}}}\n",
    )
    shown = box_list_of(desk).shown
    assert shown is not None
    assert [(box.name, box.number, box.worth) for box in shown.boxes] == [
        ("Case", 8, "£8.00"),
        ("In no tray", 1, "£1.00"),
    ]
    assert (shown.total, shown.parts) == ("£11.00", "£9.00")  # three packs, and the carriage
    assert shown.sure.startswith("exact")


def test_what_no_source_sells_has_no_total(tmp_path: Path) -> None:
    shown = box_list_of(squad(tmp_path, "stock: {rifleman: {painted: 1}}\n")).shown
    assert shown is not None
    assert (shown.total, shown.parts, shown.unsold) == ("", None, "1 rifleman")


def test_the_return_bears_every_number_that_was_counted_twice(marenz: Desk) -> None:
    shown = parade_state_of(marenz).shown
    assert shown is not None
    assert [tick.words for tick in shown.checks] == [
        "foot figures by level 123, by kind 123, by company 123",
        "45 stands by name, 45 multiplied",
        "0 used and 0 over make the 0 that are held",
        "0 there and 125 lacking make the 125 that are wanted",
        "37 labels for 37 stands to label",
        "45 stands in trays for 45 stands to pack",
    ]
    assert all(tick.holds for tick in shown.checks)
    assert shown.chances == ()


def test_with_a_game_the_return_says_its_chances() -> None:
    tanks = Purchase(entry="light tanks", number=2)
    shown = parade_state_of(
        desk_of(EXAMPLES / "marenz", game="whole-day attack", plan=(tanks,))
    ).shown
    assert shown is not None
    assert shown.chances[0] == "Planned: 2 x light tanks, 9 points."
    assert shown.checks[-1].words.endswith("add up to 1")


def test_what_cant_be_read_has_no_papers(tmp_path: Path, marenz: Desk) -> None:
    folder = tmp_path / "marenz"
    shutil.copytree(EXAMPLES / "marenz", folder)
    (folder / "force.yaml").write_text("format: 1\ntitle: [\n")
    broken = replace(marenz, folder=folder, memory=Memory())
    assert stock_take_of(broken).shown is None
    assert notice_of(broken).shown is None
    assert jobs_of(broken).shown is None
    assert packing_list_of(broken).shown is None
    assert parade_state_of(broken).shown is None
    assert purchase_slips_of(broken).shown is None
    assert box_list_of(broken).shown is None
