"""A forecast in sentences."""

import datetime
from dataclasses import replace
from fractions import Fraction

from paradestate.chance.forecast.weeks_drawn import MOST_WEEKS
from paradestate.core.certainty import Certainty, Exact, Sampled
from paradestate.core.sentence.forecast import (
    arrival_sentences,
    before_words,
    by_words,
    calibration_sentence,
    date_words,
    dates_of,
    deadline_sentence,
    learned_sentences,
    rests_sentence,
    sure_sentence,
    thin_sentence,
    without_date_sentence,
    without_minutes_sentences,
)
from paradestate.core.span import day
from paradestate.core.work.forecast_value import (
    CHANCES,
    FOUR_IN_FIVE,
    HALF,
    Evidence,
    Forecast,
    Goal,
    GoalForecast,
    finish_date,
)
from paradestate.core.work.kept_forecast import Calibration
from paradestate.core.work.learned_minutes import LearnedMinutes, LearnedRate
from paradestate.core.work.order_of_work import ladder
from tests.core.work.works import MINUTES, sound_load

MONDAY = datetime.date(2026, 3, 2)
SAMPLED = Sampled(plus_or_minus=Fraction(1, 100), draws=10_000, seed=1)
LOGGED = Evidence(
    sessions=13,
    weeks=12,
    left_out=0,
    logged=Fraction(12, 19),
    usual=Fraction(240),
    block=6,
    prior_weeks=7,
)


def goal(
    minutes: int = 60,
    *,
    certainty: Certainty = SAMPLED,
    between: tuple[int, int | None] = (12, 17),
    number: int = 3,
) -> GoalForecast:
    """A milestone with so many of its dates, each of them day 14 to come."""
    dates = [finish_date(14, chance=each, begins=MONDAY, between=between) for each in CHANCES]
    return GoalForecast(
        goal=Goal(name="small force", minutes=Fraction(minutes)),
        begins=MONDAY,
        by_day=(Fraction(0),) * 15,
        certainty=certainty,
        dates=(*dates[:number], *([None] * (3 - number))),
    )


def of(*goals: GoalForecast) -> Forecast:
    return Forecast(begins=MONDAY, goals=goals, fan=(), evidence=LOGGED)


def test_a_date_is_a_day_or_says_why_there_is_none() -> None:
    found = goal(number=2)
    assert [date_words(found, at) for at in found.dates] == ["15 March 2026", "15 March 2026", "-"]
    assert list(dates_of(found)) == [HALF, FOUR_IN_FIVE]
    assert by_words(found) == "four in five by 15 March 2026"
    assert by_words(goal(number=1)) == ""
    assert without_date_sentence(of(found)) == (
        "A dash: not within ten years, which is as far as was looked."
    )
    assert without_date_sentence(of(goal())) == ""
    assert 10 * 52 <= MOST_WEEKS < 10 * 52 + 2


def test_what_is_reached_has_no_date() -> None:
    done = goal(0)
    assert date_words(done, done.dates[0]) == "now"
    assert dates_of(done) == {}


def test_what_dates_rest_on() -> None:
    assert rests_sentence(LOGGED) == (
        "The dates rest to 63 in 100 on 12 whole weeks of the log (13 sessions), else on your own "
        "week of 4 h."
    )
    assert rests_sentence(replace(LOGGED, usual=None, left_out=1)) == (
        "The dates rest on 12 whole weeks of the log (13 sessions), 1 week with days away left out."
    )
    none = replace(LOGGED, weeks=0, sessions=0)
    head = "The dates rest on your own week of 4 h, taken as uncertain"
    assert rests_sentence(none) == f"{head}: nothing logged."
    assert rests_sentence(replace(none, sessions=1)) == (
        f"{head}: 1 session logged, and no whole week yet."
    )


def test_dates_that_are_mostly_assumed_say_so_and_what_helps() -> None:
    """Mistakes row 37."""
    assert thin_sentence(LOGGED) == ""
    rest = "a starting assumption: go on logging; a week in which nothing was done needs no entry."
    assert thin_sentence(replace(LOGGED, logged=Fraction(0))) == f"So far they are {rest}"
    some = replace(LOGGED, logged=Fraction(49, 100), weeks=9)
    assert thin_sentence(some) == f"So far they are mostly {rest}"
    assert thin_sentence(replace(some, logged=Fraction(1, 2))) == ""
    alone = replace(LOGGED, usual=None, logged=Fraction(1), weeks=7)
    assert thin_sentence(alone).startswith("That is a short log: go on logging, or write `week`")
    assert thin_sentence(replace(alone, weeks=8)) == ""


def test_how_sure_dates_are() -> None:
    assert sure_sentence(of(goal(certainty=Exact()))) == (
        "Exact: every course of the weeks to come is added up."
    )
    head = (
        "Sampled: 10000 courses of the weeks to come, seed 1; a chance is right to 1 in 100 in "
        "nineteen cases of twenty"
    )
    assert sure_sentence(of(goal())) == f"{head}, a date to 3 days."
    assert sure_sentence(of(goal(between=(13, 14)))) == f"{head}, a date to 1 day."
    assert sure_sentence(of(goal(between=(13, None)))) == f"{head}."
    never = replace(goal(), dates=(None, None, None))
    assert sure_sentence(of(never)) == f"{head}."


def test_figures_that_are_not_owned_have_no_date_or_that_of_their_parcel() -> None:
    assert list(arrival_sentences(ladder(sound_load(MINUTES)), parcels={})) == [
        (
            "Figures that are neither owned nor on order have no date of arrival: the dates are as "
            "if they were here when their turn comes."
        )
    ]
    owned = "stock: {rifleman: {raw: 40}, officer: {raw: 9}, gun: {raw: 1}}\n"
    made = ladder(sound_load(MINUTES, owned))
    assert list(arrival_sentences(made, parcels={})) == []
    both = {"North": Fraction(90), "South": Fraction(5)}
    assert list(arrival_sentences(made, parcels=both)) == [
        (
            "The dates wait for parcels: 1 h 30 min from North and 5 min from South. That work "
            "begins in the week after the one in which a parcel is expected, and it is taken to "
            "come on its day."
        )
    ]


def test_what_sessions_taught_stands_beside_what_was_given() -> None:
    rate = LearnedRate(
        what="foot",
        stage="painted",
        minutes=Fraction(35, 2),
        given=Fraction(15),
        stretches=5,
        logged=Fraction(5, 8),
    )
    learned = LearnedMinutes(
        rates=(rate, replace(rate, stage="assembled", given=None), replace(rate, what="horse")),
        stands=(replace(rate, what="staff", stage=""),),
        stretches=5,
    )
    head, *lines = learned_sentences(learned, stages=["raw", "assembled", "painted"])
    assert head == (
        "Minutes for a figure, or a whole stand, learned from 5 stretches of work (the log's "
        "share; the rest is what you gave):"
    )
    assert lines == [
        "  foot: assembled 17.5, not given (63 in 100), painted 17.5, given 15 (63 in 100)",
        "  horse: painted 17.5, given 15 (63 in 100)",
        "  staff: 17.5, given 15 (63 in 100)",
    ]
    assert list(learned_sentences(LearnedMinutes(), stages=[])) == []


def test_how_kept_forecasts_came_out() -> None:
    none = Calibration(met=0, missed=0, early=0, to_come=0, milestones=0)
    assert calibration_sentence(none) == ""
    waiting = "4 forecasts kept of which the date of four in five is to come"
    assert calibration_sentence(replace(none, early=1, to_come=3)) == (
        f"{waiting}; none can be judged yet."
    )
    judged = replace(none, met=8, missed=2, milestones=3)
    head = "The date of four in five was met by 8 of 10 forecasts kept, of 3 milestones; 80 in 100"
    assert calibration_sentence(judged) == f"{head} are to be."
    assert calibration_sentence(replace(judged, to_come=4)) == f"{head} are to be. {waiting}."


NO_MINUTES = "bench: {stages: [raw, painted], minutes: {foot: {painted: 0}}}\n"
UNDATED = Goal(name="smallest legal force", minutes=Fraction(0), unfinished=7, is_undated=True)
LACKING = "The smallest legal force takes no more minutes, but lacks 3 officers and 19 riflemen"


def test_what_takes_no_minutes_and_lacks_figures_says_when_they_come() -> None:
    made = ladder(sound_load(NO_MINUTES))
    assert list(without_minutes_sentences(made, [UNDATED])) == [
        f"{LACKING}: nobody says when all of that comes, so it has no date."
    ]
    awaited = replace(UNDATED, is_undated=False, parcels=frozenset({"South", "North"}))
    assert list(without_minutes_sentences(made, [awaited])) == [
        f"{LACKING}: it waits for what comes from North and South, and for no work."
    ]
    assert list(without_minutes_sentences(made, [replace(UNDATED, minutes=Fraction(1))])) == []
    assert list(arrival_sentences(made, parcels={})) == []


def test_what_takes_no_minutes_and_is_here_is_still_to_be_finished() -> None:
    stock = "stock: {officer: {raw: 9}, rifleman: {raw: 99}}\n"
    made = ladder(sound_load(NO_MINUTES, stock))
    here = replace(UNDATED, is_undated=False)
    assert list(without_minutes_sentences(made, [here])) == [
        "The smallest legal force takes no more minutes, but 7 stands of it aren't finished."
    ]
    most = "stock stands: {command: {painted: 4}, section: {painted: 5}}\n"
    made = ladder(sound_load(NO_MINUTES, most, "stock: {rifleman: {raw: 4}}\n"))
    whole = replace(here, name="whole top")
    assert list(without_minutes_sentences(made, [whole])) == [
        "The whole top takes no more minutes, but 1 stand of it isn't finished."
    ]


def test_no_chance_is_given_where_no_date_is() -> None:
    night = MONDAY + datetime.timedelta(days=9)
    undated = replace(goal(0), goal=UNDATED, dates=(None, None, None))
    assert (before_words(goal(), night), before_words(undated, night)) == ("0 in 100", "-")
    assert without_date_sentence(of(undated)) == ""
    assert not of(undated).has_work
    assert of(goal()).has_work


def test_the_chance_by_the_deadline_is_said_of_what_is_still_to_come() -> None:
    likely = replace(goal(), by_day=(Fraction(0),) * 14 + (Fraction(86, 100),))
    undated, done = replace(goal(), goal=UNDATED), goal(0)
    last = MONDAY + datetime.timedelta(days=13)
    assert deadline_sentence(of(likely, undated, done), day(last)) == (
        "Ready by the deadline, 15 March 2026: the small force 86 in 100."
    )
    sooner = day(last - datetime.timedelta(days=1))
    assert deadline_sentence(of(likely), sooner).endswith("the small force 0 in 100.")
    assert deadline_sentence(of(done, undated), day(last)) == ""
    assert deadline_sentence(of(likely), day(MONDAY - datetime.timedelta(days=1))) == ""
