"""Any course of entries, on both databases, against a plain list that is added up by hand."""

import datetime
import tempfile
from collections import Counter
from dataclasses import dataclass
from itertools import count
from pathlib import Path
from typing import Any
from uuid import UUID

import pytest
from hypothesis import assume, settings
from hypothesis import strategies as st
from hypothesis.stateful import RuleBasedStateMachine, invariant, rule, run_state_machine_as_test

from paradestate.core.holdings import Holdings, piles
from paradestate.core.journal_entry import EntryKind
from paradestate.journeys import journal as journal_journey
from paradestate.journeys.holdings import holdings
from paradestate.journeys.log import Logged
from tests.journeys.conftest import FERRY_GUARD, written
from tests.journeys.logging_to import TODAY, tried

DAY = datetime.timedelta(days=1)
STAGES = ("in packet", "assembled", "undercoated", "painted", "based")
START = {("rifleman", "in packet"): 8, ("rifleman", "painted"): 2}

kinds = st.sampled_from(["rifleman", "boat"])
stages = st.sampled_from(STAGES[:3])
numbers = st.integers(1, 6)
days = st.integers(0, 3)

Sums = Counter[tuple[str, str]]
"""Kind and stage to a number."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Plain:
    """An entry as the list keeps it."""

    id: str
    days_ago: int
    verb: str
    kind: str = ""
    stage: str = ""
    goal: str = ""
    number: int = 0
    struck: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Ledger:
    """A plain list of entries, and what they come to by hand."""

    entries: tuple[Plain, ...] = ()

    def void(self) -> list[str]:
        """The ids of what is struck out."""
        void: list[str] = []
        for entry in self.entries[::-1]:
            if entry.verb == "struck-out" and entry.id not in void:
                void.append(entry.struck)
        return void

    def counting(self) -> list[Plain]:
        """Those not struck out, oldest day first."""
        void = self.void()
        live = [e for e in self.entries if e.id not in void and e.verb != "struck-out"]
        return [e for ago in range(9, -1, -1) for e in live if e.days_ago == ago]

    def sums(self, *, until: int = 0) -> tuple[Sums, Sums, int]:
        """What is held and lent after a day, and how often something was lacking."""
        held, lent, lacking = Counter(START), Sums(), 0
        for entry in self.counting():
            if entry.days_ago < until:
                continue
            key = entry.kind, entry.stage
            if entry.verb == "counted":
                held[key] = entry.number
                continue
            if entry.verb in {"lost", "moved", "lent"}:
                held[key] -= entry.number
                lacking += held[key] < 0
            if entry.verb == "returned":
                lent[key] -= entry.number
                lacking += lent[key] < 0
            if entry.verb == "lent":
                lent[key] += entry.number
            if entry.verb in {"received", "moved", "returned"}:
                held[entry.kind, entry.goal or entry.stage] += entry.number
        return +held, +lent, lacking


class Course(RuleBasedStateMachine):
    """The folder of a force, and beside it the plain list."""

    def __init__(self, folder: Path) -> None:
        super().__init__()
        self.folder = folder
        self.ledger = Ledger()
        self.said: dict[str, dict[str, Any]] = {}
        self.ids = count(1)

    def send(self, entry: Plain, **said: Any) -> Logged:  # noqa: ANN401 - of a request
        self.said[entry.id] = {"id": entry.id, "on": TODAY - entry.days_ago * DAY, **said}
        answer = tried(self.folder, EntryKind(entry.verb), **self.said[entry.id])
        after = Ledger(entries=(*self.ledger.entries, entry))
        is_lacking = after.sums()[2] > self.ledger.sums()[2]
        if answer.entry is None:
            assert is_lacking, answer.findings
        else:
            assert not is_lacking
            self.ledger = after
        return answer

    def new_id(self) -> str:
        return str(UUID(int=next(self.ids) * 2**97 + 2**78))

    @rule(
        verb=st.sampled_from(["received", "counted"]), kind=kinds, stage=stages, n=numbers, ago=days
    )
    def come(self, *, verb: str, kind: str, stage: str, n: int, ago: int) -> None:
        entry = Plain(id=self.new_id(), days_ago=ago, verb=verb, kind=kind, stage=stage, number=n)
        answer = self.send(entry, figures={kind: n}, to_stage=stage)
        assert verb == "counted" or answer.entry is not None

    @rule(verb=st.sampled_from(["lost", "lent"]), kind=kinds, stage=stages, n=numbers, ago=days)
    def go(self, *, verb: str, kind: str, stage: str, n: int, ago: int) -> None:
        entry = Plain(id=self.new_id(), days_ago=ago, verb=verb, kind=kind, stage=stage, number=n)
        self.send(entry, figures={kind: n}, from_stage=stage)

    @rule(kind=kinds, stage=stages, n=numbers, ago=days, goal=st.sampled_from(STAGES[:4]))
    def move(self, *, kind: str, stage: str, n: int, ago: int, goal: str) -> None:
        assume(goal != stage)
        entry = Plain(
            id=self.new_id(),
            days_ago=ago,
            verb="moved",
            kind=kind,
            stage=stage,
            goal=goal,
            number=n,
        )
        self.send(entry, figures={kind: n}, from_stage=stage, to_stage=goal)

    @rule(kind=kinds, stage=stages, n=numbers, ago=days)
    def come_back(self, *, kind: str, stage: str, n: int, ago: int) -> None:
        entry = Plain(
            id=self.new_id(), days_ago=ago, verb="returned", kind=kind, stage=stage, number=n
        )
        self.send(entry, figures={kind: n}, from_stage=stage)

    @rule(which=st.integers(0, 99))
    def strike_out(self, which: int) -> None:
        for struck in self.ledger.entries[which % 9 : which % 9 + 1]:
            assume(struck.id not in self.ledger.void())
            entry = Plain(id=self.new_id(), days_ago=0, verb="struck-out", struck=struck.id)
            self.send(entry, struck_out=struck.id, note="slip")

    @rule(which=st.integers(0, 99))
    def send_again(self, which: int) -> None:
        for sent in self.ledger.entries[which % 9 : which % 9 + 1]:
            answer = tried(self.folder, EntryKind(sent.verb), **self.said[sent.id])
            assert answer.was_there
            other = tried(self.folder, EntryKind.NOTED, id=sent.id, note="another")
            assert [found.code for found in other.findings] == ["entry-id-taken"]

    @invariant()
    def it_comes_to_what_the_list_says(self) -> None:
        for ago in (None, 0, 2):
            on = None if ago is None else TODAY - ago * DAY
            known = holdings(self.folder, today=TODAY, on=on)
            held, lent, _ = self.ledger.sums(until=ago or 0)
            assert known.state is not None
            assert sums_of(known.state.held) == held
            assert sums_of(known.state.lent) == lent


def sums_of(found: Holdings) -> Sums:
    return Counter({(pile.name, pile.stage): pile.number for pile in piles(found)})


@pytest.mark.unmeasured
@pytest.mark.slow
@pytest.mark.parametrize("database", ["sqlite", "postgresql"])
def test_any_course_of_entries_comes_to_what_a_plain_list_says(
    database: str, request: pytest.FixtureRequest, monkeypatch: pytest.MonkeyPatch, tmp_path: Path
) -> None:
    monkeypatch.setattr(journal_journey, "BETWEEN_CHECKPOINTS", 3)
    names = count(1)

    class Here(Course):
        def __init__(self) -> None:
            folder = written(Path(tempfile.mkdtemp(dir=tmp_path)) / "guard", FERRY_GUARD)
            if database == "postgresql":
                url = request.getfixturevalue("cluster")
                said = f'url = "{url}"\ncollection = "course of entries {next(names)}"\n'
                (folder / "journal.toml").write_text(said, encoding="utf-8")
            super().__init__(folder)

    run_state_machine_as_test(Here, settings=settings(max_examples=5, stateful_step_count=12))
