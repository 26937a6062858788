"""How the papers of the workshop and the club look, read back from their files."""

import datetime
from dataclasses import replace
from fractions import Fraction
from functools import cache
from itertools import pairwise
from typing import Any

import pytest

from paradestate.core.certainty import Exact
from paradestate.core.club.booking import Booking, Club, Hours
from paradestate.core.club.booking import Box as LentBox
from paradestate.core.club.enough import Stock, spells
from paradestate.core.club.week import Week, monday_of, week_of
from paradestate.core.holdings import Holdings
from paradestate.core.imposition.layout import Layout
from paradestate.core.imposition.paper_size import LETTER
from paradestate.core.journal import Promise
from paradestate.core.order import priced
from paradestate.core.paper.box_list import Box, Prices, Whole, box_list
from paradestate.core.paper.club_notice import Played, club_notice
from paradestate.core.paper.colour_cards import colour_cards_paper
from paradestate.core.paper.job_cards import job_cards_paper
from paradestate.core.paper.packing_list import packing_list
from paradestate.core.paper.paper import Draft, Heading, Paper
from paradestate.core.paper.purchase_slips import purchase_slips
from paradestate.core.paper.sign_out_sheet import sign_out_sheet
from paradestate.core.paper.stock_take_sheet import stock_take_sheet
from paradestate.core.paper.troops_list import PRIVATE, troops_list
from paradestate.core.promise import Cupboard
from paradestate.core.unit_price import unit_prices
from paradestate.core.work.job_card import colour_cards, job_cards
from paradestate.sheet.figure_outline import LINES, SIZE
from paradestate.sheet.paper.typesetting import Printed, printed
from tests.core.paper.grounds import TODAY, battalion
from tests.core.paper.test_parade_state import returned
from tests.core.paper.trays import battalion_lids
from tests.core.sentence.test_odds import ODDS
from tests.core.work.batches import MINUTES, climbed
from tests.forces import force_from, marenz
from tests.orders import GBP, marenz_problem, pack, source
from tests.sheet.paper import papers
from tests.sheet.paper.papers import Page, is_near, read, texts

pytestmark = pytest.mark.unmeasured

LONG = "Donaudampfschifffahrtsgesellschaftskapitänskompanie"
NAMES = (LONG, "Świętokrzyska Drużyna Żółwiów", "Кавалерійська сотня")
MANY = 40
COLOURS = f"{MINUTES}  colours:\n    officer: [{{colour: red, coats: 9}}, {{colour: wash}}]\n"


def many_kinds() -> Draft[Any]:
    kinds = "".join(f"  kind {number}: {{}}\n" for number in range(MANY))
    force = force_from(f"figures:\n{kinds}formations: {{top: {{men: 4}}}}\n")
    return stock_take_sheet(
        force, held=Holdings(figures={name: {"painted": 1} for name in NAMES}), lent=Holdings()
    )


def jobs() -> Draft[Any]:
    found, force = climbed(bench=COLOURS)
    return job_cards_paper(job_cards(found.rungs, force))


def colours() -> Draft[Any]:
    found, force = climbed(bench=COLOURS)
    return colour_cards_paper(colour_cards(found.rungs, force), outlines=LINES, size=SIZE)


def slips() -> Draft[Any]:
    asked = marenz_problem("North")
    order = priced(asked, {("North", "N1"): 1, ("North", "N2"): 2, ("North", "N3"): 2})
    return purchase_slips(asked, order, certainty=Exact(), today=TODAY)


def boxes() -> Draft[Any]:
    sources = {"A": source("A", pack("men", 1000, rifleman=3))}
    figures = {"rifleman": 4, **dict.fromkeys(NAMES, 1)}
    prices = Prices(
        by_kind=unit_prices(figures, sources, currency=GBP), sources=sources, currency=GBP
    )
    whole = Whole(total="£20.00", sure="exact", unsold=dict.fromkeys(NAMES, 1))
    return box_list((Box(name=LONG, figures=figures),), prices=prices, whole=whole)


EVENING = TODAY + datetime.timedelta(weeks=1)


def club() -> Club:
    """Two games of an evening with long names, and more boxes than go on a page."""
    games = [
        Booking(
            name=name,
            hours=Hours(on=EVENING, start=start * 60, end=23 * 60),
            needs={"truck": 8, LONG: 1},
            borrows=("box 0",),
            whom="borrower 7",
        )
        for start, name in zip((19, 20), NAMES, strict=False)
    ]
    boxes = [LentBox(name=f"box {n}", keeper="Ann", holds={"truck": 2}) for n in range(MANY)]
    return Club(
        boxes={each.name: each for each in boxes}, bookings={each.name: each for each in games}
    )


def needs() -> dict[str, dict[str, int]]:
    return {name: dict(each.needs) for name, each in club().bookings.items()}


def evening() -> Week:
    found = spells(club(), Stock(sound={"truck": 10, LONG: 2}))
    return week_of(club(), found, first=monday_of(EVENING), needs=needs())


def sign_out() -> Draft[Any]:
    return sign_out_sheet(club(), (evening(),), needs=needs(), today=TODAY)


def notice() -> Draft[Any]:
    day = EVENING
    return club_notice(
        tuple(Played(name=name, title=name, nights=(day,)) for name in NAMES),
        promises=(Promise(day=day, force=LONG, figures={"truck": 16}),),
        cupboard=Cupboard(held={"truck": 12}),
        today=TODAY,
        weeks=(evening(),),
    )


def packing() -> Draft[Any]:
    return packing_list(
        battalion_lids(),
        sure=("Exact.",),
        left_out=NAMES,
        to_pack=48,
    )


def private_list() -> Draft[Any]:
    return troops_list(replace(battalion(), force=replace(battalion().force, private=True)))


READ = {
    "parade state": lambda: returned(marenz(), game="whole-day attack", odds=ODDS),
    "stock-take sheet": many_kinds,
    "job cards": jobs,
    "colour cards": colours,
    "purchase slips": slips,
    "box list": boxes,
    "sign-out sheet": sign_out,
    "club notice": notice,
    "packing list": packing,
    "troops list": private_list,
}
"""Papers that are read, each of what is hard to set."""


@cache
def made(name: str) -> Printed:
    return printed(paper(name))


def paper(name: str) -> Paper[object]:
    shown = READ[name]().shown
    assert shown is not None
    heading = Heading(title=name.capitalize(), force=" ".join(NAMES), date=TODAY)
    return Paper(name=name, heading=heading, layout=Layout(), shown=shown)


@cache
def pages_of(name: str) -> tuple[Page, ...]:
    return read(made(name).pdf)


@cache
def texts_of(name: str) -> tuple[str, ...]:
    return texts(made(name).pdf)


def words_of(name: str) -> str:
    return " ".join(" ".join(texts_of(name)).replace("\u00ad", "").split())


@pytest.mark.parametrize("name", READ)
def test_every_page_has_head_foot_number_and_a_line_of_100_mm(name: str) -> None:
    every = texts_of(name)
    assert len(every) == made(name).pages
    for number, (text, page) in enumerate(zip(every, pages_of(name), strict=True), start=1):
        assert text.startswith(name.capitalize())
        assert f"page {number} of {len(every)}" in text
        assert "as on 5 March 2026" in text
        assert is_near(page.size, (210, 297))
        lengths = [(line[2] - line[0], line[3] - line[1]) for line in page.lines]
        assert any(is_near(length, (100, 0)) for length in lengths)


@pytest.mark.parametrize("name", READ)
def test_nothing_stands_beside_the_page(name: str) -> None:
    for page in pages_of(name):
        for left, top, right, bottom in page.lines:
            assert left >= 0
            assert top >= 0
            assert right <= page.size[0]
            assert bottom <= page.size[1]


@pytest.mark.parametrize("name", ["packing list", "purchase slips"])
def test_the_same_paper_gives_the_same_bytes_and_goes_on_letter_too(name: str) -> None:
    assert printed(paper(name)).pdf == made(name).pdf
    letter = printed(replace(paper(name), layout=Layout(size=LETTER)))
    assert is_near(read(letter.pdf)[0].size, (215.9, 279.4))


def test_kinds_that_go_over_pages_each_have_their_row_of_boxes() -> None:
    words = words_of("stock-take sheet")
    assert all(f"kind {number}" in words for number in range(MANY))
    assert made("stock-take sheet").pages > 2


def test_names_in_other_alphabets_are_read_back_as_they_are() -> None:
    for name in ("box list", "club notice"):
        words = words_of(name)
        assert "Żółwiów" in words
        assert "Кавалерійська" in words


def test_a_slip_says_goods_carriage_and_where_it_stands_to_the_line() -> None:
    words = words_of("purchase slips")
    for said in ("Goods 50.00", "Carriage, free 0.00", "To pay £50.00", "£10.00 above the line"):
        assert said in words


def test_a_company_on_the_packing_list_never_stands_alone_at_the_foot_of_a_page() -> None:
    heads = {f"{number} No {number} Company" for number in range(1, 5)}
    found = 0
    for text in texts_of("packing list"):
        lines = [" ".join(line.split()) for line in text.splitlines()]
        for line, after in pairwise(lines):
            if line in heads:
                found += 1
                assert after.startswith("1 Platoon") or after.split()[-1] == "Section"
    assert found == len(heads)


def test_row_81_a_private_list_says_on_every_page_that_it_isnt_to_be_shared() -> None:
    every = texts_of("troops list")
    assert len(every) > 1
    for text in every:
        assert PRIVATE in " ".join(text.split())


def test_what_is_short_is_on_the_notice() -> None:
    words = words_of("club notice")
    assert "Short 4 trucks; 4 trucks, 20:00" in words
    assert "counted each for itself" in words


def test_booked_games_are_on_the_notice_with_their_hours_and_nobodys_name() -> None:
    words = words_of("club notice")
    assert "Booked" in words
    assert "20:00-23:00" in words
    assert "hatched: short" in words
    for name in ("Ann", "borrower"):
        assert name not in words
        assert name not in words_of("sign-out sheet").replace("kept by Ann", "")


def test_every_box_of_the_sign_out_sheet_has_its_keeper_and_room_to_sign() -> None:
    words = words_of("sign-out sheet")
    assert all(f"Box {number}" in words for number in range(MANY))
    assert words.count("kept by Ann") == MANY
    assert words.count("taken by (sign)") == 3
    assert "tear it up once everything is back" in words
    assert made("sign-out sheet").pages > 1


def test_checks_that_dont_hold_are_said_on_the_return() -> None:
    shown: Any = paper("parade state").shown
    odd = tuple(replace(tick, holds=False) for tick in shown.checks)
    wrong = replace(paper("parade state"), shown=replace(shown, checks=odd))
    (text,) = texts(printed(wrong).pdf)
    assert "these do not agree" in text
    assert "these do not agree" not in words_of("parade state")


def test_labels_for_visitors_are_large_enough_for_a_metre() -> None:
    """An x of 10 minutes of arc at 1 m: 16.7 pt of the sans face."""
    used = {each.what: each.points for each in papers.made("show labels").least_type}
    assert used["words on show labels"] >= Fraction("16.7")
    assert used["names on show labels"] >= 24
