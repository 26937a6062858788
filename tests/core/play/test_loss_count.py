"""Losses by the board against their limits."""

import json
from pathlib import Path
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from paradestate.core.establishment import establishment
from paradestate.core.force import Force
from paradestate.core.game import Purchase
from paradestate.core.play.event import Subject
from paradestate.core.play.loss_count import (
    LimitedBody,
    LossStep,
    fielded_bodies,
    limited_bodies,
    loss_counts,
)
from paradestate.core.sentence.loss_limit import losses_words
from tests.core.play.limited import board_of, limited, standing
from tests.forces import force_from

LOSS_CASES: list[dict[str, Any]] = json.loads(
    Path(__file__).with_name("loss_cases.json").read_text(encoding="utf-8")
)
"""Each with `limit` as a phone gets it, what of entries is `asked` and taken, `told` (aspect, name,
values), and the `words`."""

ORGANISATION = """\
figures: {man: {}}
stands:
  section: {base: 40 x 20 mm, figures: {man: 4}}
  gun: {base: 40 x 40 mm, figures: {man: 3}}
  marker: {base: 20 mm disc, printed: yes}
formations:
  team: {echelon: team, called: Team, parts: {gun: 1}}
  platoon: {echelon: platoon, called: Platoon, parts: {section: 3, team: 1}}
  company: {echelon: company, called: Company, parts: {platoon: 2, gun: 1, marker: 1}}
  scouts: {echelon: company, called: Scouts, parts: {section: 2}}
  top:
    echelon: battalion
    parts:
      - {of: company, number: 2}
      - {of: scouts, number: 1}
      - {of: gun, number: 1}
      - {of: platoon, number: 1, need: wished}
states: [held up]
"""


TROOPS = """\
supporting troops:
  guns: {cost: 2, each: {gun: 2, marker: 1}, grants: {section: 1}, limit: any}
  battery: {cost: 1, each: {gun: 1}, place: off table}
  digging: {cost: 1}
"""


def organisation(*limits: str) -> Force:
    return force_from(ORGANISATION, TROOPS, f"loss limits: [{', '.join(limits)}]\n")


def bodies(*limits: str) -> tuple[LimitedBody, ...]:
    force = organisation(*limits)
    made, _ = establishment(force)
    assert made is not None
    return limited_bodies(force, made)


@pytest.mark.parametrize("case", LOSS_CASES, ids=lambda case: case["name"])
def test_it_is_said_how_a_body_stands(case: dict[str, Any]) -> None:
    body = limited(case["limit"], case.get("asked", []))
    (counted,) = loss_counts([body], board_of(case["told"]))
    assert losses_words(counted) == case["words"]
    assert counted.body.total == case["limit"]["of"]


def test_how_many_more_there_may_be_until_the_next_effect() -> None:
    (scouts,) = bodies("{of: scouts, at: {2: gone}}")
    one, other = (Subject("out", f"Scouts / {number} Section") for number in (1, 2))
    found = [
        loss_counts([scouts], board)[0].until_next
        for board in (
            {},
            {one: standing(one, "out")},
            {one: standing(one, "", "out")},
            {one: standing(one, "out"), other: standing(other, "yes")},
        )
    ]
    assert found == [2, 1, 2, None]


def test_each_of_a_formation_stands_by_itself() -> None:
    found = bodies("{of: company, at: {a third: shaken, more than half: falls back}}")
    assert [(each.name, each.total, each.company, each.unit) for each in found] == [
        ("1 Company", 9, "1 Company", None),
        ("2 Company", 9, "2 Company", None),
    ]
    assert found[0].steps == (
        LossStep(needs=3, effects=("shaken",)),
        LossStep(needs=5, effects=("falls back",)),
    )
    assert "1 Company / Marker" not in [each.name for each in found[0].members]


def test_every_body_of_a_size_stands_by_itself() -> None:
    found = bodies("{echelon: company, at: {1: shaken}}")
    assert [each.name for each in found] == ["1 Company", "2 Company", "Scouts"]
    (scouts,) = [each for each in found if each.name == "Scouts"]
    assert scouts.unit is not None
    assert scouts.unit.name == "Scouts"


def test_the_whole_force_is_meant_where_nothing_is_named_and_wished_things_do_not_count() -> None:
    (whole,) = bodies("{at: {half: over}}")
    assert (whole.name, whole.total, whole.company, whole.unit) == ("", 21, None, None)
    assert whole.steps == (LossStep(needs=11, effects=("over",)),)
    assert len(bodies("{of: platoon, at: {1: shaken}}")) == 4


def test_figures_count_and_stands_count_what_the_owner_says() -> None:
    figures, points = bodies(
        "{of: platoon, count: figures, at: {half: thin}}",
        "{of: scouts, counts as: {section: 3}, at: {4: shaken}}",
    )[3:]
    assert (figures.name, figures.total) == ("2 Company / 2 Platoon", 15)
    assert [each.counts for each in points.members] == [3, 3]
    marked, *_ = bodies("{of: company, counts as: {marker: 1, gun: 0, section: 0}, at: {1: seen}}")
    assert [each.name for each in marked.members] == ["1 Company / Marker"]


def test_states_and_leaders_are_counted_by_units() -> None:
    held, leaders, whole = bodies(
        "{of: scouts, count: held up, at: {1: halted}}",
        "{count: leaders hit, among: platoon, at: {2: headless}}",
        "{count: held up, at: {half: stalled}}",
    )
    assert (held.aspect, [each.name for each in held.members]) == ("held up", ["Scouts"])
    assert (leaders.aspect, leaders.total) == ("leader hit", 4)
    assert [each.name for each in whole.members] == [
        "top",
        "1 Company",
        "1 Company / 1 Platoon",
        "1 Company / 2 Platoon",
        "2 Company",
        "2 Company / 1 Platoon",
        "2 Company / 2 Platoon",
        "Scouts",
    ]


def test_supporting_troops_count_once_they_are_taken() -> None:
    force = organisation("{supporting troops: yes, at: {half: over}}")
    made, _ = establishment(force)
    assert made is not None
    (bare,) = limited_bodies(force, made)
    assert (bare.total, bare.unit, bare.company) == (21, None, None)
    (troop,) = bare.troops
    assert (troop.entry.name, troop.counts) == ("guns", {"gun": 1, "section": 1})
    plan = (Purchase(entry="guns", number=1), Purchase(entry="guns", number=2))
    (whole,) = fielded_bodies(force, made, plan=(*plan, Purchase(entry="battery", number=3)))
    assert whole.total == 29
    assert whole.members[-1].name == "guns / 2 section"
    assert whole.steps == (LossStep(needs=15, effects=("over",)),)
    (figures,) = limited_bodies(
        organisation("{supporting troops: yes, count: figures, at: {half: over}}"), made
    )
    assert figures.troops[0].counts == {"gun": 3, "section": 4}


def test_a_force_of_nothing_but_supporting_troops_has_a_limit_once_some_are_taken() -> None:
    counted = "{supporting troops: yes, counts as: {section: 0, gun: 0, marker: 2}, at: {1: over}}"
    force = organisation(counted.replace("marker: 2", "marker: 0"))
    made, _ = establishment(force)
    assert made is not None
    assert limited_bodies(force, made) == ()
    (body,) = limited_bodies(organisation(counted), made)
    assert [each.counts for each in body.members] == [2, 2]


def test_a_part_of_a_unit_lies_in_it() -> None:
    team, *_ = bodies("{of: team, at: {1: gone}}")
    assert team.unit is not None
    assert (team.name, team.unit.name) == (
        "1 Company / 1 Platoon / Team",
        "1 Company / 1 Platoon",
    )


def test_effects_of_one_number_come_together_and_those_out_of_reach_do_not() -> None:
    (scouts,) = bodies("{of: scouts, at: {half: shaken, 1: slow, 3: gone}}")
    assert scouts.steps == (LossStep(needs=1, effects=("shaken", "slow")),)


def test_what_has_nothing_to_lose_has_no_limit() -> None:
    assert bodies("{of: company, counts as: {section: 0, gun: 0}, at: {1: gone}}") == ()
    assert bodies() == ()


def test_its_losses_hang_on_what_is_told_of_its_members() -> None:
    (scouts,) = bodies("{of: scouts, at: {2: gone}}")
    assert scouts.counts(Subject("out", "Scouts / 1 Section"))
    assert not scouts.counts(Subject("held up", "Scouts / 1 Section"))
    assert not scouts.counts(Subject("out", "1 Company / Gun"))


@given(
    weights=st.lists(st.integers(1, 3), min_size=1, max_size=6),
    tellings=st.lists(st.sampled_from([(), ("",), ("out",), ("", "out"), ("a", "b")]), max_size=6),
    needs=st.integers(1, 8),
)
def test_the_count_is_that_of_every_way_in_which_the_disputed_may_be_settled(
    *, weights: list[int], tellings: list[tuple[str, ...]], needs: int
) -> None:
    """The slow twin settles every dispute in every way, and counts by hand."""
    named = {str(place): weight for place, weight in enumerate(weights)}
    body = limited(
        {
            "name": "",
            "word": "out",
            "aspect": "out",
            "members": list(named.items()),
            "at": [[needs, 1, False, False, "shaken"]],
        }
    )
    told = dict(zip(named, tellings, strict=False))
    board = {
        Subject("out", name): standing(Subject("out", name), *values)
        for name, values in told.items()
    }
    (counted,) = loss_counts([body], board)
    ways = [0]
    for name, weight in named.items():
        values = told.get(name, ()) or ("",)
        ways = [lost + (weight if value else 0) for lost in ways for value in values]
    assert (counted.least, counted.most) == (min(ways), max(ways))
    reached = {lost >= needs for lost in ways}
    is_next = reached == {False} and needs <= sum(weights)
    assert bool(counted.in_force) is (reached == {True})
    assert bool(counted.in_doubt) is (reached == {True, False})
    assert (counted.next is not None) is is_next
    assert counted.until_next == (needs - min(ways) if is_next else None)
