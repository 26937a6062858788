"""Ranks of the parade as pages draw them, and where a stand of it is looked at."""

from collections.abc import Sequence
from urllib.parse import urlencode

from paradestate.core.parade import OnParade, Rank
from paradestate.journeys.count import Count
from paradestate.sheet.parade_ground import NARROW, WIDE, Ground, rank_drawing
from paradestate.sheet.svg import Drawing
from paradestate.web.visit import Visit


def stand_address(visit: Visit, name: str) -> str:
    """Where a stand is looked at on the parade."""
    return visit.address(f"parade?{urlencode({'stand': name})}#stand")


def rank_drawings(
    visit: Visit, rank: Rank, *, stands: Sequence[OnParade], counted: Count, chosen: str = ""
) -> tuple[Drawing, Drawing]:
    """Stands of a rank, drawn for a desk and for a phone."""
    wide, narrow = (
        Ground(
            patterns=counted.force.stands,
            stages=counted.force.bench.stages,
            address=lambda name: stand_address(visit, name),
            width=width,
            chosen=chosen,
        )
        for width in (WIDE, NARROW)
    )
    return rank_drawing(rank, stands, ground=wide), rank_drawing(rank, stands, ground=narrow)
