"""What is asked of the sheet of choosing: the fields of its form, read and written.

The whole question stands in the address, so that it can be shared and gone back to. The plan is in
it as it is typed beside a command.
"""

from collections.abc import Container, Iterator, Mapping
from dataclasses import dataclass, replace
from urllib.parse import urlencode

from paradestate.core.choice import Choice
from paradestate.core.finding import Finding
from paradestate.core.game import Purchase
from paradestate.journeys.choosing import choice_of, number_of, plan_of
from paradestate.text.typed import purchases_text

TEXTS = ("game", "rolled", "plan", "set", "date")
GRADE, ALLOWED = "grade:", "allowed:"
"""Before the name of each scale that isn't as usual, and of each entry that was rolled for."""
MOST_TYPED = 4000
"""Letters of one field; what is longer was not typed."""
NO_PLAN = "none"
"""Stands for a plan of nothing; where no plan is said, that of the game is meant."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Question:
    """Which game is chosen for, what was rolled, what is planned, and what the dice allowed."""

    choice: Choice
    grades: Mapping[str, str]
    """Scale to grade, for those that aren't as usual."""
    rolled: int | None
    """The allowance that was rolled, before anything is taken off."""
    allowed: Mapping[str, int]
    """Entry to how many the dice allowed."""
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

    def with_plan(self, plan: tuple[Purchase, ...]) -> str:
        """The same question about another plan."""
        return self.query(plan=purchases_text(plan) or NO_PLAN)

    def plan(
        self, *, entries: Container[str], of_game: tuple[Purchase, ...] = ()
    ) -> tuple[tuple[Purchase, ...], tuple[Finding, ...]]:
        """The plan that stands in the address, and a stop where it can't be read.

        Where none does, that of the game.
        """
        typed = self.typed.get("plan", "")
        if not typed or typed == NO_PLAN:
            return () if typed else of_game, ()
        return plan_of(typed, entries=entries)

    @property
    def without_rolls(self) -> str:
        """The same question before anything was rolled."""
        rolled = {key: "" for key in self.typed if key.startswith(ALLOWED)}
        return self.with_fields({**rolled, "rolled": ""})


def question(query: Mapping[str, str]) -> Question:
    """The question that the fields of a form or an address ask."""
    typed = {key: value.strip()[:MOST_TYPED] for key, value in query.items() if _is_known(key)}
    typed = {key: value for key, value in typed.items() if value}
    numbers = (typed["set"],) if "set" in typed else ()
    choice, findings = choice_of(
        numbers=numbers, date=typed.get("date", ""), game=typed.get("game", "")
    )
    rolled, more = number_of(typed.get("rolled", ""), of="The allowance rolled")
    allowed = {name: number_of(text, of=name) for name, text in _named(typed, ALLOWED)}
    return Question(
        choice=choice,
        grades=dict(_named(typed, GRADE)),
        rolled=rolled,
        allowed={name: number for name, (number, _) in allowed.items() if number is not None},
        typed=typed,
        findings=(*findings, *more, *(each for _, found in allowed.values() for each in found)),
    )


def _named(typed: Mapping[str, str], before: str) -> Iterator[tuple[str, str]]:
    for key, value in typed.items():
        if key.startswith(before):
            yield key.removeprefix(before), value


def _is_known(key: str) -> bool:
    return key in TEXTS or key.startswith((GRADE, ALLOWED))


IN_WORDS_OF_THE_PAGE = {
    "or --set ": "or fill in under “Numbers” ",
    "--set": "“Numbers”",
    "or choose one with --date": "or fill one in below",
    ", or choose one with --theatre": "",
    "Give what was rolled with --points, or ask for the odds of the plan.": (
        "Put in what was rolled."
    ),
    "Choose a date: --date 1943, or": "Fill in a date, such as 1943,",
    "Choose one with --game: ": "Choose one below: ",
}
"""Ways out that findings name by the options of the command, as the page has them."""


def for_the_page(findings: tuple[Finding, ...]) -> tuple[Finding, ...]:
    """The findings with their ways out in the words of the page."""
    return tuple(replace(found, hint=_worded(found.hint)) for found in findings)


def _worded(hint: str) -> str:
    for option, words in IN_WORDS_OF_THE_PAGE.items():
        hint = hint.replace(option, words)
    return hint
