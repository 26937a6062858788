"""What is to be said of a game that is written down: why a line can't be, and what is doubtful."""

from collections.abc import Iterable, Iterator, Mapping
from datetime import tzinfo

from paradestate.core.choice import CHOSEN_HERE
from paradestate.core.finding import Finding, Level
from paradestate.core.log_finding import log_stop
from paradestate.core.play.account import ALLOWANCE, Account
from paradestate.core.play.event import Rolled
from paradestate.core.play.game_record import Binding, GameRecord, HeldRoll, rolls
from paradestate.core.play.machine_roll import MOST_LETTERS
from paradestate.core.sentence.journal import SHORT
from paradestate.core.sentence.play import clock_words, event_words, shown_words
from paradestate.core.sentence.wording import capital, listed


def game_over() -> Finding:
    """The stop for what is to be written down of a game that has ended."""
    return log_stop(
        code="no-game",
        message="This game is over.",
        hint="A note can still be written; or strike its end out first. play FOLDER show lists the "
        "lines with their ids.",
    )


def no_game(of: str) -> Finding:
    """The stop where no game is open that something could be written down of."""
    about = f"No game that is open has an id that begins with '{of}'." if of else "No game is open."
    return log_stop(code="no-game", message=about, hint="Begin one: play FOLDER start.")


def other_posture(said: str, *, game: str, posture: str) -> Finding:
    """The stop for a posture that isn't that of the game."""
    return log_stop(
        code="other-posture",
        message=f"{capital(game)} is {posture}, not {said}.",
        hint="Choose a game of that posture, or leave --posture out.",
    )


def game_still_open(before: GameRecord) -> Finding:
    """The warning where a game begins while another goes on."""
    about = event_words(before.terms)
    return Finding(
        level=Level.WARN,
        code="game-still-open",
        message=f"Another game goes on: {about}, {before.opening.on}.",
        effect="What is written from now on belongs to the new one.",
        hint=f"End the other: --of {before.id[:SHORT]}; or name it so, whenever you mean it.",
        place=CHOSEN_HERE,
    )


def number_unsaid(entry: str, numbers: Iterable[int]) -> Finding:
    """The stop where it isn't said how many of an entry are asked for."""
    every = tuple(numbers)
    return log_stop(
        code="number-unsaid",
        message=f"It isn't said how many of {entry} are asked for.",
        hint=f'Say it, one of {listed(map(str, every), joint="or")}: "{entry}={every[-1]}".',
    )


def no_roll_for(entry: str) -> Finding:
    """The stop for a roll that nothing asks for."""
    return log_stop(
        code="no-roll-needed",
        message=f"{capital(entry)} comes without a roll.",
        hint=f'Buy it: play FOLDER take "{entry}=1".',
    )


def not_rolled_yet(entry: str) -> Finding:
    """The stop where something is taken before its roll."""
    return log_stop(
        code="not-rolled-yet",
        message=f"{capital(entry)} was not rolled for, or that is settled already.",
        hint=f'Roll first: play FOLDER roll "{entry}" 3.',
    )


def above_allowed(entry: str, *, taken: int, allowed: int) -> Finding:
    """The stop where more is taken than the dice allowed."""
    return log_stop(
        code="above-allowed",
        message=f"{taken} of {entry} are taken; the dice allowed {allowed}.",
        hint=f"Take at most {allowed}, or none: 0.",
    )


def word_unfit(said: str) -> Finding:
    """The stop for what is no word."""
    return log_stop(
        code="word-unfit",
        message=f"'{said[:MOST_LETTERS]}' is no word to roll with.",
        hint=f"Any word of 1 to {MOST_LETTERS} letters on one line does.",
    )


def other_word(said: str) -> Finding:
    """The stop for a second word."""
    return log_stop(
        code="word-unfit",
        message=f"The word was said already: '{said}'.",
        hint="Leave the word out: the roll goes on with that one.",
    )


def nothing_bound(hint: str) -> Finding:
    """The stop where no roll of the machine waits for this."""
    return log_stop(
        code="nothing-bound", message="No roll of the machine waits for that.", hint=hint
    )


def bound_already(binding: Binding) -> Finding:
    """The stop for a second binding before the first is rolled."""
    return log_stop(
        code="bound-already",
        message=f"The machine is bound for {binding.committed.purpose} already.",
        hint="Let the opponent say a word: play FOLDER word WORD. Or strike the binding out.",
    )


def secret_missing(binding: Binding) -> Finding:
    """The stop where the secret of a binding isn't on this computer."""
    return log_stop(
        code="secret-missing",
        message=f"The secret for {binding.committed.purpose} isn't on this computer.",
        hint="Go on where the machine was bound; or strike the binding out with a reason "
        f"({binding.line.id[:SHORT]}) and roll real dice.",
    )


def not_a_time(said: str) -> Finding:
    """The stop where the end of a game isn't said in hours and minutes."""
    return log_stop(
        code="not-a-time",
        message=f"'{said}' is no time of day.",
        hint="Say hours and minutes of 24 hours: --time 22:15.",
    )


def secret_differs(binding: Binding) -> Finding:
    """The stop where what is kept isn't the secret whose digest was published."""
    return log_stop(
        code="secret-differs",
        message=f"The secret that is kept for {binding.committed.purpose} isn't the one whose "
        f"digest was published ({binding.committed.digest[:SHORT]}): the file was altered, or is "
        "that of another roll.",
        hint="Put the file back as it was; or strike the binding out with a reason "
        f"({binding.line.id[:SHORT]}) and roll real dice.",
    )


def not_of_this_game(beginning: str) -> Finding:
    """The stop for an entry that isn't one line of the game."""
    return log_stop(
        code="line-unclear",
        message=f"'{beginning}' isn't the beginning of one line's id.",
        hint="play FOLDER show lists the lines with their ids.",
    )


def reason_unsaid() -> Finding:
    """The stop where a line is to be struck out without a reason."""
    return log_stop(
        code="reason-unsaid",
        message="It isn't said why the line is struck out.",
        hint="Say it in a few words: the line stays readable, with the reason.",
    )


def record_findings(
    record: GameRecord,
    account: Account,
    *,
    wrong: Mapping[str, tuple[str, ...]],
    zone: tzinfo | None = None,
) -> Iterator[Finding]:
    """What is doubtful about a game's rolls; `wrong` is binding to what of it doesn't agree."""
    every = rolls(record)
    for each in every:
        if each.line.id in account.second:
            first = _first(each, every, account=account)
            yield _second(each, before=first, account=account, zone=zone)
        if each.line.id in account.undeclared:
            yield _undeclared(each.rolled)
    for id_, differences in wrong.items():
        if differences:
            yield _roll_differs(id_, differences)


def _first(roll: HeldRoll, every: tuple[HeldRoll, ...], *, account: Account) -> HeldRoll:
    """The roll that counts in place of this one."""
    counted = [
        each
        for each in every[: every.index(roll)]
        if each.line.holds
        and each.line.id not in account.second
        and _same(each, roll, account=account)
    ]
    return counted[-1]


def _same(one: HeldRoll, other: HeldRoll, *, account: Account) -> bool:
    """Whether two rolls are for the same thing, by its name or as one that they share."""
    names = {one.rolled.purpose, other.rolled.purpose}
    if len(names) == 1:
        return True
    offers = account.terms.offers
    shared = {
        availability.shared_roll
        for name in names
        if name in offers and (availability := offers[name].availability) is not None
    }
    return len(shared) == 1 and shared != {""} and ALLOWANCE not in names


def _second(roll: HeldRoll, *, before: HeldRoll, account: Account, zone: tzinfo | None) -> Finding:
    refused = {each.roll for each in account.requests if each.allowed == 0}
    came = ", refused" if before.line.id in refused else ""
    at = clock_words(before.line.written, zone=zone)
    return Finding(
        level=Level.WARN,
        code="rolled-twice",
        message=f"{capital(roll.rolled.purpose)} was rolled already "
        f"({shown_words(before.rolled)}{came}) at {at}.",
        effect="The first roll counts; this one stays in the record.",
        hint="Strike one of them out with a reason: play FOLDER strike "
        f"{roll.line.id[:SHORT]} --because TEXT.",
        place=CHOSEN_HERE,
    )


def _undeclared(rolled: Rolled) -> Finding:
    return Finding(
        level=Level.WARN,
        code="asked-after-declaring",
        message="This file rolls after all is declared. "
        f"Adding {rolled.purpose} now is outside the rule.",
        effect="It counts as it was rolled.",
        hint="Strike the roll out with a reason, unless your opponent agrees.",
        place=CHOSEN_HERE,
    )


def _roll_differs(id_: str, differences: tuple[str, ...]) -> Finding:
    return Finding(
        level=Level.WARN,
        code="roll-differs",
        message=f"A roll of the machine ({id_[:SHORT]}) doesn't agree: {listed(differences)}.",
        effect="It can't be told that nobody steered it; it counts as it is written.",
        hint="Compare with an archive of the journal, and with what your opponent wrote down.",
        place=CHOSEN_HERE,
    )
