"""What a game left to be repaired, as a form, and what of it went to the bench."""

import datetime
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from paradestate.core.campaign.loss_finding import none_ticked
from paradestate.core.finding import Finding
from paradestate.core.journal_entry import JournalEntry
from paradestate.core.log_finding import unwritten
from paradestate.core.sentence.wording import capital, day_words
from paradestate.core.unfolding import spoken
from paradestate.journeys.choosing import day_of
from paradestate.journeys.game.losses import AfterGame
from paradestate.journeys.game.repairs import RepairsAsked, RepairsOffered
from paradestate.web.form import Form


@dataclass(frozen=True, slots=True, kw_only=True)
class WaitingRow:
    """A stand that is to be repaired and isn't on the bench."""

    name: str
    label: str
    what: str
    is_stand: bool
    """Whether the bench knows it: supporting troops and whole bodies aren't on it so."""
    is_ticked: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class WentRow:
    """A line by which stands went to the bench."""

    id: str
    names: str
    words: str


@dataclass(frozen=True, slots=True, kw_only=True)
class RepairView:
    """The slip of repairs."""

    waiting: tuple[WaitingRow, ...]
    went: tuple[WentRow, ...]
    wanted: str
    """The day that stands in its field; empty where nothing says one."""
    stages: tuple[str, ...]
    stage: str
    """The one that is chosen."""
    note: str


def repair_view(
    after: AfterGame, offered: RepairsOffered, *, typed: Form | None
) -> RepairView | None:
    """The slip of a game, with what was typed into a form that was refused; None where none is."""
    if not after.to_repair and not after.went_back:
        return None
    said: Mapping[str, str] = {} if typed is None else typed.texts
    ticked = after.to_repair if typed is None else typed.every.get("stand", ())
    night = "" if offered.wanted is None else offered.wanted.isoformat()
    return RepairView(
        waiting=tuple(
            WaitingRow(
                name=name,
                label=spoken(name),
                what=what,
                is_stand=name in after.stands,
                is_ticked=name in ticked,
            )
            for name, what in after.to_repair.items()
        ),
        went=tuple(_went(after.went_back)),
        wanted=said.get("wanted", night),
        stages=tuple(offered.stages),
        stage=said.get("to", next(reversed(offered.stages), "")),
        note=said.get("note", ""),
    )


def _went(went_back: Mapping[str, JournalEntry]) -> Iterator[WentRow]:
    """Each line once, with all stands of it that the game left to be repaired."""
    for entry in {each.id: each for each in went_back.values()}.values():
        names = [name for name, each in went_back.items() if each.id == entry.id]
        yield WentRow(
            id=entry.id,
            names="; ".join(map(spoken, names)),
            words=_words(entry.wanted, note=entry.note),
        )


def _words(wanted: datetime.date | None, *, note: str) -> str:
    assert wanted is not None  # noqa: S101 - without a day nothing goes back to be repaired
    day = f"wanted on {day_words(wanted)}"
    return f"{capital(day)}: {note}" if note else capital(day)


def repairs_typed(form: Form) -> tuple[RepairsAsked, Sequence[Finding]]:
    """What a form asks, and why it can't be read."""
    names = form.every.get("stand", ())
    day, slips = day_of(form.text("wanted"))
    asked = RepairsAsked(
        names=tuple(names), wanted=day, to_stage=form.text("to"), note=form.text("note")
    )
    return asked, (*map(unwritten, slips), *(() if names else (none_ticked(),)))
