"""Everything of one kind on one line."""

from dataclasses import replace

from hypothesis import given
from hypothesis import strategies as st

from paradestate.core.establishment import establishment
from paradestate.core.figure import StandIn
from paradestate.core.force import Force
from paradestate.core.holding_line import HoldingLine, Share, holding_lines, with_stands
from paradestate.core.holdings import Staged
from paradestate.core.strength import strength
from tests.forces import force_from, marenz

WISHING = """\
figures: {rifleman: {}, officer: {}, flag: {}}
stands:
  section: {base: 40 x 20 mm, figures: {rifleman: 4}}
  scene: {base: 40 x 20 mm, figures: {officer: 1, rifleman: 2}}
formations:
  top:
    parts:
      - {of: section, number: 2}
      - {of: section, number: 1, need: wished}
      - {of: scene, number: 1, need: wished}
"""


def lines(force: Force, *, stock: Staged, stands: Staged | None = None) -> dict[str, HoldingLine]:
    owning = replace(force, stock=stock, stock_stands=stands or {})
    made, _ = establishment(owning)
    assert made is not None
    found = holding_lines(owning, made, found=strength(owning, made))
    return {each.kind: each for each in found}


def test_what_is_held_is_opened_to_loose_figures_and_stands() -> None:
    found = lines(
        marenz(),
        stock={"rifleman": {"painted": 30, "in packet": 12}},
        stands={"rifle section": {"based": 2, "painted": 1}, "truck": {"based": 1}},
    )["rifleman"]
    assert found.loose == {"in packet": 12, "painted": 30}
    assert found.on_stands == (Share(pattern="rifle section", stands=3, each=4),)
    assert (found.held, found.used, found.left_over, found.lacking) == (54, 54, 0, 47)


def test_what_is_wanted_is_opened_to_the_multiplication_behind_it() -> None:
    found = lines(marenz(), stock={})["rifleman"]
    assert found.wants == (
        Share(pattern="battalion command", stands=1, each=1, chain="1"),
        Share(pattern="company command", stands=4, each=1, chain="4 company x 1"),
        Share(pattern="rifle section", stands=24, each=4, chain="4 company x 3 platoon x 2"),
    )
    assert (found.wanted, found.lacking, found.held) == (101, 101, 0)


def test_stand_ins_are_told_at_both_ends() -> None:
    found = lines(marenz(), stock={"officer": {"painted": 10}, "rifleman": {"painted": 98}})
    three = StandIn(kind="officer", stands_for="rifleman", number=3)
    assert (found["officer"].serves_for, found["rifleman"].served_by) == ((three,), (three,))
    assert (found["officer"].used, found["officer"].as_itself) == (10, 7)
    assert (found["rifleman"].as_itself, found["rifleman"].lacking) == (98, 0)


def test_where_something_is_wished_as_well_no_chain_is_the_whole_story() -> None:
    force = force_from(WISHING, head=f"{HEAD}raise: {{formation: top, wished: all}}\n")
    found = lines(force, stock={})
    assert found["rifleman"].wants == (
        Share(pattern="section", stands=3, each=4),
        Share(pattern="scene", stands=1, each=2),
    )
    assert "flag" not in found


HEAD = "format: 1\ntitle: Test\n"
STAGED = st.dictionaries(
    st.sampled_from(["rifleman", "officer", "signaller", "pioneer"]),
    st.dictionaries(st.sampled_from(["in packet", "painted", "based"]), st.integers(0, 60)),
)
STANDS = st.dictionaries(
    st.sampled_from(["rifle section", "company command", "observer", "pioneer section"]),
    st.dictionaries(st.sampled_from(["painted", "based"]), st.integers(0, 30)),
)


@given(stock=STAGED, stands=STANDS)
def test_every_line_adds_up(stock: Staged, stands: Staged) -> None:
    for line in lines(marenz(), stock=stock, stands=stands).values():
        assert line.held == line.used + line.left_over
        by_others = sum(each.number for each in line.served_by)
        assert line.wanted == line.as_itself + by_others + line.lacking


def test_figures_on_stands_are_at_the_stage_of_their_stand() -> None:
    force = replace(marenz(), stock_stands={"rifle section": {"based": 2, "painted": 1}})
    loose = {"painted": 3}
    assert with_stands("rifleman", loose, force=force) == {"painted": 3 + 4, "based": 2 * 4}
    assert with_stands("officer", loose, force=force) == loose
    assert loose == {"painted": 3}
