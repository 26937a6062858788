"""The section `campaign` as sentences, and what a game left behind."""

from collections import Counter
from collections.abc import Iterator, Sequence
from fractions import Fraction

from paradestate.core.campaign.casualty import OUT, PROMOTED, Casualty, Fate
from paradestate.core.campaign.loss_flow import LossFlow
from paradestate.core.campaign.next_strength import PatternStrength
from paradestate.core.campaign.recovery import Campaign, Recovery
from paradestate.core.campaign.supporting_loss import SupportingLoss
from paradestate.core.place import KeyPath
from paradestate.core.play.event import Told
from paradestate.core.sentence.chance import chance_words, near_text
from paradestate.core.sentence.wording import by_hand_words, counted, listed, several
from paradestate.core.unfolding import spoken


def campaign_sentences(campaign: Campaign) -> Iterator[tuple[KeyPath, str]]:
    """What the owner wrote, with where it stands in the section."""
    for pattern, recovery in campaign.recovery.items():
        yield ("recovery", pattern), recovery_sentence(pattern, recovery)
    if campaign.rolled_once_for:
        yield (
            ("rolled once for",),
            f"After a game all stands of one kind in a {campaign.rolled_once_for} share a roll.",
        )
    if campaign.never_back:
        words = listed(campaign.never_back, joint="or")
        yield ("never back",), f"A stand out of action as {words} is lost without a roll."
    if campaign.replacements:
        yield ("replacements",), f"May be sent up in all: {counted(campaign.replacements)}."
    if campaign.by_hand:
        yield (), f"After a game.{by_hand_words(campaign.by_hand)}"


def recovery_sentence(pattern: str, recovery: Recovery) -> str:
    """Such as: rifle section, out of action: comes back on 3 or more of 1d6, else lost."""
    gains = "" if recovery.promoted_on is None else f", promoted on {recovery.promoted_on}"
    return (
        f"{pattern}, out of action: comes back on {recovery.on} of {recovery.roll}, "
        f"else lost{gains}."
    )


def casualty_words(casualty: Casualty) -> str:
    """What came of it: `lost`, `recovered, promoted`, `lost; its promotion is lost with it`.

    One of which nobody said anything is `taken as back`, so that it doesn't look rolled for.
    """
    words = str(casualty.fate) if casualty.out or casualty.fate is not Fate.RECOVERED else ""
    if casualty.is_taken_as_back:
        words = "taken as back"
    if not casualty.is_promoted:
        return words
    if casualty.fate in {Fate.LOST, Fate.REPLACED}:
        return f"{words}; its promotion is lost with it"
    return f"{words}, promoted" if words else "promoted"


def taken_sentence(campaign: Campaign, casualties: Sequence[Casualty]) -> str:
    """Who is taken as back though neither dice nor anybody said so; empty where there is none."""
    taken = Counter(each.stand.pattern for each in casualties if each.is_taken_as_back)
    if not taken:
        return ""
    why = (
        "the files have no section `campaign`"
        if campaign == Campaign()
        else f"no line under `recovery` is about {listed(taken, joint='or')}"
    )
    return (
        f"No dice decided that: {why}, so {counted(taken)} out of action "
        f"{'is' if taken.total() == 1 else 'are'} taken as back. Tell what is lost."
    )


def to_add_sentence(
    strengths: tuple[PatternStrength, ...], *, game: str, is_taken: bool = False
) -> str:
    """Whether the next game has all that it must have, and the least to send up.

    `is_taken`: somebody is only taken as back.
    """
    least = {each.pattern: each.least_to_add for each in strengths if each.least_to_add}
    most = {each.pattern: each.most_to_add for each in strengths if each.most_to_add}
    if not most:
        whether = "if those taken as back are back" if is_taken else "whatever else happens"
        return f"{game}: complete, {whether}."
    if least == most:
        return f"{game}: short of {counted(least)}; that is the least to send up."
    sure = f"short of {counted(least)} for sure" if least else "complete if all come back"
    return f"{game}: {sure}; short of {counted(most)} if none comes back."


def back_sentence(waiting: int, *, mean: Fraction) -> str:
    """How many wait for a roll, and how many of them come back on average."""
    return f"{several(waiting, 'stand')} to roll for; {near_text(mean)} expected back."


def pool_sentence(enough: Fraction) -> str:
    """The chance that the next force is complete if all are sent up that may be."""
    return f"Complete with all that may be sent up: {chance_words(enough)}."


def legal_sentence(
    strengths: Sequence[PatternStrength], *, complete: Fraction, is_pool_limited: bool
) -> str:
    """Whether the next force has all that its organisation must have, as far as can be said now.

    `complete` is the chance that it has with nobody sent up.
    """
    if not any(each.most_to_add for each in strengths):
        return "So the next force is legal as it is."
    if is_pool_limited and any(each.least_to_add > each.pool for each in strengths):
        return "So the next force can't be legal: more are short than may be sent up."
    if any(each.least_to_add for each in strengths):
        return "So the next force isn't legal until they are sent up."
    return f"So the next force is legal with nobody sent up in {chance_words(complete)} cases."


def pool_words(strengths: tuple[PatternStrength, ...]) -> str:
    """What may still be sent up: `2 rifle sections`; empty where there is nothing."""
    return counted({each.pattern: each.pool for each in strengths if each.pool})


def supporting_words(losses: Sequence[SupportingLoss]) -> str:
    """What the next strength leaves out, where there are supporting troops at all."""
    if not losses:
        return (
            "Supporting troops are asked for anew in each game: what is said here leaves them out."
        )
    names = listed(f"{spoken(each.name)} ({out_words(each.out)})" for each in losses)
    return (
        f"Supporting troops out of action: {names}. They are asked for and paid anew in the next "
        "game, which misses none of them; no roll brings them back, and nothing here counts them."
    )


def out_words(how: str) -> str:
    """How a stand was out, in the owner's word where there is one."""
    return "out of action" if how in {"yes", "out"} else how


def loss_words(event: Told) -> str:
    """What was told of a stand: `out of action`, `captured`, `recovered`, `promoted`."""
    aspect, value = event.subject.aspect, event.value
    if not value:
        return "back in action" if aspect == OUT else f"{aspect}: as at the start"
    if aspect == PROMOTED:
        return "promoted"
    return out_words(value) if aspect == OUT else value


FLOW_STEPS = (
    ("before", "before"),
    ("out", "out"),
    ("open", "to roll"),
    ("recovered", "recovered"),
    ("lost", "lost"),
    ("replaced", "replaced"),
    ("promoted", "promoted"),
    ("sure", "there then"),
)
"""Numbers of a flow that its table shows, with their headings."""


def flow_words(flow: LossFlow) -> str:
    """A flow in a sentence: `rifle section: 24 before, 6 out, 4 recovered, 2 lost; 22 there`."""
    parts = [f"{flow.before} before", f"{flow.out} out"]
    for number, word in (
        (flow.open, "to roll"),
        (flow.recovered, "recovered"),
        (flow.lost, "lost"),
        (flow.replaced, "replaced"),
        (flow.promoted, "promoted"),
        (flow.rested, "not in it"),
        (flow.joined, "back since"),
    ):
        parts.extend([f"{number} {word}"] if number else [])
    there = f"{flow.sure} there afterwards"
    if flow.may_come:
        there += f", {flow.sure + flow.may_come} if all come back"
    must = "" if flow.must_have is None else f", {flow.must_have} needed"
    return f"{flow.name}: {', '.join(parts)}; {there}{must}"
