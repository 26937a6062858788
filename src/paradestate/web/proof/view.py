"""Everything that the sheet of the list says."""

from collections.abc import Iterator
from dataclasses import dataclass

from paradestate.core.finding import Finding, stops
from paradestate.core.sentence.chance import hundredths_words
from paradestate.core.sentence.comparison import change_words
from paradestate.core.sentence.proof import matters_by_kind, place_words, waste_of
from paradestate.core.sentence.wording import capital, listed, several
from paradestate.core.support.proof import EntryProof, GameProof, InBest, ListProof
from paradestate.journeys.compare import CompareAnswer
from paradestate.sheet.share_bar import share_bar, share_pattern
from paradestate.sheet.svg import Drawing
from paradestate.sheet.waste_bars import PHONE, WIDE, WasteRow, waste_bars, waste_rows
from paradestate.web.proof.answer import Answered
from paradestate.web.proof.change_view import ChangeView, change_view
from paradestate.web.proof.question import Question
from paradestate.web.proof.what_if import WhatIfView, what_if_view

MOST_CHANGES = 200
"""Differences of two versions that a page lists."""


@dataclass(frozen=True, slots=True, kw_only=True)
class MatterLine:
    """One thing to look at."""

    sentence: str
    steps: str
    """What each number costs more than the one below it; empty where it isn't about prices."""
    query: str
    """Leads to the slip of its entry; empty where the game that is looked at has none."""


@dataclass(frozen=True, slots=True, kw_only=True)
class EntryLine:
    """An entry in the game that is looked at."""

    title: str
    query: str
    """Leads to its slip; empty where it isn't on offer."""
    steps: str
    share: tuple[Drawing, str] | None
    """Of the legal forces that hold it; None where it can't be taken."""
    best: tuple[Drawing, str] | None
    """Where it stands among the best; None where nothing has a worth."""
    why_not: str


@dataclass(frozen=True, slots=True, kw_only=True)
class WasteView:
    """The points that nobody can spend."""

    drawings: tuple[Drawing, Drawing] | None
    """None where all can be spent, or where there is one number of points only."""
    rows: tuple[WasteRow, ...]
    sentences: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class GameView:
    """The game that is looked at."""

    name: str
    with_points: str
    entries: tuple[EntryLine, ...]
    has_worths: bool
    waste: WasteView


@dataclass(frozen=True, slots=True, kw_only=True)
class BesideView:
    """The other version beside this one."""

    name: str
    changes: tuple[tuple[str, ...], ...]
    more: int
    """Differences beyond those listed."""
    change: ChangeView | None
    """Of the game that is looked at; None where it isn't in both."""
    others: tuple[tuple[str, str, str], ...]
    """Each other game: its name, the question about it, what becomes of its forces."""
    left_out: tuple[str, ...]
    findings: tuple[Finding, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class ListView:
    """The sheet."""

    boxes: tuple[tuple[str, str], ...]
    lead: tuple[str, ...]
    kinds: tuple[tuple[str, tuple[MatterLine, ...]], ...]
    refused: tuple[str, ...]
    pattern: Drawing
    game: GameView | None
    what_if: WhatIfView | None
    may_change: tuple[str, ...]
    """Entries with a slip."""
    not_on_offer: str
    """Why the entry that is asked about has no slip; empty where it has one."""
    beside: BesideView | None


def list_view(found: Answered, proof: ListProof, *, asked: Question) -> ListView:
    """The answers to a question."""
    game = found.game
    offers = game.terms.offers if game else {}
    offer = offers.get(asked.entry)
    number = sum(len(matters) for _, matters in matters_by_kind(proof))
    return ListView(
        boxes=(
            ("Entries", f"{len(proof.entries)}"),
            ("Games", f"{len(proof.games) + len(proof.refused)}"),
            ("To look at", f"{number or 'nothing'}"),
        ),
        lead=tuple(_lead(proof)),
        kinds=tuple(_kinds(proof, game, asked=asked)),
        refused=tuple(
            f"{capital(name)}: not computed: {why.reason}." for name, why in proof.refused.items()
        ),
        pattern=share_pattern(),
        game=None if game is None else _game(game, asked=asked),
        what_if=None if offer is None else what_if_view(found, offer, asked=asked),
        may_change=tuple(offers),
        not_on_offer="" if offer or not asked.entry or not game else _why_not(game, asked.entry),
        beside=_beside(found.beside, game, asked=asked) if found.beside else None,
    )


def _why_not(game: GameProof, entry: str) -> str:
    reason = game.terms.absent.get(entry, "the files know no entry of that name")
    return f"{capital(entry)} isn't on offer in {game.terms.game.name}: {reason}."


def _lead(proof: ListProof) -> Iterator[str]:
    """The answer in sentences, the first of them first of all."""
    doubtful = [name for name in proof.entries if any(map(_contradicts, proof.of(name)))]
    if not proof.games:
        yield "Nothing could be proved."
        return
    if doubtful:
        yield f"The prices of {listed(doubtful)} contradict one another."
    else:
        yield "No price contradicts another."
    never = proof.never_taken
    yield f"Never taken: {listed(never)}." if never else "Everything can be taken in some game."
    games = several(len(proof.games), "game")
    yield f"All legal forces of {games} are counted; exact."


def _contradicts(entry: EntryProof) -> bool:
    """Whether somebody could be asked for a price that nobody would pay."""
    return any(doubt.in_reach for doubt in entry.doubts)


def _kinds(
    proof: ListProof, game: GameProof | None, *, asked: Question
) -> Iterator[tuple[str, tuple[MatterLine, ...]]]:
    offers = game.terms.offers if game else {}
    for heading, matters in matters_by_kind(proof):
        yield (
            heading,
            tuple(
                MatterLine(
                    sentence=each.sentence,
                    steps=steps_words(each.priced) if each.priced else "",
                    query=asked.about(each.entry) if each.entry in offers else "",
                )
                for each in matters
            ),
        )


def steps_words(entry: EntryProof) -> str:
    """Prices, each with its step: `1 costs 3, 2 cost 5 (2 more), 3 cost 9 (4 more)`."""
    numbers = sorted(entry.prices or {})
    said = []
    for place, (number, step) in enumerate(zip(numbers, entry.steps, strict=True)):
        price = f"{number} {'costs' if number == 1 else 'cost'} {(entry.prices or {})[number]}"
        more = f"{step} more" if step >= 0 else f"{-step} less"
        said.append(f"{price} ({more})" if place else price)
    return ", ".join(said)


def _game(game: GameProof, *, asked: Question) -> GameView:
    is_rolled = game.allowance is not None and len(game.allowance.counts) > 1
    middle = ", the middle of what the dice leave" if is_rolled else ""
    return GameView(
        name=capital(game.terms.game.name),
        with_points=f"with {several(game.at, 'point')}{middle}",
        entries=tuple(_entry(each, game, asked=asked) for each in game.entries),
        has_worths=game.has_worths,
        waste=_waste(game),
    )


def _entry(entry: EntryProof, game: GameProof, *, asked: Question) -> EntryLine:
    share = next((each.share for each in entry.levels if each.points == game.at), None)
    is_known = entry.can_be_taken and share is not None
    return EntryLine(
        title=capital(entry.entry),
        query=asked.about(entry.entry) if entry.entry in game.terms.offers else "",
        steps=", ".join(map(str, entry.steps)),
        share=(share_bar(share), hundredths_words(share))
        if is_known and share is not None
        else None,
        best=_best(entry, game) if entry.can_be_taken and game.has_worths else None,
        why_not="" if entry.can_be_taken else f"{entry.reach}; {entry.reason}",
    )


def _best(entry: EntryProof, game: GameProof) -> tuple[Drawing, str]:
    every, some = (
        entry.chance_of(each, allowance=game.allowance) for each in (InBest.EVERY, InBest.SOME)
    )
    return share_bar(every, hatched=some), place_words(entry, game)


def _waste(game: GameProof) -> WasteView:
    sentences = tuple(f"{capital(words)}." for words in waste_of(game))
    if game.allowance is None or len(game.levels) == 1:
        return WasteView(drawings=None, rows=(), sentences=sentences)
    rows = waste_rows(game.allowance, unspent=game.unspent)
    if not any(row.unspent != 0 for row in rows):
        return WasteView(drawings=None, rows=(), sentences=sentences)
    wide, phone = (waste_bars(rows, width=width) for width in (WIDE, PHONE))
    return WasteView(drawings=(wide, phone), rows=rows, sentences=sentences)


def _beside(answer: CompareAnswer, game: GameProof | None, *, asked: Question) -> BesideView:
    found = answer.found
    if found is None:
        return BesideView(
            name=asked.beside,
            changes=(),
            more=0,
            change=None,
            others=(),
            left_out=(),
            findings=tuple(each for one in answer.checked for each in stops(one.findings)),
        )
    name = game.terms.game.name if game else ""
    views = {each.game: change_view(each) for each in found.games}
    return BesideView(
        name=asked.beside,
        changes=tuple(tuple(change_words(each)) for each in found.changes[:MOST_CHANGES]),
        more=max(0, len(found.changes) - MOST_CHANGES),
        change=views.get(name),
        others=tuple(
            (capital(other), asked.query(game=other), view.sentence)
            for other, view in views.items()
            if other != name
        ),
        left_out=tuple(
            f"{capital(other)}: left out; {reason}." for other, reason in found.left_out.items()
        ),
        findings=(),
    )
