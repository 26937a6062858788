"""Counting by multiplication."""

from paradestate.core.establishment import establishment
from paradestate.core.force import Force
from paradestate.core.rollup import Rollup, stands_under
from paradestate.core.structure import structure
from tests.forces import force_from


def rollup_of(force: Force) -> Rollup:
    answer, _ = establishment(force)
    assert answer is not None
    return answer.rollup


def test_several_ways_are_added_up() -> None:
    force = force_from(
        "stands: {a: {base: none}}",
        "formations: {top: {parts: {a: 2, x: 3}}, x: {parts: {a: 4}}}",
    )
    assert rollup_of(force).stands == {"a": 14}


def test_stands_under_one_body() -> None:
    force = force_from(
        "stands: {a: {base: none}, b: {base: none}}",
        """formations:
  top: {parts: {a: 1, x: 3}}
  x: {weak: 50%, parts: [{of: y, number: 2}, {of: a, number: 1}]}
  y: {parts: [{of: b, number: 3}, {of: a, number: 4, need: wished}]}
""",
    )
    settled, _ = structure(force)
    assert settled is not None
    under = {name: stands_under(force, settled, formation=name) for name in ("top", "x", "y", "z")}
    assert under == {"top": 10, "x": 3, "y": 2, "z": None}


def test_printed_totals_are_compared_at_paper_strength_only() -> None:
    force = force_from(
        "stands: {a: {base: none, men: 10}}",
        """formations:
  top: {men: 40, parts: {full: 1, thin: 1}}
  full: {men: 20, parts: {a: 2}}
  thin: {men: 20, weak: 50%, parts: {a: 2}}
""",
    )
    assert set(rollup_of(force).paper_men) == {"full"}
    answer, findings = establishment(force)
    assert answer is not None
    assert not findings
    assert answer.must.men.least == 30
