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


BARS_ALONE = """\
stands: {section: {base: 40 x 20 mm}}
formations:
  platoon: {echelon: platoon, parts: {section: 1}}
  company: {echelon: company, parts: {platoon: 2}}
  top: {parts: {company: 1, platoon: 2}}
"""


def test_a_company_without_a_colour_is_named_and_has_no_card() -> None:
    force = marenz()
    two = replace(force.marks, by_formation={"company": ("royal blue", "brown")})
    cards = cards_of(ground_of(replace(force, marks=two)))
    assert [card.title for card in cards] == [
        "Companies by colour",
        "No 1 Company",
        "No 2 Company",
        "Troops of no company",
    ]
    third = cards[0].lines[2]
    assert (third.mark, third.colour, third.name) == (None, "", "No 3 Company")
    assert third.seen == "no colour: by its name"


def test_where_bars_alone_tell_companies_are_by_name() -> None:
    names, troops = cards_of(ground_of(force_from(BARS_ALONE)))
    assert names.title == "Companies by name"
    assert [line.seen for line in troops.lines] == ["one bar, number 1", "two bars, number 2"]


def test_without_colours_and_bars_it_is_said_why_there_is_no_card() -> None:
    draft = key_cards(ground_of(force_from(SIX[: SIX.index("marks:")])))
    (finding,) = draft.findings
    assert draft.shown is None
    assert finding.code == "no-key-card"
    assert finding.message.startswith("No company has a colour")


def test_of_one_plain_unit_it_is_said_that_nothing_is_to_be_told_apart() -> None:
    draft = key_cards(small())
    (finding,) = draft.findings
    assert draft.shown is None
    assert finding.message == "All stands are of one unit, whose plate is plain."


def test_nothing_raised_has_none_and_nothing_is_said() -> None:
    empty = replace(battalion().marks, companies=(), marks={}, stands=())
    draft = key_cards(replace(battalion(), marks=empty))
    assert (draft.shown, draft.findings) == (None, ())
