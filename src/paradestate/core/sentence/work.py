"""The order of work in words: rungs, milestones, what holds them up, and how sure it is."""

from collections.abc import Iterable, Iterator, Mapping, Sequence
from fractions import Fraction
from math import ceil

from paradestate.core.on_order import OnOrder
from paradestate.core.sentence.chance import near_text
from paradestate.core.sentence.journal import on_order_words
from paradestate.core.sentence.repair import wanted_words
from paradestate.core.sentence.wording import counted, day_words, hours_words, listed, several
from paradestate.core.work.ladder import Critical, Ladder, Reached, Rung
from paradestate.core.work.to_come import orders_of

MOST_NAMED = 3
"""Stands of a batch that are named one by one; of more it is said where they stand."""

LEAST_RUN = 3
"""Numbers that follow one another of which only the first and last are said."""


def week_number(minutes: Fraction, *, week: Fraction) -> int:
    """The week in which so many minutes are reached, from 1; nought where there are none."""
    return ceil(minutes / week)


def week_words(minutes: Fraction, *, week: Fraction | None) -> str:
    """The same in words: `week 5`; empty where the owner gives no week."""
    if week is None:
        return ""
    number = week_number(minutes, week=week)
    return f"week {number}" if number else "now"


def reached_week_words(reached: Reached, *, week: Fraction | None) -> str:
    """The week in which a milestone is reached; empty too where no week of work reaches it."""
    is_worked_for = reached.rung is None or bool(reached.ends)
    return week_words(reached.ends, week=week) if is_worked_for else ""


def batch_words(rung: Rung) -> str:
    """What is done in a batch: `12 rifle sections: 6 in No 1 Company, 6 in No 2 Company`."""
    time = hours_words(rung.minutes) if rung.minutes else "no minutes"
    return f"{batch_title(rung)}, {time}: {', '.join(batch_places(rung))}"


def batch_title(rung: Rung) -> str:
    """The stands of a batch by their number: `12 rifle sections`."""
    return several(len(rung.works), rung.pattern)


def batch_places(rung: Rung) -> Sequence[str]:
    """Where they stand: few by their names, of more how many in each company."""
    names = [work.stand.name for work in rung.works]
    if len(names) <= MOST_NAMED:
        return names
    numbers: dict[str, int] = {}
    for work in rung.works:
        numbers[work.stand.company] = numbers.get(work.stand.company, 0) + 1
    return [f"{n} {f'in {name}' if name else 'of no company'}" for name, n in numbers.items()]


def batch_details(rung: Rung) -> Iterator[str]:
    """What else is worth knowing of a batch."""
    spent = {stage: minutes for stage, minutes in rung.by_stage.items() if minutes}
    if spent:
        yield ", ".join(f"{stage} {hours_words(minutes)}" for stage, minutes in spent.items())
    if rung.set_up:
        yield f"{hours_words(rung.set_up)} to set up"
    yield from wanted_words(rung)
    yield from _waits(rung)
    if rung.early:
        whose = "its" if len(rung.early) == 1 else "their"
        yield f"{several(len(rung.early), 'stand')} before {whose} turn, which saves a set-up"
    if rung.takes_turns_with is not None:
        yield f"takes turns with batch {rung.takes_turns_with}: while one dries, work on the other"
    if rung.waiting:
        yield f"{hours_words(rung.waiting)} left to wait for it to dry"
    if rung.colours:
        yield f"colours: {listed(rung.colours)}"


def _waits(rung: Rung) -> Iterator[str]:
    """How many stands of a batch wait for what is on order, and for what."""
    stands = [work for work in rung.works if work.to_come]
    if stands:
        wait = "waits" if len(stands) == 1 else "wait"
        what = listed(map(on_order_words, orders_of(stands)))
        yield f"{several(len(stands), 'stand')} {wait} for {what}"
    if rung.held_until is not None:
        part = (
            "none of it" if len(stands) == len(rung.works) and _is_whole(rung) else "not all of it"
        )
        yield f"{part} can begin before {day_words(rung.held_until)}, and its turn comes sooner"


def _is_whole(rung: Rung) -> bool:
    """Whether all minutes of a batch wait for what is on order."""
    return sum(minutes for work in rung.works for minutes in work.waiting.values()) == rung.minutes


def reached_words(reached: Reached, *, week: Fraction | None, by: str = "") -> str:
    """When a milestone is reached: `smallest legal force: 19 h, week 5`; `by` says it by date."""
    when = by or reached_week_words(reached, week=week)
    return f"{reached.milestone.name}: {hours_words(reached.ends)}{', ' if when else ''}{when}"


def now_sentence(reached: Reached) -> str:
    """That a milestone can be played now."""
    return f"Playable now: {reached.milestone.name}."


def gain_sentence(here: Reached, *, by_kind: Reached) -> str:
    """What the order gains for a milestone against the same work kind by kind."""
    name, gain = here.milestone.name, by_kind.ends - here.ends
    head = f"Kind by kind the {name} would be playable at"
    if not gain:
        return f"{head} the same hour."
    way = "later" if gain > 0 else "sooner"
    return f"{head} {hours_words(by_kind.ends)}: {hours_words(abs(gain))} {way}."


def critical_sentence(critical: Critical) -> str:
    """What holds up the next milestone."""
    name = critical.work.stand.name
    head = f"What holds up the {critical.milestone}: {name}"
    if critical.work.lacking:
        more = critical.lacking - 1
        lack = "lacks" if more == 1 else "lack"
        others = f"; {several(more, 'more stand')} of it {lack} figures too" if more else ""
        due = listed(map(on_order_words, critical.work.to_come))
        on_order = f"; on order: {due}" if due else ""
        return f"{head} lacks {counted(critical.work.lacking)}{on_order}{others}."
    return f"{head} has the most work left, {hours_words(critical.work.minutes)}."


def colour_sentences(ladder: Ladder) -> Iterator[str]:
    """Which colours are mixed once for several batches; those for the same ones together."""
    alike: dict[tuple[int, ...], list[str]] = {}
    for each in ladder.mixed:
        alike.setdefault(each.batches, []).append(each.colour)
    for (first, *others), colours in alike.items():
        word = "batch" if len(others) == 1 else "batches"
        yield (
            f"Mix {listed(colours)} once, for batch {first} and enough for {word} "
            f"{listed(_runs(others))}."
        )


def _runs(numbers: Sequence[int]) -> Iterator[str]:
    """Numbers, those that follow one another as `3 to 7`."""
    first = 0
    for place, number in enumerate(numbers):
        if place + 1 == len(numbers) or numbers[place + 1] != number + 1:
            run = numbers[first : place + 1]
            yield from map(str, run) if len(run) < LEAST_RUN else [f"{run[0]} to {run[-1]}"]
            first = place + 1


def lacking_sentence(lacking: Mapping[str, int]) -> str:
    """What isn't owned yet."""
    return f"Not owned yet: {counted(lacking)}. Their minutes count from the first stage."


def on_order_sentence(orders: Iterable[OnOrder]) -> str:
    """What is on order of it."""
    what = listed(map(on_order_words, orders))
    return (
        f"Of these on order: {what}. Where it moves no milestone, batches of what is here come "
        "before those that wait."
    )


def certainty_words(ladder: Ladder) -> str:
    """How sure it is that no order is better; days on which parcels come it doesn't mind."""
    if ladder.is_proved:
        late = "no later for the repairs " if ladder.repairs else ""
        return f"Exact: no order of work {late}has less weighted waiting for these milestones."
    unminded = _unminded(ladder)
    if ladder.waiting == ladder.least:
        return f"Exact if all were here. {unminded}"
    if not ladder.least:
        head = "Not proven: another order may have its repairs less late."
    else:
        share = near_text(ladder.share_above * 100)
        head = (
            f"Not proven: the weighted waiting may be up to {share} % more than the least there is."
        )
    return f"{head} {unminded}".rstrip()


def _unminded(ladder: Ladder) -> str:
    """What the order takes no account of; empty where nothing comes later than its turn."""
    numbers = [rung.number for rung in ladder.held_up]
    if not numbers:
        return ""
    if len(numbers) == 1:
        turn = f"batch {numbers[0]} has its turn before all its figures are there"
    else:
        turn = (
            f"batches {listed(_runs(numbers))} have their turn before all their figures are there"
        )
    return (
        f"This order doesn't mind when parcels come: at your usual pace {turn}, and another order "
        "may wait less."
    )
