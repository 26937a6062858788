"""What a club has to give out."""

from dataclasses import replace

from paradestate.core.club.sound import sound_stock
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
