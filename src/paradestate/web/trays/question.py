"""What is asked of the sheet of trays: which stands, and what was moved by hand.

All of it stands in the address, so that the browser's Back takes a move back; nothing is written
until it is kept. Moves name stands and trays by number, with a mark of the arrangement that they
begin from: where that has changed since, they mean nothing and aren't made.
"""

import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from hashlib import sha256
from urllib.parse import urlencode

from paradestate.core.tray.ground import Ground
from paradestate.core.tray.moving import Move, Swap, Transfer, Trays
from paradestate.core.unfolding import SEPARATOR

MOST_MOVES = 200
MOST_TYPED = 200
_MOVE = re.compile(r"([0-9]{1,4})([-t])([0-9]{1,4})")
YES = "yes"


@dataclass(frozen=True, slots=True, kw_only=True)
class TraysQuestion:
    """The stands that are packed, and the moves."""

    game: str
    only_finished: bool
    anew: bool
    """Whether the kept arrangement is passed over."""
    moves: tuple[str, ...]
    """Each as `3-17`, two stands that change places, or `5t2`, a stand to another tray."""
    of: str
    """The mark of the arrangement that they begin from."""
    stand: int
    """The number of the stand that is taken up; nought for none."""

    @property
    def fields(self) -> Mapping[str, str]:
        """The whole question as the fields of a form or an address."""
        said = {
            "game": self.game,
            "finished": YES if self.only_finished else "",
            "anew": YES if self.anew else "",
            "moves": ".".join(self.moves),
            "of": self.of if self.moves else "",
            "stand": str(self.stand or ""),
        }
        return {name: text for name, text in said.items() if text}

    @property
    def query(self) -> str:
        """The whole question as the end of an address."""
        return f"?{urlencode(self.fields)}" if self.fields else ""

    def choosing(self, number: int) -> "TraysQuestion":
        """With a stand taken up, or with none."""
        return replace(self, stand=number)

    def with_move(self, move: str, *, of: str) -> "TraysQuestion":
        """With one move more."""
        return replace(self, moves=(*self.moves, move), of=of, stand=0)

    @property
    def unmoved(self) -> "TraysQuestion":
        """Before anything was moved."""
        return replace(self, moves=(), of="", stand=0)


def trays_question(query: Mapping[str, str]) -> TraysQuestion:
    """The question that the fields of a form or an address ask."""
    moves = [text for text in query.get("moves", "").split(".") if _MOVE.fullmatch(text)]
    number = query.get("stand", "")
    is_number = number.isascii() and number.isdigit() and len(number) <= len("9999")
    return TraysQuestion(
        game=query.get("game", "").strip()[:MOST_TYPED],
        only_finished=query.get("finished", "") == YES,
        anew=query.get("anew", "") == YES,
        moves=tuple(moves[:MOST_MOVES]),
        of=query.get("of", "")[:MOST_TYPED],
        stand=int(number) if is_number else 0,
    )


def mark_of(trays: Trays) -> str:
    """Eight digits that tell one arrangement from another."""
    said = SEPARATOR.join(
        f"{name} {each.thing.name} {each.across} {each.deep} {each.is_turned}"
        for name, tray in trays.items()
        for each in tray.lying
    )
    return sha256(said.encode()).hexdigest()[:8]


def moves_of(texts: Sequence[str], *, ground: Ground) -> tuple[Move, ...]:
    """The moves that numbers mean; those that mean nothing here are left out."""
    things = {number: thing.name for number, thing in enumerate(ground.things, start=1)}
    cases = {number: case.name for number, case in enumerate(ground.cases, start=1)}
    found = [_move(text, things=things, cases=cases) for text in texts]
    return tuple(move for move in found if move is not None)


def _move(text: str, *, things: Mapping[int, str], cases: Mapping[int, str]) -> Move | None:
    match = _MOVE.fullmatch(text)
    if match is None:
        return None
    one, other = int(match[1]), int(match[3])
    if one not in things:
        return None
    if match[2] == "t":
        return Transfer(thing=things[one], to=cases[other]) if other in cases else None
    if other not in things or other == one:
        return None
    return Swap(one=things[one], other=things[other])
