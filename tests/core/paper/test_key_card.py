"""Key cards."""

from dataclasses import replace

from paradestate.core.mark.code import least_fields_apart
from paradestate.core.outline import inches
from paradestate.core.paper.ground import Ground
from paradestate.core.paper.key_card import KeyCard, key_cards
from tests.core.paper.grounds import battalion, ground_of, small
from tests.forces import force_from, marenz

SIX = """\
stands: {section: {base: 40 x 20 mm}}
formations:
  platoon: {echelon: platoon, parts: {section: 1}}
  company: {echelon: company, parts: {platoon: 6}}
  top: {parts: {company: 1}}
marks:
  company: {colours: [brown]}
  colours: {brown: 6B4A2B}
"""


def cards_of(ground: Ground) -> list[KeyCard]:
    shown = key_cards(ground).shown
    assert shown is not None
    return [piece.face for page in shown.pages for piece in page.pieces]


def test_colours_come_first_then_each_company_then_troops_of_none() -> None:
    cards = cards_of(battalion())
    titles = [card.title for card in cards]
    companies = [f"No {number} Company" for number in (1, 2, 3, 4)]
    assert titles == ["Companies by colour", *companies, "Troops of no company"]
    assert [(line.colour, line.name, line.seen) for line in cards[0].lines][:2] == [
        ("1F4E9E", "No 1 Company", "royal blue"),
        ("F2C230", "No 2 Company", "mid yellow"),
    ]
    assert [(line.name, line.seen) for line in cards[1].lines] == [
        ("own troops", "no bars, cross"),
        ("1 Platoon", "one bar, ring"),
        ("2 Platoon", "two bars, chevron"),
        ("3 Platoon", "three bars, block"),
    ]
    assert [(line.name, line.seen) for line in cards[5].lines] == [("Battalion troops", "no bars")]


def test_every_mark_of_the_force_is_on_one_card_and_no_two_are_alike() -> None:
    marks = [line.mark for card in cards_of(battalion()) for line in card.lines if line.mark]
    assert set(marks) == set(battalion().marks.by_mark)
    assert len(marks) == 17  # 4 companies with own troops and 3 platoons, the battalion's troops
    assert (least_fields_apart(marks) or 0) >= 2


def test_a_card_is_a_playing_card() -> None:
    shown = key_cards(battalion()).shown
    assert shown is not None
    sizes = {(p.frame.width, p.frame.height) for page in shown.pages for p in page.pieces}
    assert sizes == {(inches("5/2"), inches("7/2"))}


def test_more_than_a_card_holds_goes_on_to_a_second_one() -> None:
    cards = cards_of(ground_of(force_from(SIX)))
    assert [(card.title, card.part, len(card.lines)) for card in cards] == [
        ("Companies by colour", "", 1),
        ("Company", "1 of 2", 4),
        ("Company", "2 of 2", 2),
    ]


def test_a_company_without_a_colour_has_no_card() -> None:
    force = marenz()
    two = replace(force.marks, by_formation={"company": ("royal blue", "brown")})
    titles = [card.title for card in cards_of(ground_of(replace(force, marks=two)))]
    assert titles == [
        "Companies by colour",
        "No 1 Company",
        "No 2 Company",
        "Troops of no company",
    ]


def test_a_force_without_companies_has_a_card_for_its_own_troops() -> None:
    (card,) = cards_of(small())
    assert card.title == "Troops of no company"


def test_nothing_raised_has_none() -> None:
    empty = replace(battalion().marks, companies=(), marks={}, stands=())
    assert key_cards(replace(battalion(), marks=empty)).shown is None
