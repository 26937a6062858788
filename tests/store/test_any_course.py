"""Any course of appends, repeats, failures, checkpoints and reopenings against a plain list."""

import tempfile
from itertools import count
from pathlib import Path

import pytest
from hypothesis import settings
from hypothesis import strategies as st
from hypothesis.stateful import RuleBasedStateMachine, invariant, rule, run_state_machine_as_test

from paradestate.core.digest_chain import START, Checkpoint, Head, Link, first_altered, linked
from paradestate.store.address import Address, JournalFile, ServerJournal
from paradestate.store.error import OtherTextError
from paradestate.store.opening import opened
from tests.store.writing import identity

NUMBERS = st.integers(1, 12)
# What JSON can hold, and a database or its driver might not.
TEXTS = st.text(st.characters(codec="utf-8", exclude_characters="\0"), max_size=8)
ENTRIES = st.lists(st.tuples(NUMBERS, TEXTS), min_size=1, max_size=4)


class GivingUpError(Exception):
    """Raised in a block, so that nothing of it may be written."""


class Course(RuleBasedStateMachine):
    """A journal, and beside it a list that does what a journal should."""

    def __init__(self, address: Address) -> None:
        super().__init__()
        self.address = address
        self.lines: list[Link] = []
        self.kept: Checkpoint | None = None

    @rule(entries=ENTRIES)
    def append_a_block(self, entries: list[tuple[int, str]]) -> None:
        expected, is_refused = self.after(entries)
        if is_refused:
            with pytest.raises(OtherTextError):
                self.append(entries)
        else:
            self.append(entries)
            self.lines = expected

    @rule(entries=ENTRIES)
    def fail_inside_a_block(self, entries: list[tuple[int, str]]) -> None:
        with pytest.raises((GivingUpError, OtherTextError)):
            self.append(entries, giving_up=True)

    @rule(number=NUMBERS)
    def send_a_line_again(self, number: int) -> None:
        for line in self.lines[:number][-1:]:
            with opened(self.address, writing=True) as journal:
                assert journal.append(id=line.id, text=line.text) == line

    @rule(number=st.integers(0, 12), text=TEXTS)
    def keep_a_checkpoint(self, number: int, text: str) -> None:
        head = head_of(self.lines[:number])
        self.kept = Checkpoint(head=head, text=text)
        with opened(self.address, writing=True) as journal:
            journal.keep(self.kept)

    @rule(number=NUMBERS, most=st.integers(1, 3))
    def look_for_ids(self, number: int, most: int) -> None:
        with opened(self.address, writing=False) as journal:
            here = [line for line in self.lines if line.id == identity(number)]
            assert journal.link(identity(number)) == (here[0] if here else None)
            ids = sorted(line.id for line in self.lines)
            assert journal.ids_beginning("0", most) == tuple(ids[:most])

    @rule(after=st.integers(0, 12))
    def read_from(self, after: int) -> None:
        with opened(self.address, writing=False) as journal:
            assert list(journal.links(after=after)) == self.lines[after:]

    @invariant()
    def it_is_as_the_list_says(self) -> None:
        with opened(self.address, writing=False) as journal:
            assert journal.head() == head_of(self.lines)
            assert list(journal.links()) == self.lines
            assert first_altered(journal.links(), end=journal.head()) is None
            assert journal.checkpoint() == self.kept

    def append(self, entries: list[tuple[int, str]], *, giving_up: bool = False) -> None:
        with opened(self.address, writing=True) as journal:
            for number, text in entries:
                journal.append(id=identity(number), text=text)
            if giving_up:
                raise GivingUpError

    def after(self, entries: list[tuple[int, str]]) -> tuple[list[Link], bool]:
        """The list after these entries, and whether one of them is refused."""
        lines = list(self.lines)
        for number, text in entries:
            known = [line.text for line in lines if line.id == identity(number)]
            if known and known != [text]:
                return lines, True
            if not known:
                lines.append(linked(head_of(lines), id=identity(number), text=text))
        return lines, False


def head_of(lines: list[Link]) -> Head:
    return Head(number=lines[-1].number, digest=lines[-1].digest) if lines else START


SETTINGS = settings(max_examples=12, stateful_step_count=12)


@pytest.mark.unmeasured
@pytest.mark.slow
def test_any_course_in_a_file() -> None:
    with tempfile.TemporaryDirectory() as folder:
        numbers = count(1)

        class InAFile(Course):
            def __init__(self) -> None:
                super().__init__(JournalFile(path=Path(folder) / f"{next(numbers)}.sqlite"))

        run_state_machine_as_test(InAFile, settings=SETTINGS)


@pytest.mark.unmeasured
@pytest.mark.slow
def test_any_course_on_a_server(cluster: str) -> None:
    numbers = count(1)

    class OnAServer(Course):
        def __init__(self) -> None:
            super().__init__(ServerJournal(url=cluster, collection=f"course {next(numbers)}"))

    run_state_machine_as_test(OnAServer, settings=SETTINGS)
