"""Hosts and transport."""

from dataclasses import replace

from paradestate.core.establishment import establishment
from paradestate.core.finding import Finding, Level
from paradestate.core.force import Force
from paradestate.core.game import Purchase
from paradestate.core.support.judge_finding import Known
from paradestate.core.support.room import Fielded, room_findings
from tests.forces import force_from, marenz
from tests.support_terms import Plan

FIGURES = (
    "figures: {man: {footprint: 6 mm}, horse: {footprint: 6 mm, sort: mounted},"
    " lorry: {footprint: 16 x 42 mm, sort: vehicle}}"
)
STANDS = (
    "stands: {section: {base: 40 x 20 mm, figures: {man: 4}},"
    " marker: {base: 30 mm disc, printed: yes},"
    " troop: {base: 40 x 20 mm, figures: {horse: 2}},"
    " lorry: {base: none, footprint: 16 x 42 mm, figures: {lorry: 1}, carries: 2}}"
)
TOP = (
    "formations: {top: {parts: {company: 2}}, company: {parts: {section: 3, marker: 1, troop: 1}}}"
)
ENTRIES = """
supporting troops:
  guns: {cost: {1: 2, 2: 3}, each: {section: 1}, attach: {to: company, most per host: 1}}
  lorries: {cost: {1: 2, 2: 3}, each: {lorry: 1}, limit: {most: 1, of: company}}
  column: {cost: {1: 2}, each: {lorry: 1, section: 3, troop: 1}}
  carts: {cost: {1: 2}, each: {lorry: 1}, attach: {to: company}}
  spare: {cost: {1: 2}, each: {lorry: 1}, limit: {most: 3}}
"""


def army(*more: str, formations: str = TOP) -> Force:
    return force_from(FIGURES, STANDS, formations, ENTRIES, *more)


def said(force: Force, *plan: tuple[str, int], kept_back: Plan = ()) -> list[Finding]:
    made, _ = establishment(force)
    assert made is not None
    purchases: Plan = tuple(Purchase(entry=name, number=number) for name, number in plan)
    fielded = Fielded(force=force, made=made, plan=purchases)
    return list(room_findings(fielded, known=Known(), kept_back=kept_back))


def messages(force: Force, *plan: tuple[str, int]) -> list[str]:
    return [finding.message for finding in said(force, *plan)]


def test_every_section_has_a_host() -> None:
    assert said(army(), ("guns", 2)) == []


def test_a_section_too_many_stands_alone() -> None:
    (finding,) = said(army(), ("guns", 2), ("guns", 1))
    assert (finding.level, finding.code) == (Level.WARN, "hosts-short")
    assert finding.message == (
        "3 sections to attach (2 x guns and 1 x guns), 2 companies with room for 2: "
        "one must stand alone."
    )
    assert finding.hint == "Take one fewer, or keep it in support."
    (two,) = said(army(), ("guns", 2), ("guns", 2))
    assert two.hint == "Take two fewer, or keep them in support."


def test_what_is_kept_back_needs_no_host() -> None:
    back = (Purchase(entry="guns", number=1),)
    assert said(army(), ("guns", 2), ("guns", 1), kept_back=back) == []


def test_lorries_for_a_company_carry_its_stands_on_foot() -> None:
    assert messages(army(), ("lorries", 1)) == [
        "lorries for 1 Company: 3 stands, 2 places to ride: 1 stand walks (1 Company / 3 Section)."
    ]
    assert messages(army(), ("lorries", 2)) == []
    assert messages(army(), ("carts", 1), ("carts", 1)) == [
        (
            "carts for 1 Company and 2 Company: 6 stands, 4 places to ride: 2 stands walk "
            "(2 Company / 2 Section and 2 Company / 3 Section)."
        )
    ]


def test_transport_for_nobody_in_particular_is_not_judged() -> None:
    assert messages(army(), ("spare", 1)) == []


def test_a_purchase_carries_its_own() -> None:
    assert messages(army(), ("column", 1)) == [
        "1 x column: 3 stands, 2 places to ride: 1 stand walks (section)."
    ]


def test_a_body_carries_its_own_stands() -> None:
    one = "formations: {top: {parts: {section: 8, lorry: 1}}, company: {parts: {section: 1}}}"
    (message,) = messages(army(formations=one))
    assert message == (
        "Top: 8 stands, 2 places to ride: 6 stands walk "
        "(3 Section, 4 Section, 5 Section and 6 Section and 2 more)."
    )
    ample = "formations: {top: {parts: {section: 2, lorry: 1}}, company: {parts: {section: 1}}}"
    assert messages(army(formations=ample)) == []


def test_a_raised_formation_of_the_kind_itself_is_carried() -> None:
    top = "formations: {top: {parts: {section: 3}}, company: {parts: {section: 1}}}"
    force = force_from(
        FIGURES,
        STANDS,
        top,
        "supporting troops: {lorries: {cost: 2, each: {lorry: 1}, limit: {most: 1, of: top}}}",
    )
    assert messages(force, ("lorries", 1)) == [
        "lorries for Top: 3 stands, 2 places to ride: 1 stand walks (3 Section)."
    ]


def test_stands_by_a_fixed_ratio_ride_too() -> None:
    force = force_from(
        FIGURES,
        STANDS,
        "formations: {top: {men per figure: 30, figure: man, figures per stand: 4,"
        " parts: {wing: 1}}, wing: {men: 480}}",
        "supporting troops: {lorries: {cost: 2, each: {lorry: 1}, limit: {most: 1, of: wing}}}",
    )
    assert messages(force, ("lorries", 1)) == [
        (
            "lorries for Wing: 4 stands, 2 places to ride: 2 stands walk "
            "(Wing / 3 Stand and Wing / 4 Stand)."
        )
    ]


def test_the_example_has_room_for_all_its_lorries_carry() -> None:
    """8 stands and four lorries of two; two observers and two trucks of two places.

    Worked by hand.
    """
    assert messages(marenz(), ("lorries for a company", 1), ("anti-tank guns", 3)) == []


def test_three_lorries_for_the_eight_stands_of_a_company_let_two_walk() -> None:
    """Two stands walk, and are named (worked by hand)."""
    force = marenz()
    lorries = force.supporting_troops["lorries for a company"]
    fewer = {**force.supporting_troops, lorries.name: replace(lorries, each={"lorry": 3})}
    assert messages(replace(force, supporting_troops=fewer), (lorries.name, 1)) == [
        (
            "lorries for a company for No 1 Company: 8 stands, 6 places to ride: 2 stands walk "
            "(No 1 Company / 3 Platoon / 2 Section and No 1 Company / Light Mortar Section)."
        )
    ]


def test_two_trucks_of_two_places_are_ample_for_the_observers_and_of_one_are_not() -> None:
    """The battalion command rides with the two observers (worked by hand)."""
    force = marenz()
    assert messages(force) == []
    narrow = {**force.stands, "truck": replace(force.stands["truck"], carries=1)}
    assert messages(replace(force, stands=narrow)) == [
        "Battalion: 3 stands, 2 places to ride: 1 stand walks (2 Observer)."
    ]


def test_stands_that_walk_are_counted_however_many_they_are() -> None:
    (message,) = messages(army(), ("column", 10**9))
    assert message == (
        "1000000000 x column: 3000000000 stands, 2000000000 places to ride: "
        "1000000000 stands walk (section, section, section and section and 999999996 more)."
    )
