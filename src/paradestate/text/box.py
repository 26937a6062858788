"""What stands on a box, in a newcomer's words: `one box: 32 riflemen, 4 officers`."""

import re
from collections.abc import Iterable, Mapping

from paradestate.core.sentence.wording import plural
from paradestate.text.slip import Slip
from paradestate.text.spelling import nearest_hint, tidy

MOST_KINDS = 20
MOST_FIGURES = 100_000

_BOXES = re.compile(
    r"^\s*(?:(?P<number>\d{1,3}|one|a|two|three|four)\s+)?box(?:es)?\s*(?:of|:)\s*", re.IGNORECASE
)
_BOX_WORDS = {"one": 1, "a": 1, "two": 2, "three": 3, "four": 4}
_PARTING = re.compile(r"\s*(?:,|;|\n|\+|\band\b|&)\s*", re.IGNORECASE)
_PIECE = re.compile(r"(?P<number>\d{1,9})\s*(?:x\s+)?(?P<name>\D.*)", re.DOTALL)


def read_box(text: str, *, kinds: Iterable[str]) -> Mapping[str, int] | Slip:
    """Figure kind to number; an empty text is an empty box.

    A kind is known by its name or its plural. Any other name is a slip: nothing is guessed.
    """
    names = tuple(kinds)
    known = {form.casefold(): kind for kind in names for form in (kind, plural(kind))}
    boxes, rest = _boxes(tidy(text))
    found: dict[str, int] = {}
    for piece in (each for each in _PARTING.split(rest.rstrip(". ")) if each):
        match = _PIECE.fullmatch(piece)
        if match is None:
            return _no_number(piece, names)
        kind = known.get(" ".join(match["name"].split()).casefold())
        if kind is None:
            return _unknown(match["name"], names)
        found[kind] = found.get(kind, 0) + int(match["number"]) * boxes
    if sum(found.values()) > MOST_FIGURES:
        return Slip(
            code="absurd-number",
            message=f"{sum(found.values())} figures are more than anybody owns.",
            hint=f"Look at the numbers again; {MOST_FIGURES} are the most.",
            effect=NOTHING_MADE,
        )
    return {kind: number for kind, number in found.items() if number}


NOTHING_MADE = "Nothing is made until this is settled."


def _boxes(text: str) -> tuple[int, str]:
    """How many boxes there are, and what stands behind that."""
    match = _BOXES.match(text)
    if match is None:
        return 1, text
    said = (match["number"] or "1").casefold()
    return _BOX_WORDS.get(said) or int(said), text[match.end() :]


def _no_number(piece: str, kinds: tuple[str, ...]) -> Slip:
    return Slip(
        code="box-without-number",
        message=f"'{piece}' doesn't say how many.",
        hint=f"Write a number and a kind, such as '32 {plural(kinds[0])}'.",
        effect=NOTHING_MADE,
    )


def _unknown(name: str, kinds: tuple[str, ...]) -> Slip:
    return Slip(
        code="unknown-name",
        message=f"'{name}' isn't a kind of figure here yet.",
        hint=f"{nearest_hint(name, kinds)} Leave it out for now: other kinds are added afterwards, "
        "under Files.",
        effect=NOTHING_MADE,
    )
