"""Who sends a form of an evening, under which ids it writes, and whether it was sent before.

The ids come of the form's own id and of what was filled in: the same form sent again writes the
same, which is there already; one that was gone back to and changed is another one.
"""

import json
from collections.abc import Iterator
from uuid import UUID, uuid5

from paradestate.core.play.game_record import GameRecord, Line
from paradestate.journeys.games import games_of
from paradestate.journeys.pen import Pen
from paradestate.web.form import Form
from paradestate.web.log_form import ENTRY, head_said
from paradestate.web.phone.gate import DEVICE
from paradestate.web.visit import Visit

OF = "of"
"""The field with the id of the game that a form is about."""


def first_id(visit: Visit) -> str:
    """The id of the first entry that a form writes. Raises HTTPException where it has none."""
    return str(uuid5(UUID(head_said(visit).id), _filled_in(visit.form)))


def _filled_in(form: Form) -> str:
    """What was filled in, as one text, and a different one for everything different."""
    return json.dumps(sorted((name, text) for name, text in form.texts.items() if name != ENTRY))


def pen_of(visit: Visit) -> Pen:
    """Who writes with a form, in the game that it is about."""
    ids = _ids(first_id(visit))
    # The table page on the same phone counts its own events.
    device = visit.request.scope.get(DEVICE, "")
    return Pen(
        folder=visit.folder,
        today=visit.today,
        now=visit.now,
        new_id=lambda: next(ids),
        device=f"{device}, on the page" if device else "",
        of=visit.form.text(OF),
        memory=visit.memory,
    )


def _ids(first: str) -> Iterator[str]:
    """One id after the other, always the same ones for the same form."""
    yield first
    number = 0
    while True:
        number += 1
        yield str(uuid5(UUID(first), f"{number}"))


def written_before(visit: Visit) -> bool:
    """Whether this very form has written already. Raises StoreError, and FileError."""
    id_ = first_id(visit)
    past = games_of(visit.folder, today=visit.today, memory=visit.memory).past
    return any(
        each.id == id_ or (each.played is not None and each.played.game == id_)
        for each in past.entries
    )


def lines_from(record: GameRecord, id_: str, *, most: int = 3) -> tuple[Line, ...]:
    """What a form has written: its first line and what follows it; none where there is no such."""
    if id_ == record.id:
        return (record.opening,)
    ids = [each.id for each in record.lines]
    if id_ not in ids:
        return ()
    return record.lines[ids.index(id_) :][:most]
