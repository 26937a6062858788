"""What a phone has to know of a force at the table, so that it needs nobody there.

folder -> marks -> each company, its platoons and their stands; supporting troops; owner's words
"""

import datetime
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from paradestate.core.choice import Choice, chosen
from paradestate.core.establishment import Establishment, establishment
from paradestate.core.force import Force
from paradestate.core.mark.code import Mark
from paradestate.core.mark.mark_finding import Marked
from paradestate.core.mark.marking import MarkedStand
from paradestate.core.mark.unit import Unit
from paradestate.core.play.loss_count import LimitedBody, TroopMembers, limited_bodies
from paradestate.core.sentence.loss_limit import body_words, unit_of_losses
from paradestate.core.sentence.mark import mark_words, unit_words
from paradestate.core.support.entry import Position
from paradestate.core.unfolding import name_within, spoken
from paradestate.journeys.check import Checked
from paradestate.journeys.marks import AskedMarks, marks
from paradestate.journeys.memory import NOTHING, Memory
from paradestate.sheet.mark_plate import plate_drawing


@dataclass(frozen=True, slots=True, kw_only=True)
class TableAnswer:
    """The force as a record of JSON, or None with the stops that prevent it."""

    checked: Checked
    force: Mapping[str, Any] | None = None


def table_force(folder: Path, *, today: datetime.date, memory: Memory = NOTHING) -> TableAnswer:
    """The force as it is to stand on the table. Raises FileError."""
    answer = marks(folder, today=today, choice=Choice(), asked=AskedMarks(), memory=memory)
    if answer.marked is None or answer.count is None:
        return TableAnswer(checked=answer.checked)
    record = force_record(answer.marked, answer.count.made)
    return TableAnswer(checked=answer.checked, force=record)


def force_record(marked: Marked, made: Establishment) -> dict[str, Any]:
    """What is said of the force, by its words."""
    force = marked.force
    return {
        "title": force.title,
        "games": list(force.games),
        "states": list(force.states),
        "limits": [_limit(each, whole=marked.whole) for each in limited_bodies(force, made)],
        "limits of games": _limits_of_games(force),
        "companies": list(_companies(marked)),
        "troops": [
            {
                "name": name,
                "missions": entry.missions is not None or entry.place is not Position.ON_TABLE,
                "each": dict(entry.each),
                "grants": dict(entry.grants),
            }
            for name, entry in force.supporting_troops.items()
        ],
    }


def _limits_of_games(force: Force) -> dict[str, Any]:
    """The same for each game that is played with other numbers than the force is raised with."""
    found = {}
    for game in force.games.values():
        if game.numbers and force.loss_limits:
            other, _ = chosen(force, Choice(game=game.name))
            made, _ = establishment(other)
            if made is not None:
                bodies = limited_bodies(other, made)
                found[game.name] = [_limit(each, whole=made.formation) for each in bodies]
    return found


def _limit(body: LimitedBody, *, whole: str) -> dict[str, Any]:
    """A limit to the losses of one body, with the unit or company beside which it is shown."""
    return {
        "name": body_words(body),
        "unit": None if body.unit is None else body.unit.name or whole,
        "company": None if body.company is None else spoken(body.company),
        "word": unit_of_losses(body.limit),
        "aspect": body.aspect,
        "members": [[each.name, each.counts] for each in body.members],
        "at": [
            [*each.amount.as_integer_ratio(), each.is_share, each.is_more, effect]
            for each, effect in body.limit.at.items()
        ],
        "troops": [[troop.entry.name, list(_brought(troop))] for troop in body.troops],
    }


def _brought(troop: TroopMembers) -> Iterator[tuple[str, int, int, int]]:
    """Pattern, how many each one taken brings, how many each purchase, and what one counts."""
    entry = troop.entry
    for pattern, counts in troop.counts.items():
        yield pattern, entry.each.get(pattern, 0), entry.grants.get(pattern, 0), counts


def _companies(marked: Marked) -> Iterator[dict[str, Any]]:
    """Each company with its units, those of no company last."""
    of_unit: dict[Unit, list[MarkedStand]] = {}
    for each in marked.marks.stands:
        if each.stand.is_wanted:
            of_unit.setdefault(each.unit, []).append(each)
    by_company: dict[int | None, list[Unit]] = {}
    for unit in of_unit:
        by_company.setdefault(unit.company, []).append(unit)
    for company in sorted(by_company, key=lambda each: (each is None, each or 0)):
        units = sorted(by_company[company], key=lambda unit: unit.bars)
        name = "" if company is None else marked.marks.companies[company].name
        yield {
            "name": spoken(name) or marked.whole,
            "units": [
                _unit(unit, of_unit[unit], company=name, whole=marked.whole) for unit in units
            ],
        }


def _unit(unit: Unit, stands: list[MarkedStand], *, company: str, whole: str) -> dict[str, Any]:
    mark = stands[0].mark
    return {
        "name": unit.name or whole,
        "words": unit_words(unit, whole=whole),
        "within": _below(unit.name, company) or "own troops",
        "mark": None if mark is None else _mark(mark),
        "stands": [
            {"name": each.stand.name, "words": _below(each.stand.name, unit.name)}
            for each in stands
        ],
    }


def _mark(mark: Mark) -> dict[str, Any]:
    return {
        "colour": mark.colour,
        "bars": mark.bars,
        "sign": "" if mark.sign is None else mark.sign.value,
        "words": mark_words(mark),
        "plate": plate_drawing(mark, is_hidden=True).svg,
    }


def _below(name: str, above: str) -> str:
    """A name within what holds it; empty where it is the same."""
    return "" if name == above else spoken(name_within(name, above))
