"""What goes into the trays, and which trays there are."""

from paradestate.core.choice import Choice, chosen
from paradestate.core.establishment import Establishment, establishment
from paradestate.core.force import Force
from paradestate.core.game import Purchase
from paradestate.core.outline import Disc, millimetres
from paradestate.core.strength import strength
from paradestate.core.tray.content import MOST_CASES, MOST_THINGS, Content, cases, content
from tests.forces import force_from, marenz


def filled(force: Force, *plan: Purchase, only_finished: bool = False) -> Content:
    made = unfolded(force)
    return content(
        force,
        made,
        strength=strength(force, made),
        plan=plan,
        only_finished=only_finished,
    )


def unfolded(force: Force) -> Establishment:
    made, _ = establishment(force)
    assert made is not None
    return made


def test_every_wanted_stand_goes_in_and_printed_ones_too() -> None:
    held = filled(marenz())
    patterns = [thing.pattern for thing in held.things]
    assert (len(patterns), patterns.count("hidden-movement marker")) == (45, 8)
    assert "headquarters scene" not in patterns
    section = next(each for each in held.things if each.name.endswith("3 Platoon / 1 Section"))
    assert (section.company, section.platoon) == ("No 1 Company", "No 1 Company / 3 Platoon")
    command = next(each for each in held.things if each.name == "No 1 Company / Company Command")
    assert (command.platoon, command.outline) == ("", Disc(diameter=millimetres(30)))


def test_a_plan_brings_its_stands_and_takes_those_away_that_it_exchanges() -> None:
    force, _ = chosen(marenz(), Choice(game="whole-day attack"))
    held = filled(force, Purchase(entry="machine-gun platoon", number=2))
    more = [each for each in held.things if each.company == "Machine-gun platoon"]
    assert [each.name for each in more] == [
        "Machine-gun platoon / Machine-gun team 1",
        "Machine-gun platoon / Machine-gun team 2",
    ]
    assert len(held.things) == 47
    many = filled(force, Purchase(entry="machine-gun platoon", number=10 * MOST_THINGS))
    assert len(many.things) == 45 + MOST_THINGS


EXCHANGE = """\
figures: {man: {footprint: 6 mm}}
stands:
  section: {base: 40 x 20 mm, figures: {man: 1}, height: 22 mm}
  storm section: {base: 40 x 20 mm, figures: {man: 2}}
  card: {base: 30 mm disc, printed: yes}
  wraith: {base: none, figures: {man: 1}}
formations: {top: {parts: {section: 2, card: 1, wraith: 1}}}
stock: {man: {based: 1}}
supporting troops:
  storm: {cost: 1, replaces: {of: section, number: 1, with: storm section}}
  guns: {cost: 1, each: {section: 1}, place: off table}
trays: {box: {inside: 100 x 100 mm}, case: {inside: 90 x 90 mm, number: 2}}
"""


def test_exchanged_stands_stay_at_home_and_what_is_off_the_table_has_none() -> None:
    force = force_from(EXCHANGE)
    plan = (Purchase(entry="storm", number=1), Purchase(entry="guns", number=1))
    held = filled(force, *plan)
    assert [each.name for each in held.things] == ["2 Section", "Card", "Storm / Storm section 1"]
    assert held.sizeless == {"wraith": 1}
    assert [each.height for each in held.things] == [22, None, None]


def test_only_what_is_finished_or_printed_where_that_is_asked() -> None:
    held = filled(force_from(EXCHANGE), only_finished=True)
    assert [each.name for each in held.things] == ["1 Section", "Card"]
    plan = Purchase(entry="storm", number=1)
    assert "Storm / Storm section 1" not in [
        each.name for each in filled(force_from(EXCHANGE), plan, only_finished=True).things
    ]


def test_alike_trays_are_numbered_and_bounded() -> None:
    trays = force_from(EXCHANGE).trays
    assert [(each.name, each.kind) for each in cases(trays)] == [
        ("box", "box"),
        ("case 1", "case"),
        ("case 2", "case"),
    ]
    many = force_from(EXCHANGE.replace("number: 2", "number: 900")).trays
    assert len(cases(many)) == MOST_CASES


RATIO = """\
figures: {man: {footprint: 6 mm}}
formations:
  top: {men per figure: 10, figure: man, figures per stand: 4, parts: {company: 2}}
  company: {men: 60}
"""


def test_stands_by_ratio_have_no_size() -> None:
    held = filled(force_from(RATIO))
    assert held.things == ()
    assert list(held.sizeless) == ["man stand"]
