"""What is asked of the sheet of choosing: the fields of its form, read and written.

The whole question stands in the address, so that it can be shared and gone back to. The plan is in
it as it is typed beside a command.
"""

from collections.abc import Container, Iterator, Mapping
from dataclasses import dataclass
from urllib.parse import urlencode

from paradestate.core.choice import Choice
from paradestate.core.finding import Finding
from paradestate.core.game import Purchase
from paradestate.core.support.reserve import still_kept_back
from paradestate.journeys.choosing import choice_of, number_of, plan_of
from paradestate.text.typed import purchases_text
from paradestate.web.way_out import in_words

TEXTS = ("game", "rolled", "plan", "reserve", "set", "date")
GRADE, ALLOWED, RESERVE = "grade:", "allowed:", "reserve:"
"""Before the name of each scale that isn't as usual, of each entry that was rolled for, and of each
formation of which some are kept back."""
MOST_TYPED = 4000
"""Letters of one field; what is longer was not typed."""
BACK = "reserve"
"""What of the plan is kept back, as a plan is typed."""
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
    reserve: Mapping[str, int]
    """Formation to how many of it are kept back."""
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
        """The same question about another plan; what it has no more is kept back no more."""
        kept = purchases_text(still_kept_back(self.kept_back(plan), plan))
        return self.query(plan=purchases_text(plan) or NO_PLAN, reserve=kept)

    def kept_back(self, plan: tuple[Purchase, ...]) -> tuple[Purchase, ...]:
        """What of a plan is kept back; nothing where that can't be read."""
        entries = {each.entry for each in plan}
        kept, _ = plan_of(self.typed.get(BACK, ""), entries=entries)
        return kept

    def with_kept_back(self, kept: tuple[Purchase, ...]) -> str:
        """The same question with something else of its plan kept back."""
        return self.query(reserve=purchases_text(kept))

    @property
    def without_reserve(self) -> str:
        """The same question with nothing kept back."""
        back = {key: "" for key in self.typed if key == BACK or key.startswith(RESERVE)}
        return self.with_fields(back)

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
    back = {name: number_of(text, of=name) for name, text in _named(typed, RESERVE)}
    _, unread = plan_of(typed.get(BACK, ""), entries=())
    return Question(
        choice=choice,
        grades=dict(_named(typed, GRADE)),
        rolled=rolled,
        allowed={name: number for name, (number, _) in allowed.items() if number is not None},
        reserve={name: number for name, (number, _) in back.items() if number},
        typed=typed,
        findings=(
            *findings,
            *more,
            *(each for _, found in (*allowed.values(), *back.values()) for each in found),
            *unread,
        ),
    )


def _named(typed: Mapping[str, str], before: str) -> Iterator[tuple[str, str]]:
    for key, value in typed.items():
        if key.startswith(before):
            yield key.removeprefix(before), value


def _is_known(key: str) -> bool:
    return key in TEXTS or key.startswith((GRADE, ALLOWED, RESERVE))


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
    return in_words(findings, IN_WORDS_OF_THE_PAGE)
