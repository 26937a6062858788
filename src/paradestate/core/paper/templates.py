"""Stand templates: each kind of stand from above at full size, to set figures down by."""

from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction
from string import ascii_lowercase

from paradestate.core.imposition.shelf import imposed
from paradestate.core.outline import (
    Disc,
    Millimetres,
    Outline,
    Rectangle,
    millimetres,
    outline_text,
)
from paradestate.core.paper.brought import brought
from paradestate.core.paper.ground import Ground
from paradestate.core.paper.paper import Draft, ImposedPage, pages_of
from paradestate.core.paper.piece import Piece, too_large
from paradestate.core.place import nearest_place
from paradestate.core.sentence.wording import counted
from paradestate.core.spot import depth_of, width_of
from paradestate.core.stand_account import StandAccount, stand_accounts

LEAST_WIDTH = millimetres(60)
"""Of a template: its scale line has 50 mm."""

AROUND = millimetres(5)
"""What is left free around a stand."""

ABOVE = millimetres(13)
"""What the name and the size take."""

FOR_REAR = millimetres(9)
"""What the rear mark takes, with its words and the scale line."""

A_LINE = millimetres("4.5")
"""What a line of the key takes."""


@dataclass(frozen=True, slots=True, kw_only=True)
class FigureDrawn:
    """The footprint of a figure on its place."""

    letter: str
    left: Fraction
    front: Fraction
    width: Millimetres
    depth: Millimetres
    is_round: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class KeyLine:
    """What a letter stands for."""

    letter: str
    words: str
    is_telltale: bool
    """Whether this kind of stand is known by it."""


@dataclass(frozen=True, slots=True, kw_only=True)
class StandTemplate:
    """One kind of stand at full size; its front is at the top."""

    name: str
    size: str
    number: int
    """Stands of it that are made."""
    width: Millimetres
    depth: Millimetres
    is_round: bool
    is_model: bool
    """It has no base: what is drawn is the model's own outline."""
    edge: Millimetres
    """What figures keep from the rim."""
    figures: tuple[FigureDrawn, ...]
    key: tuple[KeyLine, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Templates:
    """All templates on their pages."""

    pages: tuple[ImposedPage[StandTemplate], ...]


def templates(ground: Ground) -> Draft[Templates]:
    """A template for each kind of stand that is made, raised ones and those of the plan."""
    numbers = Counter(
        stand.pattern for stand in ground.made.stands if stand.is_wanted and not stand.printed
    )
    numbers.update(each.pattern for each in brought(ground))
    force = ground.force
    drawn = [
        _template(account, outline, number=numbers[account.stand.name])
        for account in stand_accounts(force, ground.made, findings=())
        if numbers[account.stand.name]
        and not account.stand.printed
        and (outline := account.stand.outline) is not None
    ]
    pieces = [
        Piece(
            name=f"The template of {each.name}",
            outline=_card(each),
            place=nearest_place(force.places, ("stands", each.name)),
        )
        for each in drawn
    ]
    imposition = imposed([piece.outline for piece in pieces], ground.layout, may_turn=False)
    findings = tuple(too_large(pieces, imposition.without_room, layout=ground.layout))
    pages = pages_of(imposition, tuple(drawn))
    return Draft(shown=Templates(pages=pages) if pages else None, findings=findings)


def _template(account: StandAccount, outline: Outline, *, number: int) -> StandTemplate:
    stand = account.stand
    letters = dict(zip(stand.modelled, ascii_lowercase, strict=False))
    return StandTemplate(
        name=stand.name,
        size=outline_text(outline),
        number=number,
        width=width_of(outline),
        depth=depth_of(outline),
        is_round=isinstance(outline, Disc),
        is_model=stand.base is None,
        edge=stand.edge if account.placed else millimetres(0),
        figures=tuple(
            FigureDrawn(
                letter=letters.get(each.kind, ""),
                left=each.spot.left,
                front=each.spot.front,
                width=each.spot.width,
                depth=each.spot.depth,
                is_round=isinstance(each.spot.outline, Disc),
            )
            for each in account.placed
        ),
        key=tuple(_key(account, letters)),
    )


def _key(account: StandAccount, letters: dict[str, str]) -> Iterator[KeyLine]:
    stand = account.stand
    for kind, number in stand.modelled.items():
        yield KeyLine(
            letter=letters.get(kind, ""),
            words=counted({kind: number}),
            is_telltale=kind in stand.shows,
        )
    if account.without_place:
        yield _said(f"no place for {counted(account.without_place)}")
    elif stand.modelled and not account.placed and stand.base is not None:
        yield _said("footprints aren't known")


def _said(words: str) -> KeyLine:
    return KeyLine(letter="", words=words, is_telltale=False)


def _card(drawn: StandTemplate) -> Rectangle:
    """The room that a template takes."""
    width = max(LEAST_WIDTH, Millimetres(drawn.width + 2 * AROUND))
    height = ABOVE + drawn.depth + FOR_REAR + len(drawn.key) * A_LINE + AROUND
    return Rectangle(width=width, depth=Millimetres(height))
