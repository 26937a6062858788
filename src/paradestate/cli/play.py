"""The command `play`."""

import secrets
from collections.abc import Callable, Mapping
from pathlib import Path
from typing import TYPE_CHECKING, Any
from uuid import uuid4

import click

from paradestate.cli.finding_report import print_findings
from paradestate.cli.option import finish, folder_argument, json_option, now, stop_for, today
from paradestate.cli.output import print_json
from paradestate.cli.play_option import play_options

if TYPE_CHECKING:  # start-up time
    from paradestate.journeys.game.pen import Pen
    from paradestate.journeys.game.play import Wrote

EPILOG = """\b
Examples:
  paradestate play marenz start --game "whole-day attack" --opponent Ommerath
  paradestate play marenz roll allowance 6 2 --witness Bert
  paradestate play marenz roll "light tanks=2" 3
  paradestate play marenz take "machine-gun platoon=2"
  paradestate play marenz strike 1f0c9b2e --because "read upside down"
  paradestate play marenz note "the two brown companies looked alike" --about "No 1 Company"
  paradestate play marenz end --outcome "held the bridge" --held bridge=Marenz --time 22:15
  paradestate play marenz

\b
Dice of the machine, that nobody can steer and anybody can roll again:
  paradestate play marenz bind "anti-tank guns=2"
  paradestate play marenz word heron

\b
A file for the evening, that a phone opens without any network, and what it gave back:
  paradestate play marenz carry --out evening.html
  paradestate play marenz bring marenz-2026-11-27.txt
"""


@click.command(epilog=EPILOG)
@folder_argument
@click.argument("action", default="show", metavar="[ACTION]")
@click.argument("words", nargs=-1)
@play_options
@json_option
def command(
    folder: Path,
    *,
    action: str,
    words: tuple[str, ...],
    as_json: bool,
    **said: Any,  # noqa: ANN401 - each goes on by name to where it has its type
) -> None:
    """Write down a game of FOLDER as it is played: terms, rolls, what is taken, how it ended.

    ACTION is start, roll, ask, take, mark, strike, note, end, bind, word, reveal, carry, bring, or
    show (the usual). Nothing is ever altered: a slip is struck out with its reason, and stays
    readable. After every line it is said what to do now.
    """
    if action == "show":
        _show(folder, of=said["of"], as_json=as_json)
        return
    if action in ("carry", "bring"):
        _carried(folder, action, words=words, out=said["out"], as_json=as_json)
        return
    if action not in ACTIONS:
        raise click.UsageError(
            f"ACTION is one of: {', '.join((*ACTIONS, 'carry', 'bring', 'show'))}."
        )
    from paradestate.journeys.choosing import day_of
    from paradestate.journeys.game.pen import Pen, sent_again
    from paradestate.journeys.memory import Memory

    day, slips = day_of(said["on"])
    stop_for(slips)
    pen = Pen(
        folder=folder,
        today=today(),
        now=now(),
        new_id=lambda: str(uuid4()),
        on=day,
        device=said["device"],
        of=said["of"],
        memory=Memory(),  # the files are read once, not at each step of the command
    )
    if said["entry"] is not None:
        pen = sent_again(pen, str(said["entry"]))
    _answer(ACTIONS[action](pen, words=words, said=said), as_json=as_json)


def _show(folder: Path, *, of: str, as_json: bool) -> None:
    from paradestate.cli.play_json import play_json
    from paradestate.cli.play_report import print_game
    from paradestate.journeys.game.played_game import played_game

    game = played_game(folder, today=today(), now=now(), of=of)
    print_findings(game.findings, game.texts)
    if as_json:
        print_json({"entries": [], "were_there": False, **play_json(game)})
    else:
        print_game(game, folder=folder)
    finish(stopped=bool(of) and game.record is None)


def _carried(
    folder: Path, action: str, *, words: tuple[str, ...], out: Path | None, as_json: bool
) -> None:
    from paradestate.cli.play_carry import bring_in, carry_out

    if action == "bring":
        bring_in(folder, files=words, as_json=as_json)
    else:
        _none(words)
        carry_out(folder, out=out, as_json=as_json)


def _answer(done: "Wrote", *, as_json: bool) -> None:
    from paradestate.cli.play_json import play_json
    from paradestate.cli.play_report import print_wrote

    game = done.game
    known = () if game is None else game.findings
    every = tuple(dict.fromkeys((*done.findings, *known)))
    print_findings(every, {} if game is None else game.texts)
    if as_json and game is not None:
        entries = [each.id for each in done.entries]
        print_json({"entries": entries, "were_there": done.were_there, **play_json(game)})
    elif not as_json:
        print_wrote(done)
    finish(stopped=done.is_stopped)


def _only(words: tuple[str, ...], *, what: str) -> str:
    if len(words) != 1:
        raise click.UsageError(f"Give {what}, and nothing else.")
    return words[0]


def _none(words: tuple[str, ...]) -> None:
    if words:
        raise click.UsageError(f"Nothing is known to be done with {' '.join(words)!r} here.")


def _start(pen: "Pen", *, words: tuple[str, ...], said: Mapping[str, Any]) -> "Wrote":
    from paradestate.journeys.choosing import TermsTyped
    from paradestate.journeys.game.play import opened

    _none(words)
    typed = TermsTyped(
        numbers=said["numbers"],
        date=said["date"],
        theatre=None,
        wished="",
        game=said["game"],
        grades=said["grades"],
    )
    return opened(pen, typed, opponent=said["opponent"], posture=said["posture"])


def _roll(pen: "Pen", *, words: tuple[str, ...], said: Mapping[str, Any]) -> "Wrote":
    from paradestate.core.play.arrangement import is_number
    from paradestate.journeys.game.play import roll

    if not words or not all(map(is_number, words[1:])):
        raise click.UsageError("Say what is rolled for, then what each die shows: allowance 6 2.")
    numbers = [int(each) for each in words[1:]]
    return roll(
        pen,
        words[0],
        numbers=numbers,
        dice=said["dice"],
        roller=said["roller"],
        witness=said["witness"],
    )


def _ask(pen: "Pen", *, words: tuple[str, ...], said: Mapping[str, Any]) -> "Wrote":
    from paradestate.journeys.game.play import ask

    del said
    return ask(pen, _only(words, what='what is asked for, such as "light tanks=2"'))


def _take(pen: "Pen", *, words: tuple[str, ...], said: Mapping[str, Any]) -> "Wrote":
    from paradestate.journeys.game.play import take

    del said
    return take(pen, _only(words, what='what is taken, such as "light tanks=2"'))


def _mark(pen: "Pen", *, words: tuple[str, ...], said: Mapping[str, Any]) -> "Wrote":
    from paradestate.core.play.event import Subject
    from paradestate.journeys.game.play import mark

    if len(words) not in (2, 3):
        raise click.UsageError('Say what, of what, and how it stands: out "1 Section" yes.')
    aspect, name, *value = words
    return mark(pen, Subject(aspect, name), value="".join(value), turn=said["turn"])


def _strike(pen: "Pen", *, words: tuple[str, ...], said: Mapping[str, Any]) -> "Wrote":
    from paradestate.journeys.game.play import strike

    if not said["because"].strip():
        raise click.UsageError("Say why: strike LINE --because TEXT.")
    return strike(pen, _only(words, what="the beginning of a line's id"), because=said["because"])


def _end(pen: "Pen", *, words: tuple[str, ...], said: Mapping[str, Any]) -> "Wrote":
    from paradestate.journeys.game.play import end

    _none(words)
    return end(pen, outcome=said["outcome"], held=said["held"], time=said["time"])


def _note(pen: "Pen", *, words: tuple[str, ...], said: Mapping[str, Any]) -> "Wrote":
    from paradestate.journeys.game.game_note import note

    return note(pen, " ".join(words), about=said["about"])


def _bind(pen: "Pen", *, words: tuple[str, ...], said: Mapping[str, Any]) -> "Wrote":
    from paradestate.core.play.machine_roll import SECRET_BYTES
    from paradestate.journeys.game.machine_roll import bind

    what = _only(words, what='what is rolled for, such as "light tanks=2"')
    return bind(pen, what, secret=secrets.token_bytes(SECRET_BYTES), dice=said["dice"])


def _word(pen: "Pen", *, words: tuple[str, ...], said: Mapping[str, Any]) -> "Wrote":
    from paradestate.journeys.game.machine_roll import speak

    return speak(pen, " ".join(words), keeps_secret=said["keep_secret"])


def _reveal(pen: "Pen", *, words: tuple[str, ...], said: Mapping[str, Any]) -> "Wrote":
    from paradestate.journeys.game.machine_roll import reveal

    del said
    _none(words)
    return reveal(pen)


ACTIONS: Mapping[str, Callable[..., "Wrote"]] = {
    "start": _start,
    "roll": _roll,
    "ask": _ask,
    "take": _take,
    "mark": _mark,
    "strike": _strike,
    "note": _note,
    "end": _end,
    "bind": _bind,
    "word": _word,
    "reveal": _reveal,
}
