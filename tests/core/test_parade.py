"""The parade ground: who stands in which rank."""

from dataclasses import replace

from paradestate.core.establishment import establishment
from paradestate.core.force import Force
from paradestate.core.mark.marking import marking
from paradestate.core.parade import Rank, nearest, numbers_by_stage, ranks
from paradestate.core.strength import strength
from tests.forces import force_from, marenz


def ranks_of(force: Force) -> tuple[Rank, ...]:
    made, _ = establishment(force)
    assert made is not None
    return ranks(made, strength=strength(force, made), marks=marking(force, made))


def colour_name(rank: Rank) -> str:
    return "" if rank.mark is None else rank.mark.colour


def test_marenz_stands_in_a_rank_for_each_company_and_one_for_the_battalion() -> None:
    battalion, *companies = ranks_of(marenz())
    assert (battalion.name, battalion.colour, battalion.wanted) == ("Battalion troops", "", 5)
    assert [rank.name for rank in companies] == [f"No {n} Company" for n in (1, 2, 3, 4)]
    assert [rank.colour for rank in companies] == ["1F4E9E", "F2C230", "7FB8DE", "6B4A2B"]
    assert colour_name(companies[0]) == "royal blue"
    assert [rank.wanted for rank in companies] == [8] * 4


def test_must_and_wished_stand_apart() -> None:
    battalion, *companies = ranks_of(marenz())
    assert [each.stand.pattern for each in battalion.wished] == ["headquarters scene"]
    assert all(each.state is None for each in battalion.wished)
    assert len(companies[0].must) == 10


def test_platoons_of_a_company_are_have_bars_and_printed_markers_tell_nothing() -> None:
    company = ranks_of(marenz())[1]
    groups = [(each.group, each.mark and each.mark.bars) for each in company.must]
    assert groups == [
        ("", 0),
        *(pair for n in (1, 2, 3) for pair in [(f"{n} Platoon", n)] * 2),
        ("", 0),
        *[("", None)] * 2,
    ]


def test_finished_stands_are_counted() -> None:
    stocked = replace(
        marenz(), stock={}, stock_stands={"rifle section": {"based": 2, "painted": 1}}
    )
    stages = stocked.bench.stages
    assert [rank.finished(stages) for rank in ranks_of(stocked)] == [0, 2, 0, 0, 0]


def test_a_force_without_companies_or_colours_stands_in_one_rank() -> None:
    force = force_from(
        "stands: {gun: {base: none, figures: {gunner: 2}}}",
        "figures: {gunner: {}}",
        "formations: {top: {parts: {gun: 3}}}",
    )
    (rank,) = ranks_of(force)
    assert (rank.name, rank.colour, colour_name(rank), rank.wanted) == ("Top troops", "", "", 3)


def test_a_company_beyond_the_colours_has_none() -> None:
    force = force_from(
        "stands: {gun: {base: none, figures: {gunner: 2}}}",
        "figures: {gunner: {}}",
        "formations: {top: {parts: {troop: 3}}, troop: {parts: {gun: 1}}}",
        "marks: {troop: {colours: [red, blue]}, colours: {red: AA0000, blue: 0000AA}}",
    )
    assert [colour_name(rank) for rank in ranks_of(force)] == ["red", "blue", ""]


def test_what_is_nearest_to_being_finished_comes_next() -> None:
    force = replace(
        marenz(),
        stock={},
        stock_stands={"rifle section": {"based": 2, "undercoated": 3, "in packet": 2}},
    )
    found = nearest(ranks_of(force), stages=force.bench.stages)
    assert found is not None
    assert (found.stage, found.to_stage) == ("undercoated", "painted")
    assert {each.state.stage for each in found.stands if each.state} == {"undercoated"}


def test_nothing_comes_next_where_all_that_is_there_is_finished() -> None:
    force = replace(marenz(), stock={}, stock_stands={"rifle section": {"based": 2}})
    assert nearest(ranks_of(force), stages=force.bench.stages) is None
    assert nearest((), stages=force.bench.stages) is None


def test_stands_are_numbered_by_stage_and_those_that_lack_figures_by_none() -> None:
    force = replace(marenz(), stock={}, stock_stands={"rifle section": {"based": 2}})
    battalion, first, *_ = ranks_of(force)
    assert numbers_by_stage(first.must) == {"based": 2, None: 6}
    assert numbers_by_stage(battalion.wished) == {}
