"""Dice rolled by the machine, step by step, so that nobody could steer them.

bound to a secret -> the opponent's word -> rolled of both -> the secret told

Each step is safe on disk before the next; one that was cut short is gone on with.
"""

from dataclasses import replace
from uuid import uuid4

from paradestate.core.dice import Dice
from paradestate.core.finding import Finding
from paradestate.core.play.event import Committed, Event, Revealed, Rolled, Spoken
from paradestate.core.play.faces import total_of
from paradestate.core.play.game_record import Binding, GameRecord
from paradestate.core.play.machine_roll import (
    digest_of_secret,
    faces_of,
    is_word,
    thrown,
    whole_word,
)
from paradestate.core.play.play_finding import (
    bound_already,
    nothing_bound,
    other_word,
    secret_differs,
    secret_missing,
    word_unfit,
)
from paradestate.journeys.game.pen import Pen
from paradestate.journeys.game.play import Wrote, game_of_pen, nothing_open, written
from paradestate.journeys.game.played_game import NO_DICE, PlayedGame, dice_of_text
from paradestate.journeys.game.roll_for import RollFor, roll_for
from paradestate.journeys.game.roll_secret import forget_secret, keep_secret, kept_secret


def bind(pen: Pen, what: str, *, secret: bytes, dice: str = "") -> Wrote:
    """Binds the machine to a secret for one roll, and publishes its digest.

    Raises StoreError, and FileError.
    """
    game = game_of_pen(pen)
    if game.open_game is None:
        return nothing_open(pen, game)
    asked = roll_for(game, what, dice=dice)
    if not isinstance(asked, RollFor):
        return Wrote(findings=(asked,), game=game)
    waiting = _waiting(game)
    if waiting is not None:
        return Wrote(findings=(bound_already(waiting),), game=game)
    id_ = pen.new_id()
    committed = Committed(
        digest=_bound_before(pen) or digest_of_secret(_kept(pen, id_, secret=secret)),
        purpose=asked.purpose,
        dice=str(asked.dice),
        number=asked.number,
        choice=asked.choice,
    )
    return written(pen, game.open_game, events=(committed,), first_id=id_)


def _bound_before(pen: Pen) -> str:
    """The digest that a line published which is sent again; its secret is never exchanged."""
    event = _event_before(pen)
    return event.digest if isinstance(event, Committed) else ""


def _event_before(pen: Pen) -> Event | None:
    """What was written by a line that is sent again."""
    if not pen.entry:
        return None
    there = pen.there(pen.entry)
    return None if there is None or there.played is None else there.played.event


def _kept(pen: Pen, id_: str, *, secret: bytes) -> bytes:
    """The secret, kept before its digest is published, so that no crash loses it.

    One that was kept already, by a line that was cut short, stays.
    """
    there = kept_secret(id_) if pen.entry else None
    if there is None:
        keep_secret(id_, secret)
    return there or secret


def speak(pen: Pen, word: str = "", *, keeps_secret: bool = False) -> Wrote:
    """Takes the opponent's word, and rolls; the secret is told at once unless it is kept.

    Without a word the one that was said before is gone on with. Raises StoreError, and FileError.
    """
    before = _event_before(pen)
    if isinstance(before, Spoken) and whole_word(word) in {"", before.word}:
        return _gone_on(pen, before.commitment, keeps_secret=keeps_secret)
    game = game_of_pen(pen)
    if game.open_game is None:
        return nothing_open(pen, game)
    waiting = _waiting(game)
    if waiting is None:
        stop = nothing_bound('Bind it first: play FOLDER bind "light tanks=2".')
        return Wrote(findings=(stop,), game=game)
    said = waiting.word
    if said is not None and word and whole_word(word) != said:
        return Wrote(findings=(other_word(said),), game=game)
    if said is None and not is_word(word):
        return Wrote(findings=(word_unfit(word),), game=game)
    secret = _secret_of(waiting)
    if isinstance(secret, Finding):
        return Wrote(findings=(secret,), game=game)
    events: list[Event] = [] if said is not None else [_spoken(waiting, word)]
    events.append(_rolled(waiting, word=said or whole_word(word), secret=secret))
    return _tell(
        pen,
        game.open_game,
        events=events if keeps_secret else [*events, _revealed(waiting, secret)],
        told=() if keeps_secret else (waiting.line.id,),
    )


def reveal(pen: Pen) -> Wrote:
    """Tells the secrets of all rolls that were made. Raises StoreError, and FileError."""
    is_again = isinstance(_event_before(pen), Revealed)
    rest = _after_first(pen) if is_again else pen
    game = game_of_pen(rest)
    if game.record is None:
        return nothing_open(pen, game)
    rolled = [each for each in game.bindings if each.is_to_be_told]
    if not rolled and is_again:
        return _there(pen, game)
    if not rolled:
        return Wrote(findings=(nothing_bound("Every secret of a roll is told."),), game=game)
    events: list[Event] = []
    for each in rolled:
        secret = _secret_of(each)
        if isinstance(secret, Finding):
            return Wrote(findings=(secret,), game=game)
        events.append(_revealed(each, secret))
    told = tuple(each.line.id for each in rolled)
    return _tell(rest, game.record, events=events, told=told)


def _gone_on(pen: Pen, commitment: str, *, keeps_secret: bool) -> Wrote:
    """What is left of a word that is sent again: its roll, its secret, or nothing."""
    rest = _after_first(pen)
    game = game_of_pen(rest)
    binding = next(each for each in game.bindings if each.line.id == commitment)
    if binding.is_to_be_rolled:
        return speak(rest, keeps_secret=keeps_secret)
    if binding.is_to_be_told and not keeps_secret:
        return reveal(rest)
    return _there(pen, game)


def _after_first(pen: Pen) -> Pen:
    """The pen for what follows a line that is there already; each step looks what is lacking."""
    return replace(pen, entry="", new_id=lambda: str(uuid4()))


def _there(pen: Pen, game: PlayedGame) -> Wrote:
    """The answer where all was written before."""
    there = pen.there(pen.entry)
    return Wrote(findings=(), entries=() if there is None else (there,), game=game, were_there=True)


def _tell(pen: Pen, record: GameRecord, *, events: list[Event], told: tuple[str, ...]) -> Wrote:
    """Writes the steps; a secret that the journal knows is kept nowhere else."""
    done = written(pen, record, events=events)
    if len(done.entries) == len(events):
        for each in told:
            forget_secret(each)
    return done


def _waiting(game: PlayedGame) -> Binding | None:
    """The roll that the machine is bound for and hasn't made."""
    return next((each for each in game.bindings if each.is_to_be_rolled), None)


def _secret_of(binding: Binding) -> bytes | Finding:
    """The secret that is kept, or why it can't serve: nothing is rolled or told with another."""
    secret = kept_secret(binding.line.id)
    if secret is None:
        return secret_missing(binding)
    return (
        secret if digest_of_secret(secret) == binding.committed.digest else secret_differs(binding)
    )


def _spoken(binding: Binding, word: str) -> Spoken:
    return Spoken(commitment=binding.line.id, word=whole_word(word))


def _rolled(binding: Binding, *, word: str, secret: bytes) -> Rolled:
    bound = binding.committed
    dice: Dice = dice_of_text(bound.dice) or NO_DICE
    faces = faces_of(secret, word, sides=thrown(dice))
    return Rolled(
        purpose=bound.purpose,
        dice=bound.dice,
        faces=faces,
        total=total_of(dice, faces),
        number=bound.number,
        choice=bound.choice,
        commitment=binding.line.id,
    )


def _revealed(binding: Binding, secret: bytes) -> Revealed:
    return Revealed(commitment=binding.line.id, secret=secret.hex())
