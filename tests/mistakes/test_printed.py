"""Slips in what is printed: what is said, and the way out of it, which brings nothing to say."""

import shlex
from dataclasses import dataclass
from pathlib import Path

import pytest

from tests.cli.calling import call

FORCE = """\
format: 1
title: Slips
figures: {rifleman: {footprint: 6 mm}}
stands:
  rifle section: {base: 40 x 20 mm, called: Section, figures: {rifleman: 4}}
  hidden marker: {base: 40 mm disc, printed: yes, seen by opponent: no}
formations:
  platoon: {parts: {rifle section: 9}}
  company: {parts: {platoon: NUMBER, hidden marker: 1}}
raise: {formation: company}
"""


@dataclass(frozen=True, slots=True, kw_only=True)
class Case:
    """One row of slips."""

    slip: str
    printed: str
    mended: str
    number: int = 1
    force: str = FORCE
    mended_force: str = FORCE


RESERVES = "reserves: {method: named, most: 100%, of: platoon}\n"
SCENE = FORCE.replace("40 x 20 mm", "600 x 500 mm")

TYPED_IN = """\
format: 1
title: Slips
private: yes
stands: {rifle section: {base: 40 x 20 mm}}
formations: {company: {parts: {rifle section: 9}}}
raise: {formation: company}
supporting troops: {rifle section on bicycles: {cost: {1: 3}, each: {rifle section: 1}}}
"""

CASES = {
    "14 stand bigger than the page": Case(
        slip="--only templates",
        force=SCENE,
        printed="force.yaml:5:3: warn: The template of rifle section, 610 x 531.5 mm, doesn't "
        "fit on A4: 194 x 281 mm of it are free. [larger-than-page]\n"
        "      rifle section: {base: 600 x 500 mm, called: Section, figures: {rifleman: 4}}\n"
        "      ^\n"
        "    It isn't printed.\n"
        "    Draw it by hand, or give it a smaller base.\n1 warning\n",
        mended="--only templates",
    ),
    "64 printed size wrong": Case(
        slip="--scale 96.8",
        printed="command line:1:1: warn: The 100 mm line measures 96.8. [printed-size-wrong]\n"
        "    What is laid out 40 mm wide comes out 1.3 mm wrong.\n"
        "    Print at 103.3% or turn off fitting; or have the sheets corrected with --correct.\n"
        "1 warning\n",
        mended="--scale 100",
    ),
    "65 paper chosen differs": Case(
        slip="--only labels --paper a4 --loaded letter",
        number=7,
        printed="command line:1:1: warn: Labels: sheets are laid out for A4; the printer offers "
        "Letter: the last row would be cut. [other-paper]\n"
        "    9 of them come out incomplete, or all too small where the printer fits the page to "
        "its paper.\n"
        "    Lay them out for it: --paper letter.\n1 warning\n",
        mended="--only labels --paper letter --loaded letter",
    ),
    "66 two-sided without room for misregistration": Case(
        slip="--bleed '0.5 mm'",
        printed="command line:1:1: warn: Bleed 0.5 mm, printer shift about 1 mm. "
        "[bleed-too-small]\n"
        "    The underside marks may show a white edge.\n"
        "    Set the bleed to 1 mm, and the gutter to twice that.\n1 warning\n",
        mended="--bleed '1 mm'",
    ),
    "67 text too small": Case(
        slip="--only labels --read-from '120 cm'",
        printed="command line:1:1: warn: Names on labels would be 11 pt, some of them. "
        "Least readable at 120 cm is about 20 pt. [type-too-small]\n"
        "    They can be read from nearer by only.\n"
        "    Give shorter names ('called'), or say from where they are read: "
        "--read-from '65 cm'.\n1 warning\n",
        mended="--only labels --read-from '65 cm'",
    ),
    "80 private field on the public sheet": Case(
        slip="--only 'opponents sheet' --reserve platoon=1 --revealed platoon",
        force=FORCE + RESERVES,
        mended_force=FORCE + RESERVES,
        printed="command line:1:1: stop: The opponent's sheet would show 'reserve: 1 platoon'. "
        "[private-on-public-sheet]\n"
        "    It isn't printed.\n"
        "    Mark it as visible ('seen by opponent: yes') or leave it out.\n1 stop\n",
        mended="--only 'opponents sheet'",
    ),
    "81 typed-in list printed": Case(
        slip='--only "troops list"',
        force=TYPED_IN,
        printed="force.yaml:3:10: warn: This file says its source is a printed rulebook. "
        "[private-list]\n"
        "    private: yes\n"
        "             ^\n"
        "    Sharing it may not be yours to do. Nothing is kept back: it is your own copy.\n"
        "    Keep it to yourself, or hand on only what you wrote yourself.\n1 warning\n",
        mended='--only "troops list"',
        mended_force=TYPED_IN.replace("private: yes\n", ""),
    ),
}


def said(folder: Path, options: str) -> str:
    called = call("sheets", folder, "--out", folder / "papers", *shlex.split(options))
    return called.err.replace(f"{folder}/", "")


@pytest.mark.parametrize("name", CASES)
def test_the_slip_is_named_with_a_way_out_that_leaves_nothing_to_say(
    name: str, tmp_path: Path
) -> None:
    case = CASES[name]
    for text, options, expected in (
        (case.force, case.slip, case.printed),
        (case.mended_force, case.mended, ""),
    ):
        (tmp_path / "force.yaml").write_text(text.replace("NUMBER", str(case.number)))
        assert said(tmp_path, options) == expected
