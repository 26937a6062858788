"""What a change comes to, in its author's terms."""

from dataclasses import replace
from fractions import Fraction

import pytest

from paradestate.core.certainty import NotComputed
from paradestate.core.list_change import ListChange
from paradestate.core.sentence.comparison import (
    amendment_words,
    among_words,
    change_words,
    consequence,
    not_counted,
    number_of_best,
    numbers_sentence,
)
from paradestate.core.support.amendment import (
    Amendment,
    LimitAmendment,
    PriceAmendment,
    WorthAmendment,
)
from paradestate.core.support.comparison import ListComparison
from tests.core.support.test_comparison import NEW, OLD, TERMS, force

DEARER = PriceAmendment(entry="gun", points=3)


@pytest.mark.parametrize(
    ("amendment", "words"),
    [
        (DEARER, "raising 1 x gun from 2 to 3 points"),
        (PriceAmendment(entry="gun", points=1), "lowering 1 x gun from 2 to 1 point"),
        (PriceAmendment(entry="gun", points=2), "leaving 1 x gun at 2 points"),
        (
            LimitAmendment(entry="gun", most=None),
            "changing the limit of gun from 1 purchase to any number",
        ),
        (WorthAmendment(entry="gun", worth=Fraction(5, 2)), "holding 1 x gun worth 2.5 and not 0"),
    ],
)
def test_amendments_in_words(amendment: Amendment, words: str) -> None:
    assert amendment_words(TERMS, amendment) == words


def test_the_sentence_of_one_price() -> None:
    made = ListComparison(old=OLD, new=NEW, both=(0, 4))
    assert consequence(made, [DEARER]) == (
        "Raising 1 x gun from 2 to 3 points adds 1 to 4 legal forces at 4 points and leaves it in "
        "none of the only legal force (before: two)."
    )


def test_of_several_changes_each_entry_is_named() -> None:
    made = ListComparison(old=OLD, new=OLD, both=(3, 3))
    said = consequence(made, [DEARER, LimitAmendment(entry="horse", most=2)])
    assert said.startswith(
        "Raising 1 x gun from 2 to 3 points and changing the limit of horse from 1 purchase to 2 "
    )
    assert said.endswith(
        "purchases remove 25 in 100 of the legal forces and add 1 at 4 points, leave gun in two of "
        "the best three and leave horse in two of the best three."
    )


def test_where_nothing_changes_or_nothing_was_counted() -> None:
    nothing = replace(OLD, first=())
    made = ListComparison(old=nothing, new=nothing, both=(3, 4))
    assert consequence(made, [DEARER]) == (
        "Raising 1 x gun from 2 to 3 points leaves all legal forces at 4 points as they are."
    )
    assert not_counted(made) == ""
    many = replace(nothing, levels=(OLD.levels[0], replace(OLD.levels[1], legal=10**13)))
    open_ = ListComparison(old=many, new=many, both=NotComputed(reason="too large"))
    assert "leaves more than 10^13 legal forces of more than 10^13 at 4" in consequence(
        open_, [DEARER]
    )
    assert not_counted(open_) == "too large"


def test_what_changes_among_the_best() -> None:
    made = ListComparison(old=replace(OLD, is_cut=True), new=NEW, both=(0, 4))
    (said,) = among_words(made)
    assert said == (
        "In how many of the best three an entry is: gun 2 before and 0 now; "
        "horse 2 before and 1 now. Others are as good as the last of them."
    )
    assert list(among_words(replace(made, new=replace(OLD, is_cut=False)))) == []
    sure = ListComparison(old=OLD, new=replace(NEW, first=(force("gun"),)), both=(0, 4))
    assert next(among_words(sure)) == (
        "In how many of the best three an entry is: gun 2 before and 1 now; "
        "horse 2 before and 0 now."
    )
    assert number_of_best(20) == "twenty"


def test_differences_line_by_line() -> None:
    part = ListChange(section="limits", name="1", part="", before="one.", after="two.")
    assert list(change_words(part)) == ["limits, 1:", "  was: one.", "  is: two."]
    gone = replace(part, after="")
    assert list(change_words(gone)) == ["limits, 1: gone.", "  was: one."]
    new = replace(part, name="", before="")
    assert list(change_words(new)) == ["limits: new.", "  is: two."]
    lost = ListChange(section="troops", name="gun", part="needs", before="needs a", after="")
    assert list(change_words(lost)) == ["troops, gun, needs:", "  was: needs a"]
    more = ListChange(section="troops", name="gun", part="needs", before="", after="needs a")
    assert list(change_words(more)) == ["troops, gun, needs:", "  is: needs a"]


def test_what_is_lost_and_new_in_one_sentence() -> None:
    made = ListComparison(old=OLD, new=NEW, both=(0, 3))
    assert numbers_sentence(made) == (
        "At 4 points 4 legal forces become 5: 1 of them lost (25 in 100), 2 new."
    )
    grown = ListComparison(old=OLD, new=NEW, both=(0, 4))
    assert (
        numbers_sentence(grown) == "At 4 points 4 legal forces become 5: none of them lost, 1 new."
    )
    fallen = ListComparison(old=NEW, new=OLD, both=(0, 4))
    assert numbers_sentence(fallen) == (
        "At 4 points 5 legal forces become 4: 1 of them lost (20 in 100), none new."
    )


def test_where_nothing_changes_or_it_isn_t_known_the_sentence_says_so() -> None:
    same = ListComparison(old=OLD, new=OLD, both=(3, 4))
    assert numbers_sentence(same) == "At 4 points all 4 legal forces stay as they are."
    unknown = ListComparison(old=OLD, new=NEW, both=NotComputed(reason="too many"))
    assert numbers_sentence(unknown) == "At 4 points 4 legal forces become 5."
