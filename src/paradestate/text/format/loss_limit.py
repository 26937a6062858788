"""The section `loss limits`: at how many losses what happens."""

import re
from dataclasses import dataclass
from fractions import Fraction

from paradestate.core.formation import Echelon
from paradestate.core.play.loss_limit import COUNTED, SHARES, LossLimit, Threshold
from paradestate.text.codec import ListOf, MappingOf, NameOf, Plain, Schema, Text
from paradestate.text.context import Context
from paradestate.text.format import value
from paradestate.text.format.counts import Counts
from paradestate.text.format.troops import FORMATIONS, STANDS
from paradestate.text.number import read_measure, read_percent, read_whole
from paradestate.text.record import record, word
from paradestate.text.slip import Invalid, Slip
from paradestate.text.tree import Node, Scalar

STATES = "states"

_MORE = re.compile(r"more than\s+")
_BY_NAME = {name: share for share, name in SHARES.items()}


def read_threshold(text: str) -> Threshold | Slip:
    """A number of losses or a share: `5`, `more than 4`, `half`, `1/3`, `30%`, `all`."""
    more = _MORE.match(text)
    amount = text[more.end() :] if more else text
    read = _read_amount(amount)
    if isinstance(read, Slip):
        return read
    is_share = amount in _BY_NAME or amount.endswith("%") or "/" in amount
    threshold = Threshold(amount=read, is_share=is_share, is_more=more is not None)
    return _unreachable(threshold, text) or threshold


def _read_amount(text: str) -> Fraction | Slip:
    if text in _BY_NAME:
        return _BY_NAME[text]
    if text.endswith("%"):
        return read_percent(text)
    if "/" in text:
        return read_measure(text)
    whole = read_whole(text)
    return whole if isinstance(whole, Slip) else Fraction(whole)


def _unreachable(threshold: Threshold, text: str) -> Slip | None:
    """The slip for what holds before anything is lost, or never."""
    share = threshold.amount
    if not share:
        said = "is reached before anything is lost"
    elif threshold.is_share and (share > 1 or (share == 1 and threshold.is_more)):
        said = "is more than there is to lose"
    else:
        return None
    return Slip(
        code="no-loss-limit",
        message=f"'{text}' {said}.",
        hint="Write how many are lost, or which share: 5, more than 4, half, 1/3, 30%, all.",
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class Counted:
    """What is counted: stands, figures, leaders hit, or one of the owner's states."""

    def read(self, node: Node, context: Context) -> str | Invalid:
        """One of the three words, else a state that the folder names."""
        if isinstance(node, Scalar) and node.text in COUNTED:
            return node.text
        return _STATE.read(node, context)

    def write(self, value: str) -> Plain:
        """The word."""
        return value

    def schema(self) -> Schema:
        """Any of them."""
        return {"anyOf": [{"enum": list(COUNTED)}, _STATE.schema()]}


_STATE = NameOf(kind=STATES)
THRESHOLD = Text(
    parse=read_threshold,
    show=str,
    described={"type": ["string", "integer"], "examples": ["more than half"]},
)
LOSS_LIMITS = ListOf(
    of=record(
        LossLimit,
        word("of", NameOf(kind=FORMATIONS), about="each of this formation by itself"),
        word("echelon", value.words_of(Echelon), about="every body of this size by itself"),
        word("count", Counted(), about="stands, figures, leaders hit, or one of your states"),
        word("counts as", Counts(kind=STANDS, nought=True), about="what a stand counts, if not 1"),
        word("supporting troops", value.YES_NO, about="those of the whole force count as well"),
        word("among", NameOf(kind=FORMATIONS), about="only units of this formation are counted"),
        word(
            "at",
            MappingOf(key=THRESHOLD, value=value.NAME),
            required=True,
            about="so many losses, or such a share, to what happens in your own words",
        ),
    )
)
