"""The cover of a want by figures owned and bought."""

from collections.abc import Mapping
from itertools import combinations

from hypothesis import given
from hypothesis import strategies as st

from paradestate.core.cover import Cover, Substitutes, cover
from paradestate.core.figure import Match, StandIn

KINDS = ("crew", "officer", "rifleman", "sergeant")
NUMBERS = st.dictionaries(st.sampled_from(KINDS), st.integers(0, 5))
SUBSTITUTES = st.builds(
    Substitutes,
    may_stand_for=st.dictionaries(
        st.sampled_from(KINDS),
        st.dictionaries(st.sampled_from(KINDS), st.sampled_from(list(Match)), max_size=3),
    ),
    bought_too=st.booleans(),
)
SERGEANTS = Substitutes(may_stand_for={"sergeant": {"officer": Match.GOOD, "rifleman": Match.GOOD}})


def covered(want: Mapping[str, int], substitutes: Substitutes = SERGEANTS, **there: int) -> Cover:
    """A cover by what is owned and, where a name begins with `bought_`, bought."""
    bought = {kind[7:]: number for kind, number in there.items() if kind.startswith("bought_")}
    owned = {kind: number for kind, number in there.items() if not kind.startswith("bought_")}
    return cover(want, owned=owned, bought=bought, substitutes=substitutes)


def test_sergeants_go_where_less_is_lacking() -> None:
    """Had all four served as riflemen, three officers would be lacking."""
    answer = covered({"rifleman": 1, "officer": 3}, sergeant=4)
    assert answer.number_lacking == 0
    assert answer.stand_ins == (
        StandIn(kind="sergeant", stands_for="officer", number=3),
        StandIn(kind="sergeant", stands_for="rifleman", number=1),
    )
    more = covered(
        {"rifleman": 24, "crew": 6, "officer": 5}, rifleman=21, crew=4, officer=2, sergeant=4
    )
    assert more.number_lacking == 4


def test_what_is_owned_is_used_before_what_is_bought_even_as_a_stand_in() -> None:
    answer = covered({"officer": 3}, sergeant=2, bought_officer=3)
    assert answer.left_over == {"officer": 2}
    assert answer.stand_ins == (StandIn(kind="sergeant", stands_for="officer", number=2),)


def test_bought_figures_stand_in_only_where_they_may() -> None:
    assert covered({"officer": 1}, bought_sergeant=2).lacking == {"officer": 1}
    too = Substitutes(may_stand_for=SERGEANTS.may_stand_for, bought_too=True)
    answer = covered({"officer": 1}, too, bought_sergeant=2)
    assert (answer.lacking, answer.left_over) == ({}, {"sergeant": 1})


def test_a_figure_stands_in_by_one_step_only() -> None:
    chain = Substitutes(
        may_stand_for={"crew": {"sergeant": Match.GOOD}, "sergeant": {"officer": Match.GOOD}}
    )
    assert covered({"officer": 1}, chain, crew=1).lacking == {"officer": 1}


def test_a_better_match_is_taken() -> None:
    both = Substitutes(
        may_stand_for={"crew": {"officer": Match.POOR}, "sergeant": {"officer": Match.GOOD}}
    )
    answer = covered({"officer": 1}, both, crew=1, sergeant=1)
    assert answer.stand_ins == (StandIn(kind="sergeant", stands_for="officer", number=1),)


@given(NUMBERS, NUMBERS, NUMBERS, SUBSTITUTES)
def test_what_is_lacking_is_what_the_worst_set_of_kinds_lacks(
    want: Mapping[str, int],
    owned: Mapping[str, int],
    bought: Mapping[str, int],
    substitutes: Substitutes,
) -> None:
    """The theorem of Hall in Ore's form (O. Ore, 1955): a slow twin without any flow."""
    answer = cover(want, owned=owned, bought=bought, substitutes=substitutes)
    worst = 0
    for size in range(len(KINDS) + 1):
        for group in combinations(KINDS, size):
            able = sum(
                number
                for there, is_bought in ((owned, False), (bought, True))
                for kind, number in there.items()
                if {kind, *substitutes.of(kind, bought=is_bought)} & set(group)
            )
            worst = max(worst, sum(want.get(kind, 0) for kind in group) - able)
    assert answer.number_lacking == worst


@given(NUMBERS, NUMBERS, NUMBERS, SUBSTITUTES)
def test_bought_figures_are_left_over_where_owned_ones_would_do(
    want: Mapping[str, int],
    owned: Mapping[str, int],
    bought: Mapping[str, int],
    substitutes: Substitutes,
) -> None:
    """What is left over is what is bought above what owned figures alone leave lacking."""
    answer = cover(want, owned=owned, bought=bought, substitutes=substitutes)
    without = cover(want, owned=owned, bought={}, substitutes=substitutes)
    used = sum(bought.values()) - sum(answer.left_over.values())
    assert used == without.number_lacking - answer.number_lacking
