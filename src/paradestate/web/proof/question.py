"""What is asked of the sheet of the list: the fields of its forms, read and written.

The whole question stands in the address, so that it can be shared and gone back to.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from urllib.parse import urlencode

from paradestate.core.choice import CHOSEN_HERE, Choice
from paradestate.core.finding import Finding, Level
from paradestate.core.support.amendment import Amendment
from paradestate.core.support.offer import Offer
from paradestate.journeys.amending import EntryTyped, amendments_of_entry
from paradestate.journeys.choosing import choice_of, number_of
from paradestate.web.choosing.question import GRADE, MOST_TYPED

GAME, POINTS, NUMBERS, DATE = "game", "points", "set", "date"
ENTRY, MOST, BESIDE = "entry", "most", "beside"
"""The entry that is changed, how many purchases of it a force may hold, another version."""
TEXTS = (GAME, POINTS, NUMBERS, DATE, ENTRY, MOST, BESIDE)
PRICE, WORTH = "price:", "worth:"
"""Before each number of the entry whose price or worth is changed."""
MOST_DIGITS = 6
"""Of such a number."""
MOST_POINTS = 1_000
"""Of more the sums would keep a page waiting for minutes."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Question:
    """Which game is looked at, and what is changed in it."""

    choice: Choice
    grades: Mapping[str, str]
    """Scale to grade, for those that aren't as usual."""
    points: int | None
    """The points left that are looked at alone."""
    entry: str
    """The entry that is changed; empty where none is chosen."""
    beside: str
    """The force that is another version of this list; empty where none is chosen."""
    typed: Mapping[str, str]
    """The fields as they were filled in, without those left empty."""
    findings: tuple[Finding, ...]
    """A stop for each text with a slip."""

    def query(self, **other: str) -> str:
        """The same question as the end of an address, with some fields changed."""
        return self.with_fields(other)

    def with_fields(self, other: Mapping[str, str]) -> str:
        """The same question as the end of an address, with fields of any name changed."""
        fields = {key: value for key, value in {**self.typed, **other}.items() if value}
        return f"?{urlencode(fields)}" if fields else ""

    def about(self, entry: str) -> str:
        """The same question about another entry, nothing of which is changed yet."""
        return self.with_fields({**dict.fromkeys(self.changed, ""), ENTRY: entry})

    @property
    def changed(self) -> tuple[str, ...]:
        """The boxes of the entry that are filled in."""
        return tuple(key for key in self.typed if key == MOST or key.startswith((PRICE, WORTH)))

    @property
    def terms(self) -> Mapping[str, str]:
        """The fields that say which game is looked at, and by which numbers."""
        return {key: value for key, value in self.typed.items() if key not in self._changing}

    @property
    def _changing(self) -> frozenset[str]:
        return frozenset((*self.changed, ENTRY, BESIDE))

    def amendments(self, offer: Offer) -> tuple[tuple[Amendment, ...], tuple[Finding, ...]]:
        """What is changed of the entry as it stands in the game, and a stop for each slip."""
        typed = EntryTyped(
            entry=offer.name,
            prices=_by_number(self.typed, PRICE),
            most=self.typed.get(MOST, ""),
            worths=_by_number(self.typed, WORTH),
        )
        return amendments_of_entry(typed, offer=offer)


def question(query: Mapping[str, str]) -> Question:
    """The question that the fields of a form or an address ask."""
    typed = {key: value.strip()[:MOST_TYPED] for key, value in query.items() if _is_known(key)}
    typed = {key: value for key, value in typed.items() if value}
    choice, findings = choice_of(
        numbers=(typed[NUMBERS],) if NUMBERS in typed else (),
        date=typed.get(DATE, ""),
        game=typed.get(GAME, ""),
    )
    points, more = number_of(typed.get(POINTS, ""), of="Points left")
    return Question(
        choice=choice,
        grades={
            key.removeprefix(GRADE): value for key, value in typed.items() if key.startswith(GRADE)
        },
        points=points,
        entry=typed.get(ENTRY, ""),
        beside=typed.get(BESIDE, ""),
        typed=typed,
        findings=(*findings, *more, *_too_many(points)),
    )


def _too_many(points: int | None) -> tuple[Finding, ...]:
    if points is None or points <= MOST_POINTS:
        return ()
    return (
        Finding(
            level=Level.STOP,
            code="points-too-many-here",
            message=f"{points:,} points are too many for a page; it looks at up to "
            f"{MOST_POINTS:,}.",
            effect="Nothing is worked out.",
            hint=f"Fill in fewer, or use the command: paradestate proof --points {points}.",
            place=CHOSEN_HERE,
        ),
    )


def _by_number(typed: Mapping[str, str], before: str) -> Mapping[int, str]:
    return {
        int(key.removeprefix(before)): text for key, text in typed.items() if key.startswith(before)
    }


def _is_known(key: str) -> bool:
    if key.startswith((PRICE, WORTH)):
        number = key.partition(":")[2]
        return number.isascii() and number.isdecimal() and len(number) <= MOST_DIGITS
    return key in TEXTS or key.startswith(GRADE)
