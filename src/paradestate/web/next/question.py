"""What is asked of the sheet of what to get next: the fields of its form, read and written.

Money and hours both stay in the address, so that one can be looked at after the other; which of
them counts is said beside. Where no amount is given it is the usual one of the files.
"""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from fractions import Fraction
from urllib.parse import urlencode

from paradestate.core.advice.advice import Aim
from paradestate.core.choice import Choice
from paradestate.core.finding import Finding
from paradestate.core.force import Force
from paradestate.core.outline import decimal_text
from paradestate.journeys.choosing import choice_of, money_of, typed_finding, want_of
from paradestate.journeys.next import NextAsked
from paradestate.text.number import read_whole
from paradestate.text.slip import Slip
from paradestate.text.typed import numbers_text

USUAL_SECONDS = 20
"""Fewer than the command takes: somebody looks on."""
SECONDS = (USUAL_SECONDS, 60, 300)
MONEY, HOURS = "money", "hours"
TEXTS = ("spend", MONEY, HOURS, "game", "counting", "aim", "wish", "seconds", "set", "date")
BY_WEIGHT = "weight"
GRADE = "grade:"
"""Before the name of each scale that isn't as usual."""
MOST_TYPED = 4000
"""Letters of one field; what is longer was not typed."""
MOST_WISHED = 100
"""Of one thing. No game wants more, and each more is one more to go through."""
MINUTES_OF_AN_HOUR = 60


@dataclass(frozen=True, slots=True, kw_only=True)
class Question:
    """What there is to spend, on which games, to what end, and what is wished for anyway."""

    choice: Choice
    grades: Mapping[str, str]
    is_hours: bool
    """Whether hours of work are spent, not money."""
    amount: Fraction | None
    """As it was filled in; None where it wasn't."""
    aim: Aim | None
    wish: Mapping[str, int]
    seconds: int
    by_weight: bool
    """Whether games count by the weights of the folder alone."""
    typed: Mapping[str, str]
    """The fields as they were filled in, without those left empty."""
    findings: tuple[Finding, ...]
    """A stop for each text with a slip."""

    def query(self, **other: str) -> str:
        """The same question as the end of an address, with some fields changed."""
        fields = {key: value for key, value in {**self.typed, **other}.items() if value}
        return f"?{urlencode(fields)}" if fields else ""

    def with_wish(self, name: str) -> str:
        """The same question with one of that wished for too."""
        return self.query(wish=numbers_text({**self.wish, name: 1}))

    def without_wish(self, name: str) -> str:
        """The same question without that wish."""
        left = {each: number for each, number in self.wish.items() if each != name}
        return self.query(wish=numbers_text(left))

    def asked(self, force: Force) -> NextAsked | None:
        """What is asked of a force; None where it isn't known what there is to spend."""
        amount = usual_amount(force, is_hours=self.is_hours)
        amount = amount if self.amount is None else self.amount
        if amount is None:
            return None
        return NextAsked(
            money=None if self.is_hours else amount,
            hours=amount if self.is_hours else Fraction(0),
            aim=self.aim,
            wish=self.wish,
            seconds=self.seconds,
            by_weight=self.by_weight,
        )


def usual_amount(force: Force, *, is_hours: bool) -> Fraction | None:
    """The money of a month or the hours of a week, as the files say; None where they don't."""
    if is_hours:
        week = force.bench.week
        return None if week is None else week / MINUTES_OF_AN_HOUR
    return force.aim.a_month if force.aim else None


def usual_text(force: Force, *, is_hours: bool) -> str:
    """The usual amount as it is filled in; empty where there is none."""
    usual = usual_amount(force, is_hours=is_hours)
    return "" if usual is None else decimal_text(usual)


def question(query: Mapping[str, str]) -> Question:
    """The question that the fields of an address ask."""
    typed = {key: value.strip()[:MOST_TYPED] for key, value in query.items() if _is_known(key)}
    typed = {key: value for key, value in typed.items() if value}
    choice, findings = choice_of(
        numbers=(typed["set"],) if "set" in typed else (),
        date=typed.get("date", ""),
        game=typed.get("game", ""),
    )
    is_hours = typed.get("spend") == HOURS
    amount, no_amount = money_of(typed.get(HOURS if is_hours else MONEY, ""))
    wish, no_wish = want_of(typed.get("wish", ""))
    aim = typed.get("aim", "")
    return Question(
        choice=choice,
        grades={
            key.removeprefix(GRADE): value for key, value in typed.items() if key.startswith(GRADE)
        },
        is_hours=is_hours,
        amount=amount,
        aim=Aim(aim) if aim in set(Aim) else None,
        wish=wish or {},
        seconds=_seconds(typed.get("seconds", "")),
        by_weight=typed.get("counting") == BY_WEIGHT,
        typed=typed,
        findings=(*findings, *no_amount, *no_wish, *_too_many(wish or {})),
    )


def _is_known(key: str) -> bool:
    return key in TEXTS or key.startswith(GRADE)


def _too_many(wish: Mapping[str, int]) -> Iterator[Finding]:
    """A stop for each wish of which more is wanted than is looked at."""
    for name, number in wish.items():
        if number > MOST_WISHED:
            yield typed_finding(
                Slip(
                    code="number-too-great",
                    message=f"{number:,} x {name} are wished for.",
                    hint=f"Wish for at most {MOST_WISHED} of one thing.",
                )
            )


def _seconds(text: str) -> int:
    """How long to look: what isn't a number of seconds is taken for the usual."""
    read = read_whole(text, least=1) if text else USUAL_SECONDS
    return USUAL_SECONDS if isinstance(read, Slip) else min(read, SECONDS[-1])
