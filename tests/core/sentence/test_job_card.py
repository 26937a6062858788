"""Cards in words."""

import datetime
from dataclasses import replace
from fractions import Fraction

from paradestate.core.bench import Coat
from paradestate.core.sentence.job_card import (
    coat_words,
    colour_title,
    job_sentences,
    job_title,
    part_words,
    time_words,
)
from paradestate.core.work.job_card import JobCard, colour_cards, job_cards
from tests.core.work.batches import MINUTES, climbed
from tests.core.work.works import in_repair

BENCH = f"""\
{MINUTES}  set up: 20 min
  dry: {{undercoated: 2 h, painted: 1 h}}
  colours: {{officer: [{{colour: red}}], tunic: [{{colour: sand, coats: 2, share: 40%}}]}}
"""


def cards(bench: str = BENCH) -> dict[str, JobCard]:
    found, force = climbed(bench=bench)
    return {card.rung.pattern: card for card in job_cards(found.rungs, force)}


def test_a_card_says_what_it_is_for_and_how_long_it_takes() -> None:
    card = cards()["section"]
    assert job_title(card) == "2 sections"
    assert time_words(card) == "1 h 20 min of work, 20 min to set up"
    assert time_words(cards(MINUTES)["section"]) == "1 h 20 min of work"
    idle = replace(card, rung=replace(card.rung, minutes=Fraction(0), set_up=Fraction(0)))
    assert time_words(idle) == "no minutes"


def test_it_says_what_dries_what_takes_turns_what_is_lacking_and_what_it_completes() -> None:
    card = cards()["section"]
    said = replace(card, rung=replace(card.rung, takes_turns_with=2, completes=("evening",)))
    assert list(job_sentences(said)) == [
        "To dry: undercoated 2 h and painted 1 h.",
        "While it dries, work on batch 2; and the other way round.",
        "Not owned yet: 8 riflemen.",
        "With it the evening can be played.",
    ]
    quiet = replace(card, dry={}, rung=replace(card.rung, takes_turns_with=None, works=()))
    assert list(job_sentences(replace(quiet, rung=replace(quiet.rung, completes=())))) == []


def test_a_part_names_its_kinds_only_where_some_go_without() -> None:
    red, tunic = cards()["command"].parts
    assert part_words(red) == "Officer: red, 1 coat (officer)."
    assert part_words(tunic) == "Tunic: sand, 2 coats on 40%."
    assert coat_words(Coat(colour="wash")) == "wash, 1 coat"


def test_a_colour_card_is_for_so_many_of_a_kind() -> None:
    found, force = climbed(bench=BENCH)
    assert [colour_title(card) for card in colour_cards(found.rungs, force)] == [
        "1 officer",
        "9 riflemen",
    ]


def test_it_says_what_is_in_repair_and_for_which_day() -> None:
    card = cards(MINUTES)["section"]
    day = datetime.date(2026, 12, 10)
    first, *rest = card.rung.works
    broken = replace(first, repair=in_repair(first.stand.name, wanted=day))
    said = replace(card, rung=replace(card.rung, works=(broken, *rest)))
    assert f"In repair, wanted on 10 December 2026: {first.stand.name}." in list(
        job_sentences(said)
    )
