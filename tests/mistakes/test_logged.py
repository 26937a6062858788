"""Slips in what is logged: what is said, what it does to the journal, and the way out.

Each case is what was logged before, the slip, what is printed of it, and the same as the finding
tells to say it, which has to bring nothing to say.
"""

import shlex
from dataclasses import dataclass
from pathlib import Path

import pytest

from tests.cli.calling import call
from tests.journeys.conftest import FERRY_GUARD, TOWN_WATCH, written

EARLIER = ('received "rifleman=14" --to undercoated --on 2026-03-01',)


@dataclass(frozen=True, slots=True, kw_only=True)
class Case:
    """One row of slips."""

    slip: str
    printed: str
    mended: str
    earlier: tuple[str, ...] = EARLIER
    is_written: bool = False
    """Whether the slip is only doubted."""


NOTHING = "    Nothing is written into the journal.\n"
CASES = {
    "21 held less than promised": Case(
        slip='promised "boat=3" --on 2999-03-07',
        earlier=('received "boat=2" --on 2026-03-01',),
        printed="command line:1:1: stop: Boats: 2 held, 3 promised for Thursday 7 March 2999. "
        f"[promised-more-than-held]\n{NOTHING}"
        '    Promise fewer by naming them ("rifleman=20"), or log what was received first.\n'
        "1 stop\n",
        mended='promised "boat=2" --on 2999-03-07',
    ),
    "21 a whole force": Case(
        slip="promised --on 2999-03-07",
        printed="command line:1:1: stop: Boats: 0 held, 1 promised (1 in boat) for Thursday "
        f"7 March 2999. [promised-more-than-held]\n{NOTHING}"
        '    Promise fewer by naming them ("rifleman=20"), or log what was received first.\n'
        "1 stop\n",
        mended='promised "rifleman=8" --on 2999-03-07',
    ),
    "23 more than held": Case(
        slip='moved "rifleman=30" --to painted --on 2026-03-02',
        printed="command line:1:1: stop: Painted 30 of 24 riflemen held. Count again? "
        f"[more-than-held]\n{NOTHING}"
        "    Say another number, or with --from where they are; or log first what was received.\n"
        "1 stop\n",
        mended='moved "rifleman=14" --to painted --on 2026-03-02',
    ),
    "24 stage goes backward": Case(
        slip='moved "rifleman=6" --from undercoated --to assembled --on 2026-03-02 '
        "--entry 1f0c9b2e-6a52-4d1b-9f3e-0c5b7f2d9a41",
        printed="command line:1:1: warn: 6 riflemen move from undercoated back to assembled. "
        "Repainting, or a slip? [stage-backward]\n"
        "    It is written as it was said.\n"
        '    If it was a slip: log FOLDER struck-out 1f0c9b2e --because "slip".\n'
        "1 warning\n",
        mended='moved "rifleman=6" --from undercoated --to painted --on 2026-03-02',
        is_written=True,
    ),
    "35 session longer than the day": Case(
        slip="session --minutes 1860 --on 2026-03-03",
        printed="command line:1:1: stop: 31 hours on 3 March 2026? "
        f"[day-too-long]\n{NOTHING}"
        "    Give the minutes of this session alone, or its own day with --on.\n"
        "1 stop\n",
        mended="session --minutes 186 --on 2026-03-03",
    ),
    "35 session in the future": Case(
        slip="session --minutes 60 --on 2931-03-03",
        printed="command line:1:1: stop: 3 March 2931 hasn't happened yet. "
        f"[not-yet]\n{NOTHING}"
        "    Give the day on which it was with --on.\n"
        "1 stop\n",
        mended="session --minutes 60 --on 2026-03-03",
    ),
    "83 two phones say two things of one entry": Case(
        earlier=('received "boat=2" --on 2026-03-01 --entry 1f0c9b2e-6a52-4d1b-9f3e-0c5b7f2d9a41',),
        slip='received "boat=1" --on 2026-03-01 --entry 1f0c9b2e-6a52-4d1b-9f3e-0c5b7f2d9a41',
        printed="command line:1:1: stop: Entry 1f0c9b2e-6a52-4d1b-9f3e-0c5b7f2d9a41 is there "
        "already and says 'received 2 boats in packet, 1 March 2026'; what is sent says "
        f"'received 1 boat, 1 March 2026'. [entry-id-taken]\n{NOTHING}"
        "    Keep the one that is right: strike out the other, or give this one an id of its own.\n"
        "1 stop\n",
        mended='received "boat=1" --on 2026-03-01',
    ),
}


@pytest.mark.parametrize("case", CASES.values(), ids=list(CASES))
def test_a_slip_is_said_with_a_way_out(case: Case, tmp_path: Path) -> None:
    guard = written(tmp_path / "guard", FERRY_GUARD)
    for earlier in case.earlier:
        assert call("log", guard, *shlex.split(earlier)).status == 0
    before = call("log", guard, "--json").document["number"]
    slip = call("log", guard, *shlex.split(case.slip))
    assert slip.err == case.printed
    assert slip.status == (0 if case.is_written else 1)
    assert call("log", guard, "--json").document["number"] == before + case.is_written
    mended = call("log", guard, *shlex.split(case.mended))
    assert (mended.status, mended.err) == (0, "")


def test_22_the_same_figures_in_two_forces_the_same_night(tmp_path: Path) -> None:
    club = tmp_path / "club"
    written(club / "guard", FERRY_GUARD)
    written(club / "watch", TOWN_WATCH)
    call("log", club, "noted", "--note", "the club's boxes")
    assert call("log", club / "watch", "promised", "--on", "2999-03-12").err == ""
    second = call("log", club / "guard", "promised", "rifleman=8", "--on", "2999-03-12")
    assert second.status == 0
    assert second.err == (
        "command line:1:1: warn: 1 rifleman too many is promised to guard and watch on Tuesday "
        "12 March 2999: 15 held. [promised-twice]\n"
        "    The promise is written; on the day only one of them can have those.\n"
        "    Promise fewer, another day, or strike the other promise out.\n"
        "1 warning\n"
    )
    other = call("log", club / "guard", "promised", "rifleman=8", "--on", "2999-03-13")
    assert (other.status, other.err) == (0, "")
