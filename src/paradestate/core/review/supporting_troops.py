"""Doubts about supporting troops: prices, refusals, conditions between entries, and plans."""

from collections.abc import Iterator
from itertools import pairwise

from paradestate.core.finding import Finding, Level
from paradestate.core.force import Force
from paradestate.core.game import Game, Purchase
from paradestate.core.place import KeyPath, Place, nearest_place
from paradestate.core.review.rule import Rule
from paradestate.core.span import Hold
from paradestate.core.support.entry import Entry

SECTION = "supporting troops"


def _place(force: Force, *path: str) -> Place:
    return nearest_place(force.places, path)


def _stop(force: Force, path: KeyPath, *, code: str, message: str, hint: str) -> Finding:
    return Finding(
        level=Level.STOP,
        code=code,
        message=message,
        effect="The entry can't be chosen as it stands.",
        hint=hint,
        place=nearest_place(force.places, path),
    )


def odd_prices(force: Force) -> Iterator[Finding]:
    """A price that falls as the number rises, or that two smaller purchases undercut."""
    for entry in force.supporting_troops.values():
        message = _falls(entry) or _splitting(entry)
        if message is not None:
            yield Finding(
                level=Level.WARN,
                code="price-odd",
                message=f"{entry.name}: {message}",
                effect="Nobody would pay the higher price.",
                hint="Look at the prices again.",
                place=_place(force, SECTION, entry.name, "cost"),
            )


def _falls(entry: Entry) -> str | None:
    numbers = sorted(entry.cost)
    for fewer, more in pairwise(numbers):
        if entry.cost[more] < entry.cost[fewer]:
            return f"{more} cost {entry.cost[more]}, but {fewer} cost {entry.cost[fewer]}."
    return None


def _splitting(entry: Entry) -> str | None:
    """c(a + b) must not be above c(a) + c(b)."""
    for whole in sorted(entry.cost):
        for part in sorted(entry.cost):
            rest = whole - part
            if part < rest or rest not in entry.cost:
                continue
            if entry.cost[part] + entry.cost[rest] < entry.cost[whole]:
                both = entry.cost[part] + entry.cost[rest]
                return f"{whole} cost {entry.cost[whole]}, but {part} + {rest} cost {both}."
    return None


def impossible_conditions(force: Force) -> Iterator[Finding]:
    """An entry that needs what it bars, or that needs itself by a roundabout way."""
    for entry in force.supporting_troops.values():
        for needed in entry.needs:
            bars = needed in entry.bars or entry.name in _bars_of(force, needed)
            if bars:
                yield _stop(
                    force,
                    (SECTION, entry.name, "needs"),
                    code="needs-and-bars",
                    message=f"'{entry.name}' needs and bars '{needed}': it can never be taken.",
                    hint="Take one of the two out.",
                )
        circle = _circle(force, entry.name)
        if circle and min(circle) == entry.name:
            yield _stop(
                force,
                (SECTION, entry.name, "needs"),
                code="needs-circle",
                message=f"{' needs '.join((*circle, circle[0]))}: none can be bought first.",
                hint="Sell them as a set, or drop one need.",
            )


def _bars_of(force: Force, name: str) -> tuple[str, ...]:
    entry = force.supporting_troops.get(name)
    return entry.bars if entry else ()


def _circle(force: Force, start: str) -> tuple[str, ...]:
    """The entries of a circle of needs from `start` back to it; empty where there is none."""
    waiting: list[tuple[str, ...]] = [(start,)]
    seen: set[str] = set()
    while waiting:
        path = waiting.pop()
        entry = force.supporting_troops.get(path[-1])
        for needed in entry.needs if entry else ():
            if needed == start:
                return path
            if needed not in seen:
                seen.add(needed)
                waiting.append((*path, needed))
    return ()


def unsaid_refusals(force: Force) -> Iterator[Finding]:
    """An entry that is rolled for, without a word on its points when it is refused."""
    for entry in force.supporting_troops.values():
        if entry.availability is not None and entry.when_refused is None:
            yield Finding(
                level=Level.WARN,
                code="refusal-unsaid",
                message=f"{entry.name}: points on refusal: kept or lost?",
                effect="It changes the best plan. Taken as kept.",
                hint="Add 'when refused: points kept' or 'points lost'.",
                place=_place(force, SECTION, entry.name, "availability"),
            )


def plans(force: Force) -> Iterator[Finding]:
    """Plans of games that take what can't be taken."""
    for game in force.games.values():
        for number, purchase in enumerate(game.plan, start=1):
            if purchase.entry in force.supporting_troops:
                path = ("games", game.name, "plan", str(number))
                yield from _purchase(force, game, purchase=purchase, path=path)


def _purchase(force: Force, game: Game, *, purchase: Purchase, path: KeyPath) -> Iterator[Finding]:
    entry = force.supporting_troops[purchase.entry]
    if purchase.number not in entry.cost:
        numbers = " or ".join(str(number) for number in sorted(entry.cost))
        yield _stop(
            force,
            path,
            code="number-not-priced",
            message=f"{entry.name} come in {numbers}; {purchase.number} isn't on the list.",
            hint=f"Take {numbers}, or add a price for {purchase.number}.",
        )
    if purchase.choice and purchase.choice not in entry.choice:
        listed = ", ".join(entry.choice) or "none"
        yield _stop(
            force,
            path,
            code="choice-unknown",
            message=f"{entry.name}: '{purchase.choice}' isn't one of its choices.",
            hint=f"Its choices: {listed}.",
        )
    reason = _not_in_force(force, game, entry=entry)
    if reason is not None:
        yield _stop(
            force,
            path,
            code="not-in-force",
            message=f"{entry.name}: {reason}.",
            hint="Take it out of the plan, or choose another game or date.",
        )


def _not_in_force(force: Force, game: Game, *, entry: Entry) -> str | None:
    """Why an entry can't be taken in a game; None where it can."""
    if entry.only_in is not None and entry.only_in.posture != game.posture:
        return f"only in {entry.only_in.posture}, and '{game.name}' is {game.posture}"
    if entry.not_in is not None and entry.not_in.posture == game.posture:
        return f"not in {game.posture}, which '{game.name}' is"
    date = force.raise_.date if force.raise_ else None
    if date is not None and entry.window.holds(date) is Hold.OUT:
        return f"not to be had in {date}"
    return None


RULES: tuple[Rule, ...] = (
    odd_prices,
    impossible_conditions,
    unsaid_refusals,
    plans,
)
