"""Reading a force folder with every doubt about it.

folder -> read -> reviewed -> in reading order
"""

import datetime
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field, replace
from pathlib import Path

from paradestate.core.finding import Finding, in_reading_order, stops
from paradestate.core.force import Force
from paradestate.core.review.every_rule import EVERY_RULE
from paradestate.core.review.price_age import old_prices
from paradestate.journeys.memory import NOTHING, Memory
from paradestate.text.codec import Schema
from paradestate.text.collecting import no_cycles_sought
from paradestate.text.folder import read_folder, traces
from paradestate.text.format.force import force_schema


@dataclass(frozen=True, slots=True, kw_only=True)
class Checked:
    """A force as far as it could be read, and everything found in it."""

    force: Force
    findings: tuple[Finding, ...]
    texts: Mapping[str, str]
    """File to its text, for showing the line of a finding."""
    names: Mapping[str, tuple[str, ...]] = field(default_factory=dict)
    """Kind of name to the names of that kind that the files define."""

    @property
    def is_stopped(self) -> bool:
        """Whether a finding prevents any sum."""
        return bool(stops(self.findings))

    def with_findings(self, *more: Finding) -> "Checked":
        """The same with more findings, all in reading order."""
        return replace(self, findings=in_reading_order((*self.findings, *more)))


def checked(
    folder: Path,
    *,
    today: datetime.date,
    instead: Mapping[str, bytes] | None = None,
    memory: Memory = NOTHING,
) -> Checked:
    """The force of a folder and all findings. Raises FileError where it can't be read.

    With `instead` as if these files of it held that. With a memory files that haven't changed
    aren't read again.
    """
    if instead is None and memory is not NOTHING:
        key = ("checked", folder, today, traces(folder))
        return memory.kept(key, lambda: _read(folder, today=today, instead=None))
    return _read(folder, today=today, instead=instead)


def _read(folder: Path, *, today: datetime.date, instead: Mapping[str, bytes] | None) -> Checked:
    with no_cycles_sought():
        reading = read_folder(folder, instead=instead)
        doubts = _reviewed(reading.force, today=today) if reading.whole else ()
        findings = in_reading_order((*reading.findings, *doubts))
    return Checked(force=reading.force, findings=findings, texts=reading.texts, names=reading.names)


def _reviewed(force: Force, *, today: datetime.date) -> Iterator[Finding]:
    for rule in EVERY_RULE:
        yield from rule(force)
    yield from old_prices(force, today=today)


def schema() -> Schema:
    """The JSON Schema of the files of a force folder."""
    return force_schema()
