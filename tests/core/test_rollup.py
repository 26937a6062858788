"""Counting by multiplication, and chains."""

from paradestate.core.establishment import establishment
from paradestate.core.force import Force
from paradestate.core.rollup import Rollup
from tests.forces import force_from, marenz


def rollup_of(force: Force) -> Rollup:
    answer, _ = establishment(force)
    assert answer is not None
    return answer.rollup


def test_the_chain_behind_a_number() -> None:
    chains = rollup_of(marenz()).chains
    assert chains["rifle section"] == "4 company x 3 platoon x 2"
    assert chains["light mortar section"] == "4 company x 1"
    assert chains["battalion command"] == "1"


def test_several_paths_are_several_terms() -> None:
    force = force_from(
        "stands: {a: {base: none}}",
        "formations: {top: {parts: {a: 2, x: 3}}, x: {parts: {a: 4}}}",
    )
    assert rollup_of(force).chains == {"a": "2 + 3 x x 4"}
    assert rollup_of(force).stands == {"a": 14}


def test_very_many_paths_are_cut_short() -> None:
    bodies = ", ".join(f"x{n}: {{parts: {{a: 1}}}}" for n in range(20))
    parts = ", ".join(f"x{n}: 1" for n in range(20))
    force = force_from(
        "stands: {a: {base: none}}", f"formations: {{top: {{parts: {{{parts}}}}}, {bodies}}}"
    )
    chain = rollup_of(force).chains["a"]
    assert chain.endswith(" + 1 x11 x 1 + ...")
    assert rollup_of(force).stands == {"a": 20}


def test_wished_paths_have_no_chain() -> None:
    force = force_from(
        "stands: {a: {base: none}}",
        "formations: {top: {parts: [{of: a, number: 2, need: wished}]}}",
    )
    assert rollup_of(force).chains == {}


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
