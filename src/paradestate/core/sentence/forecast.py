"""A forecast in sentences: what it rests on, how sure it is, and how others came out."""

import datetime
from collections.abc import Iterable, Iterator, Mapping, Sequence
from fractions import Fraction
from itertools import groupby

from paradestate.core.certainty import Sampled
from paradestate.core.sentence.chance import hundredths_words, near_text
from paradestate.core.sentence.wording import (
    counted,
    day_words,
    end_words,
    hours_words,
    listed,
    several,
)
from paradestate.core.span import DateSpan
from paradestate.core.work.forecast_value import (
    FOUR_IN_FIVE,
    Evidence,
    FinishDate,
    Forecast,
    Goal,
    GoalForecast,
)
from paradestate.core.work.kept_forecast import Calibration
from paradestate.core.work.ladder import Ladder, Reached
from paradestate.core.work.learned_minutes import LearnedMinutes, LearnedRate


def date_words(found: GoalForecast, at: FinishDate | None) -> str:
    """By when a milestone is reached: a day, `now`, or a dash where no week looked at has it."""
    if found.is_reached:
        return "now"
    return "-" if at is None else day_words(at.day)


def dates_of(found: GoalForecast) -> Mapping[Fraction, FinishDate]:
    """Chance to the date with it, of a milestone that isn't reached; those that there are."""
    return {} if found.is_reached else {at.chance: at for at in found.dates if at is not None}


def before_words(found: GoalForecast, night: datetime.date) -> str:
    """How likely a milestone is reached before a day; a dash where nobody can say."""
    return "-" if found.goal.is_undated else hundredths_words(found.before(night))


def deadline_sentence(found: Forecast, deadline: DateSpan) -> str:
    """How likely each milestone that isn't reached is met by a deadline; empty once it is past."""
    if deadline.last < found.begins:
        return ""
    told = [
        f"the {each.goal.name} {hundredths_words(chance)}"
        for each in found.goals
        if not each.is_reached and (chance := each.by_end_of(deadline.last)) is not None
    ]
    return f"Ready by the deadline, {end_words(deadline)}: {listed(told)}." if told else ""


def by_words(found: GoalForecast) -> str:
    """The date of four in five on the ladder: `four in five by 3 May 2026`; empty without one."""
    at = dates_of(found).get(FOUR_IN_FIVE)
    return "" if at is None else f"four in five by {day_words(at.day)}"


def without_date_sentence(found: Forecast) -> str:
    """What a dash means; empty where every date is there."""
    dated = (each for each in found.goals if not each.goal.is_undated)
    if all(at is not None for each in dated for at in each.dates):  # those reached have all
        return ""
    return "A dash: not within ten years, which is as far as was looked."


def rests_sentence(evidence: Evidence) -> str:
    """What dates rest on."""
    week = "" if evidence.usual is None else f"your own week of {hours_words(evidence.usual)}"
    if not evidence.weeks:
        sessions = several(evidence.sessions, "session") if evidence.sessions else "nothing"
        less = ", and no whole week yet" if evidence.sessions else ""
        return f"The dates rest on {week}, taken as uncertain: {sessions} logged{less}."
    log = f"{several(evidence.weeks, 'whole week')} of the log"
    log += f" ({several(evidence.sessions, 'session')})"
    if evidence.left_out:
        log += f", {several(evidence.left_out, 'week')} with days away left out"
    if not week:
        return f"The dates rest on {log}."
    return f"The dates rest to {hundredths_words(evidence.logged)} on {log}, else on {week}."


def thin_sentence(evidence: Evidence) -> str:
    """That hardly anything logged stands behind dates, and what helps; empty where enough does."""
    if not evidence.is_thin:
        return ""
    if evidence.usual is None:
        return (
            "That is a short log: go on logging, or write `week` under `bench`, which stands in "
            "for what isn't logged yet."
        )
    mostly = "mostly " if evidence.logged else ""
    return (
        f"So far they are {mostly}a starting assumption: go on logging; a week in which nothing "
        "was done needs no entry."
    )


def sure_sentence(found: Forecast) -> str:
    """How sure dates are, given what they rest on."""
    certainty = found.goals[-1].certainty
    if not isinstance(certainty, Sampled):
        return "Exact: every course of the weeks to come is added up."
    head = (
        f"Sampled: {certainty.draws} courses of the weeks to come, seed {certainty.seed}; a chance "
        f"is right to {near_text(certainty.plus_or_minus * 100)} in 100 in nineteen cases of twenty"
    )
    off = _days_off(found)
    return f"{head}, a date to {several(off, 'day')}." if off is not None else f"{head}."


def _days_off(found: Forecast) -> int | None:
    """How far the dates may be off at the most; None where nobody can say, or none is given."""
    off: list[int] = []
    for each in found.goals:
        for at in dates_of(each).values():
            if at.latest is None:
                return None
            off += [(at.latest - at.day).days, (at.day - at.earliest).days]
    return max(off, default=None)


def arrival_sentences(ladder: Ladder, *, parcels: Mapping[str, Fraction]) -> Iterator[str]:
    """What dates take for granted where figures are lacking; `parcels` are waited for."""
    works = [work for rung in ladder.rungs for work in rung.works]
    if parcels:
        what = listed(f"{hours_words(minutes)} from {name}" for name, minutes in parcels.items())
        yield (
            f"The dates wait for parcels: {what}. That work begins in the week after the one in "
            "which a parcel is expected, and it is taken to come on its day."
        )
    if any(work.unordered for work in works) and ladder.minutes:
        yield (
            "Figures that are neither owned nor on order have no date of arrival: the dates are as "
            "if they were here when their turn comes."
        )


def without_minutes_sentences(ladder: Ladder, goals: Iterable[Goal]) -> Iterator[str]:
    """What milestones wait for that take no more minutes, and aren't reached all the same."""
    of_name = {goal.name: goal for goal in goals}
    for each in ladder.reached:
        goal = of_name.get(each.milestone.name)
        if goal is not None and goal.unfinished and not goal.minutes:
            yield f"The {goal.name} {without_minutes_words(each)}{_when_it_comes(goal)}."


def without_minutes_words(reached: Reached) -> str:
    """Why a milestone that takes no more minutes can't be played."""
    if reached.lacking:
        return f"takes no more minutes, but lacks {counted(reached.lacking)}"
    number = len(reached.to_finish)
    are = "isn't" if number == 1 else "aren't"
    return f"takes no more minutes, but {several(number, 'stand')} of it {are} finished"


def _when_it_comes(goal: Goal) -> str:
    if goal.is_undated:
        return ": nobody says when all of that comes, so it has no date"
    if goal.parcels:
        return f": it waits for what comes from {listed(sorted(goal.parcels))}, and for no work"
    return ""


def learned_sentences(learned: LearnedMinutes, *, stages: Sequence[str]) -> Iterator[str]:
    """What sessions taught, in the order of the stages, and how much of each is the log's."""
    if learned.rates or learned.stands:
        yield (
            f"Minutes for a figure, or a whole stand, learned from "
            f"{several(learned.stretches, 'stretch')} of work (the log's share; the rest is what "
            "you gave):"
        )
    for what, rates in groupby(learned.rates, key=lambda rate: rate.what):
        in_order = sorted(rates, key=lambda rate: stages.index(rate.stage))
        yield f"  {what}: {', '.join(map(_rate_words, in_order))}"
    for rate in learned.stands:
        yield f"  {rate.what}: {_learned_words(rate)}"


def _rate_words(rate: LearnedRate) -> str:
    """One number: `painted 17.5, given 15 (62 in 100)`."""
    return f"{rate.stage} {_learned_words(rate)}"


def _learned_words(rate: LearnedRate) -> str:
    given = "not given" if rate.given is None else f"given {near_text(rate.given)}"
    return f"{near_text(rate.minutes)}, {given} ({hundredths_words(rate.logged)})"


def calibration_sentence(found: Calibration) -> str:
    """How often the four-in-five date was met; empty where no forecast was kept."""
    waiting = found.early + found.to_come
    if not found.judged and not waiting:
        return ""
    open_ = f"{several(waiting, 'forecast')} kept of which the date of four in five is to come"
    if not found.judged:
        return f"{open_}; none can be judged yet."
    more = f" {open_}." if waiting else ""
    of = several(found.milestones, "milestone")
    return (
        f"The date of four in five was met by {found.met} of {several(found.judged, 'forecast')} "
        f"kept, of {of}; 80 in 100 are to be.{more}"
    )
