"""Who sends a form of an evening, and under which ids it writes.

The ids come of the form's own id and of what was filled in: the same form sent again writes the
same, which is there already; one that was gone back to and changed is another one.
"""

import json
from datetime import datetime
from itertools import islice, takewhile
from uuid import UUID, uuid4, uuid5

from paradestate.core.play.game_record import GameRecord, Line
from paradestate.journeys.game.pen import Pen, sent_again
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
    """Who writes with a form, in the game that it is about. Raises StoreError, and FileError."""
    # The table page on the same phone counts its own events.
    device = visit.request.scope.get(DEVICE, "")
    pen = Pen(
        folder=visit.folder,
        today=visit.today,
        now=visit.now,
        new_id=lambda: str(uuid4()),
        device=f"{device}, on the page" if device else "",
        of=visit.form.text(OF),
        memory=visit.memory,
    )
    return sent_again(pen, first_id(visit))


def lines_from(record: GameRecord, id_: str, *, most: int = 3) -> tuple[Line, ...]:
    """What a form has written: its first line, and what it wrote in the same moment.

    None where there is no such line.
    """
    ids = [each.id for each in record.lines]
    if id_ not in ids:
        return ()
    first, *after = record.lines[ids.index(id_) :]
    own = takewhile(lambda line: _writing(line) == _writing(first), after)
    return (first, *islice(own, most - 1))


def _writing(line: Line) -> tuple[datetime, str]:
    return line.written, line.device
