"""What a club has to give out."""

from dataclasses import replace

from paradestate.core.club.sound import club_stock, sound_stock
from paradestate.core.figure import FigureKind
from paradestate.core.holdings import Holdings
from tests.forces import marenz


def test_only_what_is_at_the_last_stage_is_given_out() -> None:
    force = replace(
        marenz(),
        stock={"light truck": {"based": 12, "assembled": 2}, "officer": {"painted": 1}},
        stock_stands={"rifle section": {"based": 2}, "unknown": {"based": 1}},
    )
    stock = sound_stock(force)
    assert stock.sound == {"light truck": 12, "rifleman": 8}
    assert stock.in_repair == {"light truck": 2, "officer": 1}
    assert stock.figures == force.figures


def test_what_only_another_force_of_the_collection_has_counts_by_its_stages() -> None:
    marenz_force = marenz()
    other = replace(
        marenz_force,
        figures={"horse": FigureKind(name="horse"), "rifleman": FigureKind(name="rifleman")},
        stands={},
        bench=replace(marenz_force.bench, stages=("raw", "done")),
    )
    held = Holdings(
        figures={
            "horse": {"done": 3, "raw": 2},
            "rifleman": {"based": 4, "done": 9},
            "mule": {"done": 1},
        },
        stands={"rifle section": {"based": 1}},
    )
    stock = club_stock(held, (marenz_force, other))
    assert stock.sound == {"horse": 3, "rifleman": 8}
    assert stock.in_repair == {"horse": 2}
    assert stock.figures["rifleman"] == marenz_force.figures["rifleman"]
    assert stock.figures["horse"] == other.figures["horse"]
