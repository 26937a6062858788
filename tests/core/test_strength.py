"""Strength, deficiency and surplus."""

from dataclasses import replace

from hypothesis import given
from hypothesis import strategies as st

from paradestate.core.establishment import establishment
from paradestate.core.figure import StandIn
from paradestate.core.force import Force
from paradestate.core.holdings import Holdings
from paradestate.core.strength import Strength, stands_by_stage, strength
from tests.forces import force_from, marenz

STANDS = """stands:
  rifle: {base: none, figures: {rifleman: 4}}
  command: {base: none, figures: {officer: 1, rifleman: 1}}
  wire: {base: none, printed: yes, modelled as: {rifleman: 1}}
"""
ORGANISATION = (
    "figures: {rifleman: {}, officer: {}}",
    STANDS,
    "formations: {top: {parts: {command: 1, rifle: 2, wire: 1}}}",
)
WISHED = "format: 1\ntitle: T\nraise: {formation: top, wished: all}\n"


def strength_of(force: Force) -> Strength:
    made, _ = establishment(force)
    assert made is not None
    return strength(force, made)


def test_with_nothing_owned_everything_is_lacking() -> None:
    answer = strength_of(marenz())
    assert answer.deficiency == answer.wanted
    assert answer.deficiency["rifleman"] == 101
    assert answer.used == answer.held == answer.surplus == {}
    assert all(state.stage is None for state in answer.stands)


def test_finished_figures_are_used_before_unfinished_and_must_before_wished() -> None:
    answer = strength_of(
        force_from(
            *ORGANISATION,
            "stock: {rifleman: {in packet: 2, painted: 3, based: 5}, officer: {based: 3}}",
            head=WISHED,
        )
    )
    stages = [(state.stand.name, state.stage) for state in answer.stands]
    assert stages == [
        ("Command", "based"),
        ("1 Rifle", "based"),
        ("2 Rifle", "in packet"),
        ("Wire (modelled)", "in packet"),
    ]
    assert answer.deficiency == {}
    assert answer.surplus == {"officer": 2}
    assert stands_by_stage(answer) == {"based": 2, "in packet": 2}


def test_very_many_figures_are_counted_at_once() -> None:
    large = force_from(
        "figures: {a: {}}",
        "stands: {s: {base: none, figures: {a: 999999999}}}",
        "formations: {top: {parts: {s: 3}}}",
        "stock: {a: {painted: 999999999, based: 999999999}}",
    )
    assert strength_of(large).deficiency == {"a": 999999999}


def test_a_stand_that_lacks_a_figure_has_no_stage() -> None:
    answer = strength_of(force_from(*ORGANISATION, "stock: {rifleman: {painted: 6}}"))
    command, first, second = answer.stands
    assert command.lacking == {"officer": 1}
    assert first.stage == "painted"
    assert second.lacking == {"rifleman": 3}
    assert answer.deficiency == {"officer": 1, "rifleman": 3}


def test_a_finished_stand_serves_itself_and_its_figures_no_other() -> None:
    answer = strength_of(force_from(*ORGANISATION, "stock stands: {rifle: {based: 3}}"))
    assert answer.held == {"rifleman": 12}
    assert answer.used == {"rifleman": 8}
    assert answer.surplus == {"rifleman": 4}
    assert answer.deficiency == {"officer": 1, "rifleman": 1}


def test_an_unfinished_stand_lends_its_figures() -> None:
    answer = strength_of(force_from(*ORGANISATION, "stock stands: {rifle: {painted: 1}}"))
    assert answer.held == {"rifleman": 4}
    assert answer.used == {"rifleman": 4}
    assert answer.stands[0].lacking == {"officer": 1}


def test_stock_of_something_undefined_is_passed_over() -> None:
    force = replace(force_from(*ORGANISATION), stock_stands={"ghost": {"based": 1, "painted": 1}})
    assert strength_of(force).held == {}


KINDS = st.dictionaries(
    st.sampled_from(["in packet", "painted", "based"]), st.integers(0, 12), max_size=3
)


@given(KINDS, KINDS)
def test_used_and_the_rest_add_up(riflemen: dict[str, int], officers: dict[str, int]) -> None:
    """Used + surplus = held, used + deficiency = wanted, for every kind."""
    stock = {"rifleman": riflemen, "officer": officers}
    answer = strength_of(force_from(*ORGANISATION, f"stock: {stock}", head=WISHED))
    for kind in ("rifleman", "officer"):
        used = answer.used.get(kind, 0)
        assert used + answer.surplus.get(kind, 0) == answer.held.get(kind, 0)
        assert used + answer.deficiency.get(kind, 0) == answer.wanted[kind]


def test_a_stand_in_fills_a_want_and_is_said_to() -> None:
    answer = strength_of(
        force_from(
            "figures: {rifleman: {may stand for: {officer: good}}, officer: {}}",
            STANDS,
            "formations: {top: {parts: {command: 1, rifle: 2}}}",
            "stock: {rifleman: {painted: 4, based: 7}}",
        )
    )
    assert answer.stand_ins == (StandIn(kind="rifleman", stands_for="officer", number=1),)
    assert answer.deficiency == {}
    assert answer.used == {"rifleman": 10}
    assert answer.filled == {"officer": 1, "rifleman": 9}
    assert answer.surplus == {"rifleman": 1}


def test_what_was_worked_on_as_a_stand_stays_with_it() -> None:
    force = force_from(*ORGANISATION, "stock: {rifleman: {painted: 4, in packet: 4}}")
    first, second = "1 Rifle", "2 Rifle"
    plain = {state.stand.name: state.stage for state in strength_of(force).stands}
    assert plain[first] == "in packet"
    worked = {second: Holdings(figures={"rifleman": {"painted": 4}})}
    answer = strength_of(replace(force, worked=worked))
    stages = {state.stand.name: state.stage for state in answer.stands}
    assert (stages[first], stages[second]) == (None, "painted")
    assert answer.deficiency == strength_of(force).deficiency


def test_more_than_there_is_by_now_stays_with_no_stand() -> None:
    force = force_from(*ORGANISATION, "stock: {rifleman: {painted: 2}}")
    worked = {"2 Rifle": Holdings(figures={"rifleman": {"painted": 9, "based": 1}})}
    answer = strength_of(replace(force, worked=worked))
    by_name = {state.stand.name: state for state in answer.stands}
    assert [each.number for each in by_name["2 Rifle"].fillings] == [2]
    assert by_name["2 Rifle"].lacking == {"rifleman": 2}


def test_a_whole_stand_serves_the_one_that_it_was_finished_as() -> None:
    force = replace(
        force_from(*ORGANISATION),
        stock_stands={"rifle": {"based": 1}},
        worked={"2 Rifle": Holdings(stands={"rifle": {"based": 1}})},
    )
    stages = {state.stand.name: state.stage for state in strength_of(force).stands}
    assert (stages["1 Rifle"], stages["2 Rifle"]) == (None, "based")


def test_a_piece_that_went_back_stays_the_one_that_it_is() -> None:
    """The first stand is in repair: it takes neither the finished piece nor another's figures."""
    force = replace(
        force_from(*ORGANISATION),
        stock_stands={"rifle": {"based": 1, "painted": 1}},
        worked={"1 Rifle": Holdings(stands={"rifle": {"painted": 1}})},
    )
    stages = {state.stand.name: state.stage for state in strength_of(force).stands}
    assert (stages["1 Rifle"], stages["2 Rifle"]) == ("painted", "based")
