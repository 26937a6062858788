"""What the bench uses up: `bench: supplies`."""

from paradestate.core.supplies import Supplies
from paradestate.text.codec import MappingOf, NameOf
from paradestate.text.format import value
from paradestate.text.format.troops import KINDS_AND_SORTS
from paradestate.text.record import record, word

_OF_FIGURES = NameOf(kind=KINDS_AND_SORTS)

SUPPLIES = record(
    Supplies,
    word(
        "area",
        MappingOf(key=_OF_FIGURES, value=value.AREA),
        about="of one figure, that paint covers",
    ),
    word(
        "paint per 100",
        MappingOf(key=_OF_FIGURES, value=value.VOLUME),
        about="what a hundred figures took, all colours and waste included",
    ),
    word("film", value.THICKNESS, about="of one coat, wet"),
    word("wasted", value.PART, about="share that stays on palette and brush"),
    word("spare", value.PERCENT, about="bought beyond what is needed"),
    word("bottle", value.VOLUME),
    word("undercoat", value.COUNT, about="coats"),
    word("varnish", value.COUNT, about="coats"),
    word("sheet", value.RECTANGLE, about="magnetic or steel sheet"),
)
