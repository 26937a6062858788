"""Names of stands that supporting troops bring."""

from paradestate.core.game import Purchase
from paradestate.core.play.brought import Brought, brought_stands
from tests.forces import marenz

ENTRIES = marenz().supporting_troops


def names(*plan: Purchase) -> list[str]:
    return [each.name for each in brought_stands(plan, entries=ENTRIES)]


def test_each_one_taken_brings_its_stands_numbered_over_all_purchases() -> None:
    one = Purchase(entry="anti-tank guns", number=1)
    brought = brought_stands((one, one), entries=ENTRIES)
    assert brought == (
        Brought(name="anti-tank guns / 1 anti-tank gun team", pattern="anti-tank gun team"),
        Brought(name="anti-tank guns / 2 anti-tank gun team", pattern="anti-tank gun team"),
        Brought(name="anti-tank guns / 1 truck", pattern="truck"),
        Brought(name="anti-tank guns / 2 truck", pattern="truck"),
    )
    assert names(Purchase(entry="lorries for a company", number=1))[-1] == (
        "lorries for a company / 4 lorry"
    )


def test_what_is_granted_comes_once_a_purchase() -> None:
    mortars = Purchase(entry="medium mortars", number=2)
    assert names(mortars) == [
        "medium mortars / 1 medium mortar",
        "medium mortars / 2 medium mortar",
        "medium mortars / 1 observer",
    ]


def test_what_brings_no_stands_has_no_names() -> None:
    assert names(Purchase(entry="assault training for a platoon", number=1)) == []
