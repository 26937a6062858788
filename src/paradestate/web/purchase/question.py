"""What is asked of the page of purchases: the fields of its form, read and written."""

from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction
from urllib.parse import urlencode

from paradestate.core.finding import Finding
from paradestate.journeys.choosing import amount_of, money_of, want_of
from paradestate.journeys.order import Request
from paradestate.text.number import read_whole
from paradestate.text.slip import Slip
from paradestate.web.way_out import in_words

USUAL_SECONDS = 60
LONGEST_SECONDS = 600
"""Nobody's search takes longer, so that a page can't be made to work for ever."""

FLAGS = ("stand-ins", "fewest-left-over", "one-parcel", "soonest")
TEXTS = ("want", "within", "seconds", "limit", "carried")
SOURCE = "source:"
"""Before the name of each source to buy from."""
CHOSEN = "chosen"
MOST_TYPED = 4000
"""Letters of one field; what is longer was not typed."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Question:
    """What order is looked for, which step is chosen, and what may be spent in a month."""

    request: Request
    seconds: int
    chosen: str
    """The letter of a step; empty for the first."""
    limit: Fraction | None
    """Money a month for this sum only, in units of the force's currency."""
    carried: Fraction
    typed: Mapping[str, str]
    """The fields as they were filled in, without those left empty."""
    findings: tuple[Finding, ...]
    """A stop for each text with a slip."""

    def query(self, **other: str) -> str:
        """The same question as the end of an address, with some fields changed.

        Empty where the usual order is asked for.
        """
        fields = {key: value for key, value in {**self.typed, **other}.items() if value}
        return f"?{urlencode(fields)}" if fields else ""

    @property
    def is_changed(self) -> bool:
        """Whether something else than the usual order is asked for."""
        return bool(set(self.typed) - {CHOSEN})


def question(query: Mapping[str, str]) -> Question:
    """The question that the fields of a form or an address ask."""
    typed = {key: value.strip()[:MOST_TYPED] for key, value in query.items() if _is_known(key)}
    typed = {key: value for key, value in typed.items() if value}
    want, findings = want_of(typed.get("want", ""))
    within, more = amount_of(typed.get("within", ""))
    limit, yet_more = money_of(typed.get("limit", ""))
    carried, still_more = money_of(typed.get("carried", ""))
    return Question(
        request=Request(
            want=want,
            sources=tuple(key.removeprefix(SOURCE) for key in typed if key.startswith(SOURCE)),
            stand_ins="stand-ins" in typed,
            fewest_left_over="fewest-left-over" in typed,
            one_parcel="one-parcel" in typed,
            soonest="soonest" in typed,
            within=within,
        ),
        seconds=_seconds(typed.get("seconds", "")),
        chosen=typed.get(CHOSEN, ""),
        limit=limit,
        carried=carried or Fraction(0),
        typed=typed,
        findings=(*findings, *more, *yet_more, *still_more),
    )


def _is_known(key: str) -> bool:
    return key in {*FLAGS, *TEXTS, CHOSEN} or key.startswith(SOURCE)


def _seconds(text: str) -> int:
    """How long to look: what isn't a number of seconds is taken for the usual."""
    read = read_whole(text, least=1) if text else USUAL_SECONDS
    return USUAL_SECONDS if isinstance(read, Slip) else min(read, LONGEST_SECONDS)


IN_WORDS_OF_THE_PAGE = {
    "Leave out --one-parcel.": "Untick “One parcel”.",
    "and without --within": "and leave “Good enough within” empty",
    "with --seconds": "below, under “Look for at most”",
    "with --want": "with a want of your own",
    "a --limit above nought": "money a month above nought",
    "with --carried": "as there already",
    "Give it with --limit 30, or": "Fill it in below, or",
    "Join some that are bought together, and name them all with --order.": (
        "Buy from fewer sources, or in one parcel."
    ),
}
"""Ways out that findings name by the options of the command, as the page has them."""


def for_the_page(findings: tuple[Finding, ...]) -> tuple[Finding, ...]:
    """The findings with their ways out in the words of the page."""
    return in_words(findings, IN_WORDS_OF_THE_PAGE)
