"""An entry of the journal as text and back: JSON (RFC 8259), keys in order, nothing empty.

The same entry has the same text everywhere, since the digest is over it.
"""

import datetime
import json
import re
from collections.abc import Mapping
from fractions import Fraction
from typing import Any

from paradestate.core.holdings import Holdings, Staged, piles
from paradestate.core.journal import JournalState, Promise
from paradestate.core.journal_entry import EntryKind, JournalEntry
from paradestate.core.on_order import OnOrder
from paradestate.core.play.event_text import played_of, played_record
from paradestate.core.repair import Repair
from paradestate.core.work.kept_forecast import KeptForecast


class UnknownEntryError(Exception):
    """The text of an entry says something that this version doesn't understand."""


def entry_text(entry: JournalEntry) -> str:
    """The text of an entry, without its id."""
    return as_text(entry_record(entry))


def entry_record(entry: JournalEntry) -> dict[str, Any]:
    """What an entry says, by its words; what is empty is left out."""
    said: dict[str, Any] = {
        "kind": entry.kind.value,
        # not by strftime, which writes the year 900 with three digits
        "written": f"{entry.written.replace(tzinfo=None).isoformat(timespec='seconds')}Z",
        "on": entry.on.isoformat(),
        "force": entry.force,
        "leaves": holdings_record(entry.leaves),
        "comes": holdings_record(entry.comes),
        "stand": entry.stand,
        "together": list(entry.stands),
        "minutes": entry.minutes,
        "promised": dict(entry.promised),
        "source": entry.source,
        "packs": dict(entry.packs),
        "ordered": dict(entry.ordered),
        "cancelled": dict(entry.cancelled),
        "expected": "" if entry.expected is None else entry.expected.isoformat(),
        "wanted": "" if entry.wanted is None else entry.wanted.isoformat(),
        "forecasts": [forecast_record(each) for each in entry.forecasts],
        "played": None if entry.played is None else played_record(entry.played),
        "note": entry.note,
        "struck out": entry.struck_out,
    }
    return {word: value for word, value in said.items() if value}


def as_text(record: Mapping[str, Any]) -> str:
    """A record as one line of JSON, its keys in order."""
    return json.dumps(record, ensure_ascii=False, sort_keys=True, separators=(",", ":"))


def holdings_record(holdings: Holdings) -> dict[str, Staged]:
    """Holdings as they are written; what is empty is left out."""
    both = {"figures": holdings.figures, "stands": holdings.stands}
    return {word: staged for word, staged in both.items() if staged}


def holdings_of(record: Mapping[str, Staged]) -> Holdings:
    """Holdings as they were written. Raises as `read_entry`."""
    _refuse_others(record, types=PILES)
    for staged in record.values():
        for stages in staged.values():
            _refuse_all_but_numbers(stages)
    return Holdings(figures=record.get("figures", {}), stands=record.get("stands", {}))


def read_entry(text: str, *, id: str) -> JournalEntry:  # noqa: A002 - that is what it is
    """The entry of a text. Raises UnknownEntryError where a later version wrote it."""
    try:
        said = json.loads(text)
        _refuse_others(said, types=WORDS)
        for word in ("promised", "packs", "ordered", "cancelled"):
            _refuse_all_but_numbers(said.get(word, {}))
        return JournalEntry(
            id=id,
            kind=EntryKind(said["kind"]),
            written=datetime.datetime.fromisoformat(said["written"]),
            on=_day(said["on"]),
            force=said.get("force", ""),
            leaves=holdings_of(said.get("leaves", {})),
            comes=holdings_of(said.get("comes", {})),
            stand=said.get("stand", ""),
            stands=_names(said),
            minutes=said.get("minutes", 0),
            promised=said.get("promised", {}),
            source=said.get("source", ""),
            packs=said.get("packs", {}),
            ordered=said.get("ordered", {}),
            cancelled=said.get("cancelled", {}),
            expected=_day_if_any(said.get("expected")),
            wanted=_day_if_any(said.get("wanted")),
            forecasts=tuple(_forecast(each) for each in said.get("forecasts", ())),
            played=played_of(said["played"]) if "played" in said else None,
            note=said.get("note", ""),
            struck_out=said.get("struck out", ""),
        )
    except (ValueError, KeyError, TypeError, AttributeError, RecursionError) as error:
        raise UnknownEntryError(f"{error}") from error


def forecast_record(forecast: KeptForecast) -> dict[str, str]:
    """What was forecast of a milestone, as it is written; dates that weren't given are left out."""
    dates = {
        "half chance": forecast.half_chance,
        "four in five": forecast.four_in_five,
        "nineteen in twenty": forecast.nineteen_in_twenty,
    }
    return {
        "milestone": forecast.milestone,
        "minutes": str(forecast.minutes),
        **{word: day.isoformat() for word, day in dates.items() if day is not None},
    }


def _forecast(record: Mapping[str, str]) -> KeptForecast:
    _refuse_others(record, types=FORECAST)
    return KeptForecast(
        milestone=record["milestone"],
        minutes=_minutes(record["minutes"]),
        half_chance=_day_if_any(record.get("half chance")),
        four_in_five=_day_if_any(record.get("four in five")),
        nineteen_in_twenty=_day_if_any(record.get("nineteen in twenty")),
    )


def _minutes(text: str) -> Fraction:
    if _MINUTES.fullmatch(text) is None:
        raise UnknownEntryError(f"{text!r} are no minutes")
    return Fraction(text)


def _day_if_any(text: str | None) -> datetime.date | None:
    return None if text is None else _day(text)


_MINUTES = re.compile(r"\d{1,100}(/[1-9]\d{0,100})?", re.ASCII)
FORECAST: Mapping[str, type] = dict.fromkeys(
    ("milestone", "minutes", "half chance", "four in five", "nineteen in twenty"), str
)
PILES: Mapping[str, type] = {"figures": dict, "stands": dict}
WORDS: Mapping[str, type] = {
    "kind": str,
    "written": str,
    "on": str,
    "force": str,
    "leaves": dict,
    "comes": dict,
    "stand": str,
    "together": list,
    "minutes": int,
    "promised": dict,
    "source": str,
    "packs": dict,
    "ordered": dict,
    "cancelled": dict,
    "expected": str,
    "wanted": str,
    "forecasts": list,
    "played": dict,
    "note": str,
    "struck out": str,
}


def _names(said: Mapping[str, Any]) -> tuple[str, ...]:
    """The stands that an entry brought on alike: what it did can be shared out among them."""
    names = tuple(said.get("together", ()))
    parts = [holdings_of(said.get(word, {})) for word in ("leaves", "comes")]
    numbers = [pile.number for each in parts for pile in piles(each)]
    if any(type(name) is not str for name in names) or (
        names and any(number % len(names) for number in numbers)
    ):
        raise UnknownEntryError(f"{names!r} have no equal parts of what it did")
    return names


def _refuse_others(record: Mapping[str, object], *, types: Mapping[str, type]) -> None:
    """Lets only these words pass, each with a value of its type."""
    for word, value in record.items():
        if type(value) is not types.get(word):
            raise UnknownEntryError(f"unknown word '{word}', or an odd value of it: {value!r}")


def _refuse_all_but_numbers(numbers: Mapping[str, object]) -> None:
    for value in numbers.values():
        if type(value) is not int or value < 0:
            raise UnknownEntryError(f"{value!r} is no number of figures")


def state_text(state: JournalState, *, start: Holdings) -> str:
    """A state without shortfalls as text, with the holdings at the start that it rests on."""
    return as_text(
        {
            "start": holdings_record(start),
            "held": holdings_record(state.held),
            "lent": holdings_record(state.lent),
            "minutes": {day.isoformat(): minutes for day, minutes in state.minutes.items()},
            "promises": [promise_record(promise) for promise in state.promises],
            "on order": [on_order_record(order) for order in state.on_order],
            "worked": [
                {"force": force, "stand": stand, "holds": holdings_record(holds)}
                for (force, stand), holds in state.worked.items()
            ],
            "repairs": [repair_record(repair) for repair in state.repairs],
            "last day": state.last_day.isoformat(),
        }
    )


def promise_record(promise: Promise) -> dict[str, Any]:
    """A promise as it is written."""
    return {
        "day": promise.day.isoformat(),
        "force": promise.force,
        "figures": dict(promise.figures),
        "note": promise.note,
    }


def on_order_record(order: OnOrder) -> dict[str, Any]:
    """What is on order, as it is written; a day that nobody says is left out."""
    expected = {} if order.expected is None else {"expected": order.expected.isoformat()}
    return {
        "entry": order.entry,
        "source": order.source,
        "day": order.day.isoformat(),
        "figures": dict(order.figures),
        **expected,
    }


def repair_record(repair: Repair) -> dict[str, Any]:
    """A stand in repair as it is written."""
    return {
        "entry": repair.entry,
        "force": repair.force,
        "stand": repair.stand,
        "day": repair.day.isoformat(),
        "wanted": repair.wanted.isoformat(),
        "left": repair.left,
        "note": repair.note,
    }


def read_state(text: str, *, start: Holdings) -> JournalState | None:
    """The state of a text; None where it rests on another start, or isn't understood."""
    try:
        said = json.loads(text)
        return _state(said) if holdings_of(said["start"]) == start else None
    except (ValueError, KeyError, TypeError, AttributeError, UnknownEntryError):
        return None


def _state(said: Mapping[str, Any]) -> JournalState:
    return JournalState(
        held=holdings_of(said["held"]),
        lent=holdings_of(said["lent"]),
        minutes={_day(day): minutes for day, minutes in said["minutes"].items()},
        promises=tuple(
            Promise(
                day=_day(promise["day"]),
                force=promise["force"],
                figures=promise["figures"],
                note=promise["note"],
            )
            for promise in said["promises"]
        ),
        on_order=tuple(
            OnOrder(
                entry=each["entry"],
                source=each["source"],
                day=_day(each["day"]),
                expected=_day_if_any(each.get("expected")),
                figures=each["figures"],
            )
            for each in said.get("on order", ())
        ),
        worked={
            (each["force"], each["stand"]): holdings_of(each["holds"]) for each in said["worked"]
        },
        repairs=tuple(
            Repair(
                entry=each["entry"],
                force=each["force"],
                stand=each["stand"],
                day=_day(each["day"]),
                wanted=_day(each["wanted"]),
                left=each["left"],
                note=each["note"],
            )
            for each in said.get("repairs", ())
        ),
        last_day=_day(said["last day"]),
    )


def _day(text: str) -> datetime.date:
    return datetime.date.fromisoformat(text)
