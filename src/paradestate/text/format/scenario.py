"""The words `strengths` and `arrivals` of a game."""

from paradestate.core.dice import Totals
from paradestate.core.scenario import Arrival
from paradestate.text.codec import MappingOf, NameOf, Text
from paradestate.text.dice import read_band
from paradestate.text.format import value
from paradestate.text.format.roll import looked_up
from paradestate.text.format.troops import ELEMENTS, FORMATIONS
from paradestate.text.record import record, word
from paradestate.text.slip import Slip


def _read_totals(text: str) -> Totals | Slip:
    ends = read_band(text)
    return ends if isinstance(ends, Slip) else Totals(least=ends[0], most=ends[1])


TOTALS = Text(
    parse=_read_totals,
    show=str,
    described={"type": ["string", "integer"], "examples": ["4 or more"]},
)
_ARRIVAL = record(
    Arrival,
    word("roll", value.DICE, about="rolled each turn; left out: it comes in the first turn named"),
    word("on", TOTALS, about="totals on which it comes: 4 or more"),
    word("from turn", value.WHOLE),
    word("until turn", value.WHOLE, about="the last turn in which is rolled"),
    word("edge", value.FREE, about="where it comes onto the table"),
)
ARRIVALS = MappingOf(key=NameOf(kind=ELEMENTS), value=_ARRIVAL)
STRENGTHS = MappingOf(
    key=NameOf(kind=FORMATIONS), value=looked_up(value.PERCENT, example="{1-3: 50%, 4-6: 100%}")
)
