"""What is noted of a game, while it goes on and after it.

the game so far -> what is said -> checked -> an entry of the journal -> the game as it is now
"""

from dataclasses import replace

from paradestate.core.choice import unknown_choice
from paradestate.core.finding import Finding, stops
from paradestate.core.log_finding import incomplete, not_text, unwritten
from paradestate.core.log_slip import is_text
from paradestate.core.play.arrangement import names_to_tell
from paradestate.core.play.event import Noted
from paradestate.journeys.game.pen import Pen
from paradestate.journeys.game.play import Wrote, game_of_pen, nothing_open, written
from paradestate.journeys.game.played_game import PlayedGame


def note(pen: Pen, text: str, *, about: str = "") -> Wrote:
    """Writes down what somebody wants to remember of a game, whether it is over or not.

    `about` is the stand, body or entry that it concerns. Raises StoreError, and FileError.
    """
    game = game_of_pen(pen)
    if game.record is None:
        return nothing_open(pen, game)
    event = Noted(text=text.strip(), about=about.strip())
    findings = _note_findings(event, game)
    if stops(findings):
        return Wrote(findings=findings, game=game)
    return written(replace(pen, of=game.record.id), game.record, events=(event,))


def _note_findings(event: Noted, game: PlayedGame) -> tuple[Finding, ...]:
    """Why it can't be noted; where the folder has that game no more any name is taken."""
    if not event.text:
        return (incomplete("A note needs its text.", hint='Say it: note "the road was too wide".'),)
    if not (is_text(event.text) and is_text(event.about)):
        return (not_text(),)
    if not event.about or game.fielded is None:
        return ()
    names = tuple(names_to_tell(game.fielded))
    if event.about in names:
        return ()
    return (unwritten(unknown_choice(event.about, names, what="stand, body or entry")),)
