"""Slips at the table while a game is written down: what is said, and that the way out is clean."""

import shlex
from dataclasses import dataclass
from pathlib import Path

import pytest

from tests.cli.calling import call
from tests.mistakes.test_judged import FORCE


@dataclass(frozen=True, slots=True, kw_only=True)
class Case:
    """One row of slips."""

    before: tuple[str, ...]
    slip: str
    code: str
    message: str
    mended: str
    more: str = ""


TANKS = 'roll "light tanks=2"'
CASES = {
    "51 impossible roll": Case(
        before=(),
        slip=f"{TANKS} 13",
        code="roll-impossible",
        message="stop: 13 on 1d12.",
        mended=f"{TANKS} 3",
    ),
    "54 second roll for the same thing": Case(
        before=(f"{TANKS} 2",),
        slip=f"{TANKS} 9",
        code="rolled-twice",
        message="warn: Light tanks was rolled already (2, refused) at ",
        mended='roll "armoured cars" 9',
    ),
    "55 asked after seeing": Case(
        before=('ask "light tanks=2"', f"{TANKS} 9"),
        slip='roll "armoured cars" 9',
        code="asked-after-declaring",
        message="warn: This file rolls after all is declared. Adding armoured cars now is outside "
        "the rule.",
        mended='take "light tanks=2"',
        more="asking: all declared first\n",
    ),
    "62 too much in reserve": Case(
        before=('mark reserve "1 Company" yes',),
        slip='mark reserve "2 Company" yes',
        code="reserve-too-large",
        message="stop: 2 companies named as reserve; 1 of 4 is the most.",
        mended='mark reserve "1 Company"',
    ),
}


def said(folder: Path, words: str) -> str:
    return call("play", folder, *shlex.split(words)).err


@pytest.mark.parametrize("name", CASES)
def test_a_slip_is_said_and_the_way_out_is_clean(name: str, tmp_path: Path) -> None:
    case = CASES[name]
    for folder, words in ((tmp_path / "slip", case.slip), (tmp_path / "mended", case.mended)):
        folder.mkdir()
        (folder / "force.yaml").write_text(FORCE + case.more, encoding="utf-8")
        for before in ("start", *case.before):
            assert said(folder, before) == ""
        printed = said(folder, words)
        assert (case.message in printed and f"[{case.code}]" in printed) == (words == case.slip)
        assert bool(printed) == (words == case.slip)
