"""Writing a game down, line by line: terms, rolls, what is asked for and taken, how things stand.

the game so far -> what is said -> checked -> an entry of the journal -> the game as it is now
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

from paradestate.core.finding import Finding, stops
from paradestate.core.game import Purchase
from paradestate.core.journal_entry import EntryKind, JournalEntry
from paradestate.core.log_finding import unwritten
from paradestate.core.log_request import LogRequest
from paradestate.core.play.account import Account
from paradestate.core.play.arrangement import Proposed, proposed_findings, subject_of
from paradestate.core.play.board import NOTHING_TOLD
from paradestate.core.play.event import (
    Asked,
    Ended,
    Event,
    Opened,
    Rolled,
    Subject,
    Told,
    is_time,
)
from paradestate.core.play.faces import Shown, read_shown
from paradestate.core.play.game_record import GameRecord
from paradestate.core.play.opening_finding import may_be_one
from paradestate.core.play.play_finding import (
    above_allowed,
    game_over,
    game_still_open,
    no_game,
    no_roll_for,
    not_a_time,
    not_of_this_game,
    not_rolled_yet,
    other_posture,
    reason_unsaid,
)
from paradestate.core.support.judge import judged
from paradestate.core.support.judge_finding import Known
from paradestate.journeys.choosing import TermsTyped, plan_of, terms_asked, words_by_name
from paradestate.journeys.fallback import LEASTS
from paradestate.journeys.game.pen import (
    EntriesWritten,
    Line,
    Pen,
    next_lines,
    write_lines,
    write_requests,
)
from paradestate.journeys.game.played_game import PlayedGame, played_game
from paradestate.journeys.game.roll_for import RollFor, roll_for
from paradestate.journeys.terms import game_terms


@dataclass(frozen=True, slots=True, kw_only=True)
class Wrote:
    """What was written, or nothing with the stops in the way; and the game as it is then."""

    findings: tuple[Finding, ...]
    entries: tuple[JournalEntry, ...] = ()
    game: PlayedGame | None = None
    were_there: bool = False
    """Whether all of it was written before, so that nothing was added."""

    @property
    def is_stopped(self) -> bool:
        """Whether nothing was written, or not all."""
        return bool(stops(self.findings))


def opened(pen: Pen, typed: TermsTyped, *, opponent: str = "", posture: str = "") -> Wrote:
    """Opens a game on the terms that both sides agree to. Raises StoreError, and FileError."""
    asked, slips = terms_asked(**typed)
    if slips:
        return Wrote(findings=tuple(map(unwritten, slips)))
    found = game_terms(
        pen.folder, today=pen.today, choice=asked.choice, grades=asked.grades, memory=pen.memory
    )
    terms = found.terms
    if terms is None:
        return Wrote(findings=tuple(map(unwritten, stops(found.checked.findings))))
    if posture not in {"", terms.game.posture}:
        wrong = other_posture(posture, game=terms.game.name, posture=terms.game.posture)
        return Wrote(findings=(wrong,))
    before = game_of_pen(pen).open_game
    event = Opened(
        game=terms.game.name,
        date=typed["date"].strip(),
        posture=terms.game.posture,
        opponent=opponent.strip(),
        grades=terms.grades,
        numbers=asked.choice.numbers,
    )
    id_, game = pen.new_id(), pen.new_id()
    is_other = before is not None and not may_be_one(before.terms, event)
    warned = (game_still_open(before),) if before is not None and is_other else ()
    done = write_lines(pen, [Line(event=event, game=game, id=id_)])
    return _after(replace(pen, of=game), done, findings=warned)


def roll(
    pen: Pen,
    what: str,
    *,
    numbers: Sequence[int],
    dice: str = "",
    roller: str = "",
    witness: str = "",
) -> Wrote:
    """Writes down what real dice showed. Raises StoreError, and FileError."""
    game = game_of_pen(pen)
    if game.open_game is None:
        return nothing_open(pen, game)
    asked = roll_for(game, what, dice=dice)
    shown = read_shown(asked.dice, numbers) if isinstance(asked, RollFor) else asked
    if not isinstance(shown, Shown) or not isinstance(asked, RollFor):
        return Wrote(findings=(shown,) if isinstance(shown, Finding) else (), game=game)
    event = Rolled(
        purpose=asked.purpose,
        dice=str(asked.dice),
        faces=shown.faces,
        total=shown.total,
        number=asked.number,
        choice=asked.choice,
        roller=roller.strip(),
        witness=witness.strip(),
    )
    return written(pen, game.open_game, events=(event,))


def ask(pen: Pen, what: str) -> Wrote:
    """Writes down what is going to be asked for, before any of it is rolled."""
    game = game_of_pen(pen)
    if game.open_game is None or game.account is None:
        return nothing_open(pen, game)
    plan, slips = plan_of(what, entries=game.account.terms.offers)
    findings = slips or tuple(_unfit(game.account, plan))
    offers = game.account.terms.offers
    if not findings:
        findings = tuple(
            no_roll_for(each.entry) for each in plan if offers[each.entry].availability is None
        )
    if findings:
        return Wrote(findings=tuple(map(unwritten, findings)), game=game)
    events = [Asked(entry=each.entry, number=each.number, choice=each.choice) for each in plan]
    return written(pen, game.open_game, events=events)


def take(pen: Pen, what: str) -> Wrote:
    """Writes down what is taken, of what was rolled for and of what needs no roll.

    A number of nought declines what the dice allowed.
    """
    game = game_of_pen(pen)
    if game.open_game is None or game.account is None:
        return nothing_open(pen, game)
    plan, slips = _to_take(what, account=game.account)
    events: list[Asked] = []
    findings = list(slips)
    for each in plan:
        made = _taken(game.account, each)
        if isinstance(made, Finding):
            findings.append(made)
        else:
            events.append(made)
    bought = tuple(each for each in plan if each.number)
    if not findings and bought:
        findings = list(_unfit(game.account, (*game.account.bought, *bought)))
    if findings:
        return Wrote(findings=tuple(map(unwritten, findings)), game=game)
    return written(pen, game.open_game, events=events)


def _to_take(what: str, *, account: Account) -> tuple[tuple[Purchase, ...], tuple[Finding, ...]]:
    """What was typed; one entry with a number of nought is declined."""
    declined = what.strip().removesuffix("=0")
    if declined != what.strip():
        return (Purchase(entry=declined.strip(" \"'"), number=0),), ()
    return plan_of(what, entries=account.terms.offers)


def _taken(account: Account, taken: Purchase) -> Asked | Finding:
    """What is to be written of something that is taken, or why it can't be."""
    offer = account.terms.offers.get(taken.entry)
    if offer is None or offer.availability is None:
        return Asked(
            entry=taken.entry, number=taken.number, choice=taken.choice, taken=taken.number
        )
    request = next(
        (each for each in account.requests if each.is_open and each.asked.entry == taken.entry),
        None,
    )
    if request is None:
        return _by_shared_roll(account, taken)
    if taken.number > (request.allowed or 0):
        return above_allowed(taken.entry, taken=taken.number, allowed=request.allowed or 0)
    return Asked(
        entry=taken.entry,
        number=request.asked.number,
        choice=taken.choice or request.asked.choice,
        allowed=request.allowed,
        taken=taken.number,
    )


def _by_shared_roll(account: Account, taken: Purchase) -> Asked | Finding:
    """What is taken of an entry whose roll another entry has made already."""
    offers = account.terms.offers
    own = offers[taken.entry].availability
    asked = {each.asked.entry for each in account.requests}
    total = account.shared.get(own.shared_roll) if own is not None and own.shared_roll else None
    if own is None or total is None or taken.entry in asked:
        return not_rolled_yet(taken.entry)
    allowed = offers[taken.entry].greatest_number(allowed=own.allowed(total, asked=taken.number))
    if taken.number > allowed:
        return above_allowed(taken.entry, taken=taken.number, allowed=allowed)
    return Asked(
        entry=taken.entry,
        number=taken.number,
        choice=taken.choice,
        allowed=allowed,
        taken=taken.number,
    )


def _unfit(account: Account, plan: tuple[Purchase, ...]) -> Iterator[Finding]:
    """The rules that a plan breaks; what has to be taken at the least may still come."""
    start = account.terms.most_points if account.start is None else account.start
    made = judged(
        account.terms,
        plan,
        points=start - account.lost,
        known=Known(are_most=account.start is None),
    )
    for found in stops(made.findings):
        if found.code not in LEASTS:
            yield found


def mark(pen: Pen, subject: Subject, *, value: str, turn: int | None = None) -> Wrote:
    """Writes down how one thing stands, in place of all that was told of it so far.

    An empty value: as at the start. Raises StoreError, and FileError.
    """
    game = game_of_pen(pen)
    if game.open_game is None or game.fielded is None:
        return nothing_open(pen, game)
    subject = subject_of(subject.aspect, name=subject.name)
    board = game.open_game.board
    told = {each: standing.values[0] for each, standing in board.items()}
    proposed = Proposed(subject=subject, value=value, values=told)
    findings = tuple(proposed_findings(proposed, game.fielded))
    if stops(findings):
        return Wrote(findings=findings, game=game)
    over = board.get(subject, NOTHING_TOLD).over
    event = Told(subject=subject, value=value, over=over, turn=turn)
    done = written(pen, game.open_game, events=(event,))
    return replace(done, findings=(*findings, *done.findings))


def strike(pen: Pen, beginning: str, *, because: str) -> Wrote:
    """Strikes a line out: it stays readable, with the reason."""
    game = game_of_pen(pen)
    if game.record is None:
        return Wrote(findings=(*stops(game.findings), no_game(pen.of)))
    lines = [each for each in game.record.lines if each.id.startswith(beginning.lower())]
    if len(lines) != 1 or not beginning:
        return Wrote(findings=(not_of_this_game(beginning),), game=game)
    if not because.strip():
        return Wrote(findings=(reason_unsaid(),))
    request = LogRequest(
        id=pen.new_id(),
        kind=EntryKind.STRUCK_OUT,
        written=pen.now.replace(microsecond=0),
        on=pen.today,
        note=because.strip(),
        struck_out=lines[0].id,
    )
    return _after(pen, write_requests(pen, [request]))


def end(pen: Pen, *, outcome: str = "", held: Sequence[str] = (), time: str = "") -> Wrote:
    """Ends the game, with who held what: texts such as `bridge=Ommerath`."""
    game = game_of_pen(pen)
    if game.open_game is None:
        return nothing_open(pen, game)
    holders, slips = words_by_name(held)
    said = time.strip()
    if said and not is_time(said):
        slips = (*slips, not_a_time(said))
    if slips:
        return Wrote(findings=tuple(map(unwritten, slips)), game=game)
    event = Ended(outcome=outcome.strip(), held=holders, time=said)
    return written(replace(pen, of=game.open_game.id), game.open_game, events=(event,))


def game_of_pen(pen: Pen) -> PlayedGame:
    """The game that is meant, without what to do now. Raises StoreError, and FileError."""
    return played_game(
        pen.folder,
        today=pen.today,
        of=pen.of,
        before=pen.entry,
        advises=False,
        memory=pen.memory,
    )


def nothing_open(pen: Pen, game: PlayedGame) -> Wrote:
    """The answer where no game is open that something could be written down of."""
    is_over = bool(pen.of) and game.record is not None
    why = game_over() if is_over else no_game(pen.of)
    return Wrote(findings=stops(game.findings) or (why,), game=game)


def written(pen: Pen, record: GameRecord, *, events: Sequence[Event], first_id: str = "") -> Wrote:
    """Writes events of a game, one after the other, and says how it is then.

    Raises StoreError, and FileError.
    """
    lines = next_lines(pen, record, events=events, first_id=first_id)
    return _after(pen, write_lines(pen, lines))


def _after(pen: Pen, done: EntriesWritten, *, findings: tuple[Finding, ...] = ()) -> Wrote:
    """What was written, and the game as it is now."""
    game = played_game(pen.folder, today=pen.today, of=pen.of, now=pen.now, memory=pen.memory)
    return Wrote(
        findings=(*findings, *done.findings),
        entries=done.entries,
        game=game,
        were_there=done.were_there,
    )
