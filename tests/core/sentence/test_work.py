"""The order of work in sentences."""

import datetime
from dataclasses import replace
from fractions import Fraction

from paradestate.core.on_order import OnOrder
from paradestate.core.sentence.work import (
    batch_details,
    batch_words,
    certainty_words,
    colour_sentences,
    critical_sentence,
    gain_sentence,
    lacking_sentence,
    now_sentence,
    on_order_sentence,
    reached_words,
    week_words,
)
from paradestate.core.work.coats import Mixed
from paradestate.core.work.ladder import Ladder
from paradestate.core.work.order_of_work import ladder
from tests.core.work.works import MINUTES, sound_load

BENCH = MINUTES + "  set up: 30 min\n  dry: {primed: 1 h}\n  colours: {tunic: [{colour: sand}]}\n"


SOON = datetime.date(2026, 3, 20)
NORTH = OnOrder(entry="1", source="North", day=SOON, expected=SOON, figures={"rifleman": 3})


def test_stands_that_wait_for_what_is_on_order_are_told_with_their_batch() -> None:
    owned = "stock: {officer: {raw: 4}}\n"
    commands, *_ = ladder(sound_load(MINUTES, owned, on_order=(NORTH,))).rungs
    waits = "2 stands wait for 2 riflemen from North (expected 20 March 2026)"
    assert waits in list(batch_details(commands))
    one = replace(commands, works=commands.works[:1])
    waits = "1 stand waits for 1 rifleman from North (expected 20 March 2026)"
    assert waits in list(batch_details(one))
    assert on_order_sentence([NORTH]).startswith(
        "Of these on order: 3 riflemen from North (expected 20 March 2026). "
    )


def test_what_holds_up_a_milestone_says_what_of_it_is_on_order() -> None:
    owned = "stock: {rifleman: {raw: 26}}\n"
    officers = replace(NORTH, figures={"officer": 3})
    critical = ladder(sound_load(MINUTES, owned, on_order=(officers,))).critical
    assert critical is not None
    assert critical_sentence(critical).endswith(
        "Command lacks 1 officer; on order: 1 officer from North (expected 20 March 2026); "
        "2 more stands of it lack figures too."
    )


def made(*texts: str, bench: str = BENCH) -> Ladder:
    return ladder(sound_load(bench, *texts))


def test_a_batch_names_its_stands_or_where_they_stand() -> None:
    commands, sections, last = made().rungs
    assert batch_words(commands) == (
        "4 commands, 40 min: 1 of no company, 1 in 1 Company, 1 in 2 Company, 1 in 3 Company"
    )
    assert batch_words(sections) == "4 sections, 1 h 20 min: 2 in 1 Company, 2 in 2 Company"
    assert batch_words(last) == "2 sections, 40 min: 3 Company / 1 Section, 3 Company / 2 Section"
    nothing = MINUTES.replace("  minutes:", "  minutes per stand: {section: 0}\n  minutes:")
    assert batch_words(made(bench=nothing).rungs[0]).startswith("4 sections, no minutes: ")


def test_what_else_is_worth_knowing_of_a_batch() -> None:
    assert list(batch_details(made().rungs[0])) == [
        "primed 8 min, painted 32 min",
        "30 min to set up",
        "1 stand before its turn, which saves a set-up",
        "takes turns with batch 2: while one dries, work on the other",
        "44 min left to wait for it to dry",
        "colours: sand",
    ]
    rung = made().rungs[0]
    two = replace(rung, early=("a", "b"))
    assert "2 stands before their turn, which saves a set-up" in list(batch_details(two))
    bare = replace(
        rung,
        by_stage={"painted": Fraction(0)},
        set_up=Fraction(0),
        early=(),
        takes_turns_with=None,
        waiting=Fraction(0),
        colours=(),
    )
    assert list(batch_details(bare)) == []


def test_a_week_is_that_in_which_the_work_is_done() -> None:
    """Nineteen hours at four a week are done in the fifth, sixteen in the fourth."""
    assert week_words(Fraction(19 * 60), week=Fraction(240)) == "week 5"
    assert week_words(Fraction(16 * 60), week=Fraction(240)) == "week 4"
    assert week_words(Fraction(0), week=Fraction(240)) == "now"
    assert week_words(Fraction(60), week=None) == ""


def test_when_a_milestone_is_reached() -> None:
    first = made(bench=MINUTES).reached[0]
    assert reached_words(first, week=Fraction(60)) == "smallest legal force: 1 h 50 min, week 2"
    assert reached_words(first, week=None) == "smallest legal force: 1 h 50 min"
    assert reached_words(first, week=Fraction(60), by="by 3 May 2026") == (
        "smallest legal force: 1 h 50 min, by 3 May 2026"
    )
    assert now_sentence(first) == "Playable now: smallest legal force."


def test_what_the_order_gains() -> None:
    first = made(bench=MINUTES).reached[0]
    head = "Kind by kind the smallest legal force would be playable at"
    later, sooner = (replace(first, ends=Fraction(each)) for each in (170, 80))
    assert gain_sentence(first, by_kind=later) == f"{head} 2 h 50 min: 1 h later."
    assert gain_sentence(first, by_kind=sooner) == f"{head} 1 h 20 min: 30 min sooner."
    assert gain_sentence(first, by_kind=first) == f"{head} the same hour."


def test_what_holds_a_milestone_up() -> None:
    def sentence(stock: str) -> str:
        critical = made(f"stock: {{{stock}}}\n", bench=MINUTES).critical
        assert critical is not None
        return critical_sentence(critical)

    head = "What holds up the smallest legal force:"
    assert sentence("officer: {raw: 2}, rifleman: {raw: 99}") == (
        f"{head} 2 Company / Command lacks 1 officer."
    )
    assert sentence("officer: {raw: 1}, rifleman: {raw: 99}") == (
        f"{head} 1 Company / Command lacks 1 officer; 1 more stand of it lacks figures too."
    )
    assert sentence("rifleman: {raw: 99}") == (
        f"{head} Command lacks 1 officer; 2 more stands of it lack figures too."
    )
    assert sentence("officer: {raw: 9}, rifleman: {raw: 99}") == (
        f"{head} 1 Company / 1 Section has the most work left, 20 min."
    )


def test_colours_of_the_same_batches_are_said_together() -> None:
    mixed = (
        Mixed(colour="sand", batches=(1, 2, 4, 5, 6, 8)),
        Mixed(colour="blue", batches=(1, 2, 4, 5, 6, 8)),
        Mixed(colour="red", batches=(3, 4)),
        Mixed(colour="grey", batches=(3, 4, 5)),
    )
    assert list(colour_sentences(replace(made(), mixed=mixed))) == [
        "Mix sand and blue once, for batch 1 and enough for batches 2, 4 to 6 and 8.",
        "Mix red once, for batch 3 and enough for batch 4.",
        "Mix grey once, for batch 3 and enough for batches 4 and 5.",
    ]


def test_what_is_not_owned_yet() -> None:
    assert lacking_sentence({"rifleman": 2}) == (
        "Not owned yet: 2 riflemen. Their minutes count from the first stage."
    )


def test_how_sure_it_is() -> None:
    found = made()
    assert certainty_words(found) == (
        "Exact: no order of work has less weighted waiting for these milestones."
    )
    doubtful = replace(found, waiting=Fraction(1015), least=Fraction(1000))
    assert certainty_words(doubtful) == (
        "Not proven: the weighted waiting may be up to 1.5 % more than the least there is."
    )
