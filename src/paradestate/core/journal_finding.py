"""What is to be said of a journal that was read: altered lines, and what the files don't know."""

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import replace

from paradestate.core.digest_chain import Altered
from paradestate.core.finding import Finding, Level
from paradestate.core.force import Force
from paradestate.core.holdings import Holdings, piles
from paradestate.core.journal import Shortfall, more_words
from paradestate.core.journal_text import UnknownEntryError
from paradestate.core.on_order import OnOrder
from paradestate.core.place import Place
from paradestate.core.sentence.journal import SHORT, on_order_words
from paradestate.core.sentence.wording import day_words, listed, several


def altered_line(altered: Altered, *, journal: Place) -> Finding:
    """The warning for a line that isn't as it was written."""
    if altered.id:
        what = f"Line {altered.number} ({altered.id}) isn't as it was written"
        hint = "Compare with an archive; strike the entry out and write it again as it was."
    else:
        what = f"Line {altered.number} is missing, or isn't where the journal says that it ends"
        hint = "Compare with an archive; write again what is lacking."
    return Finding(
        level=Level.WARN,
        code="journal-altered",
        message=f"{what}: the digests don't agree.",
        effect="The holdings are added up as the lines stand now.",
        hint=hint,
        place=replace(journal, line=altered.number),
    )


def not_understood(error: UnknownEntryError, *, journal: Place) -> Finding:
    """The stop for an entry that this version can't read."""
    return Finding(
        level=Level.STOP,
        code="journal-not-understood",
        message=f"This entry isn't understood: {error}.",
        effect="The holdings aren't known; the journal is left as it is.",
        hint="A later version may have written it: install that. If a line was altered by hand, "
        "put it back as it was.",
        place=journal,
    )


def below_nought(short: Shortfall, *, journal: Place) -> Finding:
    """The stop for an entry that takes more than there was, as files and journal stand now."""
    entry = short.entry
    return Finding(
        level=Level.STOP,
        code="held-below-nought",
        message=f"'{entry.kind}' of {day_words(entry.on)} ({entry.id[:SHORT]}) takes "
        f"{more_words(short)} from '{short.stage}' than there were.",
        effect="The holdings aren't known.",
        hint="Put `stock` back to what was owned at the start, strike that entry out, or log on "
        "its day what was received before.",
        place=journal,
    )


def lent_out(lent: Holdings, *, journal: Place) -> Finding:
    """The remark that figures are away."""
    what = listed(f"{several(pile.number, pile.name)} {pile.stage}" for pile in piles(lent))
    return Finding(
        level=Level.REMARK,
        code="lent-out",
        message=f"Lent: {what}.",
        effect="They are owned, and can't be fielded until they are back.",
        hint="Log them 'returned' when they are.",
        place=journal,
    )


def ordered_out(
    orders: Iterable[OnOrder], *, counts_as_there: bool, journal: Place
) -> Iterator[Finding]:
    """The remark that figures are on order."""
    what = listed(map(on_order_words, orders))
    if what:
        yield Finding(
            level=Level.REMARK,
            code="on-order",
            message=f"On order: {what}.",
            effect="They count as there, so they aren't ordered again."
            if counts_as_there
            else "They aren't owned until they are received.",
            hint="Log them 'received' with their source when they come, 'cancelled' if they won't.",
            place=journal,
        )


def unknown_names(
    held: Holdings, *, known: Mapping[str, Iterable[str]], journal: Place
) -> Iterator[Finding]:
    """A warning for each name that is held and that no force of the collection defines.

    `known` has the names of figures and of stands.
    """
    for word, staged in (("figures", held.figures), ("stands", held.stands)):
        for name, stages in staged.items():
            if name not in known[word]:
                yield Finding(
                    level=Level.WARN,
                    code="held-unknown",
                    message=f"The journal has {sum(stages.values())} '{name}', which `{word}` "
                    "doesn't define.",
                    effect="They serve nothing.",
                    hint="Bring the name back, or log them 'lost' and 'received' by their new one.",
                    place=journal,
                )


def fitting(
    held: Holdings, force: Force, *, journal: Place
) -> tuple[Holdings, tuple[Finding, ...]]:
    """The holdings that a force can use, and a warning for each stage that it doesn't have."""
    findings: list[Finding] = []
    kept: list[dict[str, dict[str, int]]] = [{}, {}]
    known = (force.figures, force.stands)
    for pile in piles(held):
        if pile.name not in known[pile.is_stand]:
            continue
        if pile.stage in force.bench.stages:
            kept[pile.is_stand].setdefault(pile.name, {})[pile.stage] = pile.number
        else:
            findings.append(
                _unknown_stage(pile.stage, pile.number, name=pile.name, journal=journal)
            )
    return Holdings(figures=kept[0], stands=kept[1]), tuple(findings)


def _unknown_stage(stage: str, number: int, *, name: str, journal: Place) -> Finding:
    return Finding(
        level=Level.WARN,
        code="held-at-unknown-stage",
        message=f"{several(number, name)} {'is' if number == 1 else 'are'} at '{stage}', which is "
        "no stage of this force.",
        effect="They aren't counted.",
        hint=f"Bring the stage back, or log them 'moved' --from \"{stage}\" to one that there is.",
        place=journal,
    )


def stands_differ(pattern: str, forces: Iterable[str], *, journal: Place) -> Finding:
    """The warning where one name means stands of other figures in another force."""
    return Finding(
        level=Level.WARN,
        code="stands-differ",
        message=f"'{pattern}' is made of other figures in {listed(forces)}.",
        effect="Whole stands of that name count for each of them, with its own figures.",
        hint="Give one of them another name, or make both of the same figures.",
        place=journal,
    )
