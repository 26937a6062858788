"""Which printed stands hide who moves."""

import pytest

from paradestate.core.paper.hiding import hides_who_moves, is_undecided
from tests.forces import force_from

FORCE = """\
figures: {man: {}, rider: {sort: mounted}, tent: {sort: scenery}}
stands:
  s: {base: 40 mm disc, REST}
formations: {top: {parts: {s: 1}}}
"""


@pytest.mark.parametrize(
    ("rest", "found"),
    [
        ("printed: yes, seen by opponent: no", "hides"),
        ("printed: yes, seen by opponent: when revealed", "hides"),
        ("printed: yes, seen by opponent: yes, modelled as: {man: 1}", "shows"),
        ("printed: yes, modelled as: {man: 1, rider: 1}", "hides"),
        ("printed: yes, modelled as: {man: 1, tent: 1}", "shows"),
        ("printed: yes", "undecided"),
        ("figures: {man: 1}, seen by opponent: no", "shows"),
    ],
)
def test_what_decides_is_said_first_and_else_what_it_is_modelled_as(rest: str, found: str) -> None:
    force = force_from(FORCE.replace("REST", rest))
    assert hides_who_moves(force, "s") is (found == "hides")
    assert is_undecided(force, "s") is (found == "undecided")
