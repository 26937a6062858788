"""Slips at the table: what is said of a plan, and the way out of it.

The way out has to bring nothing to say.
"""

import shlex
from dataclasses import dataclass
from pathlib import Path

import pytest

from tests.cli.calling import call

FORCE = """\
format: 1
title: Slips
figures: {rifleman: {footprint: 6 mm}}
stands: {rifle section: {base: 40 x 20 mm, figures: {rifleman: 4}}}
formations:
  company: {parts: {rifle section: 2}}
  battalion: {parts: [{of: company, number: 2-4, usual: 4}]}
raise: {formation: battalion}
games: {attack: {allowance: 12, posture: attack}}
supporting troops:
  gun platoon: {cost: 6, limit: {most: 1, for every: 2, of: company}}
  light tanks: {cost: {2: 9}, availability: {roll: 1d12, allows: {1-4: 0, 5-12: all}},
    when refused: points kept}
  commander: {cost: 3, needs: [light tanks]}
  armoured cars: {cost: 3, availability: {roll: 1d12, allows: {1-8: 0, 9-12: all}},
    when refused: points kept}
reserves: {method: named, most: 34%, of: company}
"""
TANKS = '--plan "light tanks=2, commander=1"'


@dataclass(frozen=True, slots=True, kw_only=True)
class Case:
    """One row of slips."""

    slip: str
    printed: str
    mended: str
    more: str = ""
    """What the folder says beside the rest."""


CASES = {
    "42 limit changed by another choice": Case(
        slip='--plan "gun platoon=1, gun platoon=1" --set company=2',
        printed="command line:1:1: stop: Cutting to 2 companies lowers the limit of gun platoon "
        "to 1; it is taken twice. [limit-lowered]\n    The plan isn't legal.\n"
        "    Dropping 1 x gun platoon (6) would do it.\n1 stop\n",
        mended='--plan "gun platoon=1, gun platoon=1"',
    ),
    "44 needed thing lost by the dice": Case(
        slip=f'{TANKS} --allowed "light tanks=0"',
        printed="command line:1:1: warn: 2 x light tanks were refused, so 1 x commander (3) "
        "goes too: 12 points to spend again. [refused]\n    Nothing is left of the plan.\n"
        "    Spend the points again on what may still be taken.\n1 warning\n",
        mended='--plan "gun platoon=1, gun platoon=1"',
    ),
    "54 second roll for the same thing": Case(
        slip=f'{TANKS} --allowed "light tanks=2, light tanks=0"',
        printed="command line:1:1: warn: light tanks was rolled twice (2 and refused), and has "
        "1 roll. [rolled-twice]\n    The first result counted.\n"
        "    Strike the other out with a reason, or keep it and leave out the first.\n1 warning\n",
        mended=f'{TANKS} --allowed "light tanks=2"',
    ),
    "55 asked after seeing": Case(
        slip='--plan "light tanks=2, armoured cars=1" --allowed "light tanks=2"',
        more="asking: all declared first\n",
        printed="command line:1:1: warn: This file rolls after all is declared. Adding armoured "
        "cars now is outside the rule. [asked-after-declaring]\n"
        "    It is left in the plan, as if it had come.\n"
        "    Take it out, or give its result too if it was declared with the others.\n1 warning\n",
        mended='--plan "light tanks=2, armoured cars=1" --allowed "light tanks=2, armoured cars=1"',
    ),
    "62 too much in reserve": Case(
        slip=f"{TANKS} --reserve company=2",
        printed="command line:1:1: stop: 2 companies named as reserve; 1 of 4 is the most. "
        "[reserve-too-large]\n    The plan isn't legal with this reserve.\n"
        "    Keep back at most 1 company.\n1 stop\n",
        mended=f"{TANKS} --reserve company=1",
    ),
}


def judged(folder: Path, options: str, *, more: str) -> str:
    (folder / "force.yaml").write_text(FORCE + more, encoding="utf-8")
    return call("judge", folder, *shlex.split(options)).err


@pytest.mark.parametrize("name", CASES)
def test_a_slip_of_a_plan_is_said_with_a_way_out(name: str, tmp_path: Path) -> None:
    case = CASES[name]
    assert judged(tmp_path, case.slip, more=case.more) == case.printed
    assert judged(tmp_path, case.mended, more=case.more) == ""
