"""What is to be said about losses: what can't be rolled for, and what is doubtful."""

from collections.abc import Iterable, Sequence
from difflib import get_close_matches

from paradestate.core.campaign.casualty import Casualty, Fate
from paradestate.core.campaign.supporting_loss import SupportingLoss
from paradestate.core.choice import CHOSEN_HERE
from paradestate.core.finding import Finding, Level
from paradestate.core.log_finding import incomplete, log_stop
from paradestate.core.sentence.wording import listed

MOST_NAMED = 5
NOBODY_WAITS = (
    "Nobody is waiting for a roll; dice are for stands under `recovery` of the section `campaign`."
)


def nothing_played(of: str) -> Finding:
    """The stop where there is no such game."""
    which = f"No game's id begins with '{of}', or more than one's" if of else "No game was played"
    hint = (
        "Give more of its id, or leave --of out for the newest game."
        if of
        else "Open it with `play FOLDER start`, afterwards too where it was kept on paper; then "
        "say who was out of action."
    )
    return Finding(
        level=Level.STOP,
        code="no-game-played",
        message=f"{which}.",
        effect="There are no losses to tell.",
        hint=hint,
        place=CHOSEN_HERE,
    )


def not_to_roll(name: str, *, waiting: Sequence[str]) -> Finding:
    """The stop where a name is none of those that are still to be rolled for."""
    near = get_close_matches(name, waiting, n=1)
    offered = f"Did you mean '{near[0]}'? " if near else ""
    some = listed(f"'{each}'" for each in waiting[:MOST_NAMED])
    return log_stop(
        code="not-to-roll",
        message=f"'{name}' isn't waiting for a roll.",
        hint=f"{offered}Waiting: {some}." if waiting else NOBODY_WAITS,
    )


def rolled_otherwise(name: str, *, shown: str, is_struck: bool) -> Finding:
    """The stop for dice that were written down before, and showed something else then."""
    since = ", and was struck out since then" if is_struck else ""
    return log_stop(
        code="fate-told",
        message=f"{name} was rolled for already: it showed {shown}{since}.",
        hint="Load the page anew; what is wrong is struck out with a reason.",
    )


def reason_missing() -> Finding:
    """The stop for a line that is struck out without a reason."""
    return incomplete("A line is struck out with its reason.", hint="Say why, in a few words.")


def rolled_already(casualty: Casualty) -> Finding:
    """The stop for a second roll for the same stand."""
    return log_stop(
        code="fate-told",
        message=f"{casualty.stand.name} is told already: {casualty.fate}.",
        hint="Strike that line out with a reason, or keep it.",
    )


def cant_become(name: str, fate: str, *, because: str, known: Iterable[str] = ()) -> Finding:
    """The stop where a stand can't be told so; `known` are the names that it may have meant."""
    near = get_close_matches(name, tuple(known), n=1)
    return log_stop(
        code="fate-impossible",
        message=f"{name} can't be told {fate}: {because}.",
        hint=f"Did you mean '{near[0]}'?"
        if near
        else "Look at the name, and at what is out of action, again.",
    )


def nothing_to_repair() -> Finding:
    """The stop where no stand is told to be repaired, or all are on the bench."""
    return log_stop(
        code="nothing-to-repair",
        message="No stand is told to be repaired that isn't on the bench already.",
        hint="Name one: losses FOLDER repairs NAME; in a game: mark 'to repair' NAME WHAT.",
    )


def none_ticked() -> Finding:
    """The stop for a form that puts nothing on the bench."""
    return incomplete("No stand is ticked.", hint="Tick those that go to the bench.")


def no_day_for_repairs() -> Finding:
    """The stop where nothing says by when repairs are wanted."""
    return log_stop(
        code="repair-undated",
        message="Nothing says by when the repairs are wanted.",
        hint="Say the day (the command: `--wanted DATE`), or write the game nights under `aim`.",
    )


def nothing_to_go_back_to() -> Finding:
    """The stop where the bench has one stage only."""
    return log_stop(
        code="no-stage-before",
        message="The bench has no stage before the last one.",
        hint="Write the stages down under `bench`.",
    )


def doubts(
    casualties: Sequence[Casualty], *, unknown: Sequence[str], whole: Sequence[str] = ()
) -> tuple[Finding, ...]:
    """What of the losses is told twice, dies with its stand, or belongs to no stand.

    `whole` are bodies, such as platoons, that were told out as one.
    """
    said = []
    disputed = [each.stand.name for each in casualties if each.is_disputed]
    if disputed:
        said.append(
            _warn(
                f"Told differently by two: {_some(disputed)}.",
                code="losses-disputed",
                effect="The worse counts.",
                hint="Whoever knows tells it once more, or strikes the wrong line out.",
            )
        )
    both = [each.stand.name for each in casualties if each.is_promoted and each.fate is Fate.LOST]
    if both:
        said.append(
            _warn(
                f"Promoted and lost the same day: {_some(both)}.",
                code="promoted-and-lost",
                effect="It counts as lost, and its promotion with it.",
                hint="If it came back, strike out that it was lost.",
            )
        )
    if whole:
        said.append(
            _warn(
                f"Told out of action as a whole: {_some(whole)}.",
                code="loss-of-no-stand",
                effect="The next strength leaves it out, as if all its stands were there.",
                hint="Losses are of stands: tell out each of its stands that was.",
            )
        )
    if unknown:
        said.append(
            _warn(
                f"Out of action, but no stand of the force: {_some(unknown)}.",
                code="loss-of-no-stand",
                effect="The next strength leaves it out.",
                hint="Look at its name: neither a stand nor an entry is called so.",
            )
        )
    return tuple(said)


def supporting_out(losses: Sequence[SupportingLoss]) -> tuple[Finding, ...]:
    """What the losses of supporting troops come to: nothing, for the next game."""
    if not losses:
        return ()
    return (
        Finding(
            level=Level.REMARK,
            code="supporting-troops-out",
            message=f"Supporting troops out of action: {_some([each.name for each in losses])}.",
            effect="The next game doesn't miss them: they are asked for and paid anew, and no "
            "roll brings them back.",
            hint="A model that broke goes back to an earlier stage: log it as moved.",
            place=CHOSEN_HERE,
        ),
    )


def _warn(message: str, *, code: str, effect: str, hint: str) -> Finding:
    return Finding(
        level=Level.WARN, code=code, message=message, effect=effect, hint=hint, place=CHOSEN_HERE
    )


def _some(names: Sequence[str]) -> str:
    shown = [*names[:MOST_NAMED]]
    if len(names) > MOST_NAMED:
        shown.append(f"{len(names) - MOST_NAMED} more")
    return listed(shown)
