"""Findings."""

from paradestate.core.finding import Finding, Level, in_reading_order, stops
from paradestate.core.place import Place


def finding(level: Level, *, line: int) -> Finding:
    place = Place(file="force.yaml", line=line, column=1)
    return Finding(level=level, code="c", message="m", effect="e", hint="h", place=place)


def test_findings_are_sorted_by_place_and_each_is_there_once() -> None:
    late, early = finding(Level.STOP, line=9), finding(Level.REMARK, line=2)
    assert in_reading_order([late, early, late]) == (early, late)


def test_only_stops_prevent_an_answer() -> None:
    stop, warn = finding(Level.STOP, line=1), finding(Level.WARN, line=1)
    assert stops([warn, stop]) == (stop,)
