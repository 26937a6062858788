"""The section `campaign`: what a game leaves behind for the next one."""

from paradestate.core.campaign.recovery import Campaign, Recovery
from paradestate.text.codec import ListOf, MappingOf, NameOf
from paradestate.text.format import value
from paradestate.text.format.counts import Counts
from paradestate.text.format.scenario import TOTALS
from paradestate.text.format.troops import FORMATIONS, STANDS
from paradestate.text.record import record, word

_RECOVERY = record(
    Recovery,
    word("roll", value.DICE, required=True, about="rolled for a stand that was out of action"),
    word("on", TOTALS, required=True, about="totals on which it comes back"),
    word("promoted on", TOTALS, about="totals on which it has gained experience as well"),
    by_hand=False,
)
CAMPAIGN = record(
    Campaign,
    word("recovery", MappingOf(key=NameOf(kind=STANDS), value=_RECOVERY)),
    word("rolled once for", NameOf(kind=FORMATIONS), about="stands alike in it share a roll"),
    word("never back", ListOf(of=value.NAME), about="your words for out of action without a roll"),
    word("replacements", Counts(kind=STANDS), about="stands that may be sent up, in all"),
)
