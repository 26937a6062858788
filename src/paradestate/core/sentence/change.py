"""What changes between two establishments, in words: a row each, the weightiest first."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from paradestate.core.change import Change
from paradestate.core.number import NumberRange
from paradestate.core.sentence.wording import capital, listed, plural

SINGLE = {
    "foot figures": "Foot figures",
    "men": "Men",
    "labels": "Stands and labels",
    "markers": "Printed markers",
    "formation cost": "Formation cost, points",
}
"""Sums of the whole force, in the order in which they are told."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Row:
    """One line of an amendment."""

    what: str
    before: str
    after: str


def leading_rows(changes: Sequence[Change]) -> tuple[Row, ...]:
    """The sums of the whole force and the limits, those that change alike in one line."""
    singles = [
        _row(title, change)
        for what, title in SINGLE.items()
        for change in changes
        if change.what == what
    ]
    limits: dict[tuple[str, str], list[str]] = {}
    for change in changes:
        if change.what == "limit":
            limits.setdefault((_told(change.before), _told(change.after)), []).append(change.name)
    reserves = [
        _row(f"{capital(plural(change.name))} in reserve at most", change)
        for change in changes
        if change.what == "most in reserve"
    ]
    allowed = [
        Row(what=f"Times allowed: {listed(names)}", before=before, after=after)
        for (before, after), names in limits.items()
    ]
    return (*singles, *allowed, *reserves)


def following_rows(changes: Iterable[Change]) -> tuple[Row, ...]:
    """The rest: bodies, stands and figures by name."""
    return tuple(_row(_title(change), change) for change in changes if change.what in _LAYERS)


_LAYERS = {
    "formations": "",
    "stands": "",
    "printed": "printed",
    "figures": "figures",
    "wished stands": "wished",
    "wished figures": "wished figures",
}


def _title(change: Change) -> str:
    layer = _LAYERS[change.what]
    name = capital(plural(change.name))
    return f"{name}, {layer}" if layer else name


def _row(what: str, change: Change) -> Row:
    return Row(what=what, before=_told(change.before), after=_told(change.after))


def _told(number: NumberRange | int | None) -> str:
    """A number as it is; `any` where there is no limit, `none` for nought."""
    if number is None:
        return "any"
    return "none" if number == 0 else str(number)
