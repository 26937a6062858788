"""Sentences about games, grades and supporting troops. Points, limits and rolls in words."""

from collections import Counter
from collections.abc import Iterable, Iterator, Mapping

from paradestate.core.dice import NOUGHT, Dice
from paradestate.core.game import (
    Allowance,
    CostByNumber,
    FormationCost,
    Game,
    Grade,
    Purchase,
    Reserves,
)
from paradestate.core.number import percent_text
from paradestate.core.sentence.dice import dice_words, totals_words
from paradestate.core.sentence.mission import mission_clauses
from paradestate.core.sentence.price import choice_words, more_price_clauses, prices_words
from paradestate.core.sentence.wording import (
    by_hand_words,
    capital,
    counted,
    decimal,
    how_often,
    listed,
    plural,
    several,
    spelled,
    window_words,
)
from paradestate.core.support.entry import (
    Availability,
    Band,
    Circumstance,
    Entry,
    GroupLimit,
    Improvement,
    Limit,
    Position,
    Refusal,
    Rounding,
    Variation,
    Worth,
)

ODD = ",=\"'"
"""Letters that are read as themselves only within quotes."""


def game_sentence(game: Game) -> str:
    """A game in words."""
    weight = f", weighing {decimal(game.weight)}" if game.weight != 1 else ""
    numbers = f", with {counted(game.numbers)}" if game.numbers else ""
    plan = f"; plan: {purchases_words(game.plan)}" if game.plan else ""
    text = f"{capital(game.name)}: {game.posture} {allowance_words(game.allowance)}"
    return f"{text}{weight}{numbers}{plan}." + by_hand_words(game.by_hand)


def allowance_words(allowance: Allowance) -> str:
    """What there is to spend: `with 18 + 2d6 points`."""
    if allowance == NOUGHT:
        return "without points"
    if isinstance(allowance, Dice):
        return f"with {allowance} points"
    rows = listed(f"{row.gives} {totals_words(row)}" for row in allowance.gives)
    return f"with points by a roll of {dice_words(allowance.roll)}: {rows}"


def purchase_words(purchase: Purchase) -> str:
    """A purchase in words: `2 x machine-gun platoon`, `1 x pioneers with flame`.

    The owner's name of the entry stays as it is, whatever its number and language.
    """
    return number_words(purchase.number, purchase.entry, choice=purchase.choice)


def number_words(number: int, entry: str, *, choice: str = "") -> str:
    """So many of an entry, with what was chosen: `2 x light tanks`."""
    return f"{number} x {entry}{f' with {choice}' if choice else ''}"


def typed_words(purchase: Purchase) -> str:
    """A purchase as it is typed in a plan: `pioneers(flame)=1`; an odd name in quotes."""
    name = f"{purchase.entry}{f'({purchase.choice})' if purchase.choice else ''}"
    is_odd = name != name.strip() or any(letter in name for letter in ODD)
    quoted = name.replace("'", "''")
    return f"'{quoted}'={purchase.number}" if is_odd else f"{name}={purchase.number}"


def purchases_words(purchases: Iterable[Purchase]) -> str:
    """Purchases in words, those that are alike together: `twice 4 x rifle company and 1 x gun`."""
    numbers = Counter(purchases)
    return listed(
        f"{f'{how_often(times)} ' if times > 1 else ''}{purchase_words(each)}"
        for each, times in numbers.items()
    )


def formation_cost_sentence(cost: FormationCost) -> str:
    """The cost of the force itself in words."""
    if isinstance(cost, CostByNumber):
        steps = [f"{number} cost {points}" for number, points in cost.points.items()]
        return f"The formation costs points by the number of {plural(cost.by)}: {listed(steps)}."
    return f"The formation costs {several(cost, 'point')}."


def grade_sentence(grade: Grade) -> str:
    """A scale of grades in words."""
    steps = [f"{name} {points}" for name, points in grade.points.items()]
    text = f"{capital(grade.name)}: usually {grade.usual}; points: {listed(steps)}."
    return text + by_hand_words(grade.by_hand)


def entry_sentence(entry: Entry) -> str:
    """One sort of supporting troops in words."""
    held = f", held at {entry.held_at}" if entry.held_at else ""
    sentences = [f"{capital(entry.name)}{held}: {prices_words(entry.cost)}"]
    sentences += [capital(clause) for clause in entry_clauses(entry) if clause]
    return ". ".join(sentences) + "." + by_hand_words(entry.by_hand)


def entry_clauses(entry: Entry) -> Iterator[str]:
    """What is said of an entry after its prices, clause by clause."""
    yield from more_price_clauses(entry)
    if entry.each:
        yield f"each puts down {counted(entry.each)}"
    yield limit_words(entry.limit)
    if entry.availability is not None:
        yield availability_words(entry.availability)
    if entry.when_refused is Refusal.KEPT:
        yield "refused points are kept"
    if entry.when_refused is Refusal.LOST:
        yield "refused points are lost"
    yield from _condition_clauses(entry)
    yield from _effect_clauses(entry)
    yield from _place_clauses(entry)


def _condition_clauses(entry: Entry) -> Iterator[str]:
    if entry.needs:
        yield f"needs {listed(needs_words(entry.needs))}"
    if entry.needs_any_of:
        yield f"needs {listed(needs_words(entry.needs_any_of), joint='or')}"
    for name, number in entry.needs_for_each.items():
        yield f"each purchase of it needs {several(number, 'purchase')} of {name}"
    if entry.bars:
        yield f"can't be taken with {listed(entry.bars, joint='or')}"
    if entry.opens:
        yield f"opens {listed(entry.opens)}"


def _effect_clauses(entry: Entry) -> Iterator[str]:
    if entry.grants:
        yield f"brings {counted(entry.grants)} free"
    if entry.replaces is not None:
        change = entry.replaces
        yield f"exchanges {several(change.number, change.of)} for {plural(change.with_)}"
    if entry.improves is not None:
        yield improvement_words(entry.improves)
    if entry.choice:
        yield f"choose {choice_words(entry)}"
    if entry.group:
        yield f"belongs to the group {entry.group}"


def improvement_words(better: Improvement) -> str:
    """What is better than the force: `the training of one platoon is one step better ...`."""
    each = f"one {better.of}" if better.number == 1 else several(better.number, better.of)
    steps = "one step" if better.steps == 1 else f"{spelled(better.steps)} steps"
    return f"the {better.scale} of {each} is {steps} better than that of the force"


def needs_words(needs: Mapping[str, int]) -> Iterator[str]:
    """Each need in words: `light tanks`, `light tanks taken two times`."""
    for name, number in needs.items():
        yield name if number == 1 else f"{name} taken {spelled(number)} times"


def _place_clauses(entry: Entry) -> Iterator[str]:
    if entry.attach is not None:
        most = entry.attach.most_per_host
        limit = f", at most {spelled(most)} to each" if most is not None else ""
        alike = ", no two alike" if entry.attach.no_two_alike else ""
        yield f"may be attached to a {entry.attach.to}{limit}{alike}"
    if entry.place is not Position.ON_TABLE:
        yield "on or off the table" if entry.place is Position.EITHER else "off the table"
    if entry.missions is not None:
        yield from mission_clauses(entry.missions)
    if entry.only_in is not None:
        yield f"only in {_circumstance(entry.only_in)}"
    if entry.not_in is not None:
        yield f"not in {_circumstance(entry.not_in)}"
    for posture, here in entry.in_posture.items():
        yield f"in {posture}: {'; '.join(_variation_clauses(here)) or 'as elsewhere'}"
    if not entry.window.is_open:
        yield f"to be had{window_words(entry.window)}"
    if entry.theatre:
        yield f"only in the theatre {entry.theatre}"


def _circumstance(circumstance: Circumstance) -> str:
    return circumstance.posture


def _variation_clauses(here: Variation) -> Iterator[str]:
    if here.cost is not None:
        yield prices_words(here.cost)
    if here.limit is not None:
        yield limit_words(here.limit)
    if here.availability is not None:
        yield availability_words(here.availability)


def limit_words(limit: Limit) -> str:
    """A limit in words: `one in the force`, `one for every two companies and two more`."""
    least = f"at least {spelled(limit.least)}" if limit.least else ""
    if limit.most is None:
        return f"{least or 'any number'} in the force"
    at_most = f"{least} and at most " if least else ""
    most = spelled(limit.most + limit.plus) if limit.most + limit.plus else "none"
    if not limit.of and limit.least == limit.most + limit.plus > 0:
        return f"exactly {spelled(limit.least)} in the force"
    if not limit.of:
        return f"{at_most}{most} in the force"
    if limit.for_every == 1:
        every = f"every {limit.of}"
    else:
        every = f"every {spelled(limit.for_every)} {plural(limit.of)}"
    rounded = ", rounded up" if limit.round is Rounding.UP else ""
    more = f", and {spelled(limit.plus)} more" if limit.plus else ""
    return f"{at_most}{spelled(limit.most)} for {every}{rounded}{more}"


def availability_words(availability: Availability) -> str:
    """A roll in words: `on 9 or more of one twelve-sided die all`."""
    bands = "; ".join(f"{totals_words(band)} {_allows(band)}" for band in availability.allows)
    shared = availability.shared_roll
    once = f", once for all of '{shared}'" if shared else ""
    return f"roll {dice_words(availability.roll)}{once}: {bands}"


def _allows(band: Band) -> str:
    if band.allows is None:
        return "all"
    return "none" if band.allows == 0 else f"at most {spelled(band.allows)}"


def group_limit_sentence(limit: GroupLimit) -> str:
    """A shared limit in words."""
    number = _bounds(
        least=str(limit.least) if limit.least else "",
        most="" if limit.most is None else str(limit.most),
    )
    share = _bounds(
        least=percent_text(limit.least_points) if limit.least_points else "",
        most="" if limit.most_points is None else percent_text(limit.most_points),
    )
    unit = "purchase" if (limit.least if limit.most is None else limit.most) == 1 else "purchases"
    clauses = [f"{number} {unit}" if number else "", f"{share} of the points" if share else ""]
    bounds = ", and ".join(filter(None, clauses)) or "any number"
    text = f"Of the group {limit.group} {bounds}."
    return text + by_hand_words(limit.by_hand)


def _bounds(*, least: str, most: str) -> str:
    """`at least one and at most two`; empty where neither is said."""
    said = [f"at least {least}" if least else "", f"at most {most}" if most else ""]
    return " and ".join(filter(None, said))


def reserves_sentence(reserves: Reserves) -> str:
    """The rule for reserves in words."""
    share = percent_text(reserves.most)
    text = (
        f"At most {share} of the {plural(reserves.of)} may be kept in a {reserves.method} reserve."
    )
    return text + by_hand_words(reserves.by_hand)


def worth_sentence(worth: Worth) -> str:
    """The owner's opinion of an entry in words."""
    tables = [
        f"{f'{choice}: ' if choice else ''}"
        + listed(f"{number} worth {decimal(value)}" for number, value in table.items())
        for choice, table in worth.by_choice.items()
    ]
    return f"Your own opinion of {worth.entry}: {'; '.join(tables)}."
