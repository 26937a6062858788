"""How much room a text takes in a drawing, near enough to keep texts apart.

A drawing is made where no font is at hand, so widths are those of the page's face rounded up: no
letter of usual text is wider. Imports nothing of the project.
"""

SIZE = 14
"""Units that a letter of a drawing is high, at the least."""

NARROW = frozenset("iIjl1.,:;'!|()[] ft-")
BROAD = frozenset("mwMW@%—…")
NARROW_SHARE, USUAL_SHARE, BROAD_SHARE = 0.36, 0.6, 0.92
"""Widths as shares of the size (measured on the page's face, rounded up)."""

HAIR = 0.01
"""Less than this isn't seen: sums of widths are never quite exact."""

DOTS = "…"


def width_of(text: str, *, size: float = SIZE) -> float:
    """The width of a text, a little more rather than less."""
    return size * sum(map(_share, text))


def _share(letter: str) -> float:
    if letter in NARROW:
        return NARROW_SHARE
    if letter in BROAD or ord(letter) > 0x2E7F:  # noqa: PLR2004 - wide scripts begin here
        return BROAD_SHARE
    return USUAL_SHARE


def fitted(text: str, *, room: float, size: float = SIZE) -> str:
    """The text, or as much of it as there is room for, with three dots at its end."""
    if width_of(text, size=size) <= room + HAIR:
        return text
    kept = text
    while kept and width_of(kept + DOTS, size=size) > room:
        kept = kept[:-1]
    return kept.rstrip() + DOTS


def wrapped(
    text: str, *, room: float, size: float = SIZE, most: int | None = None
) -> tuple[str, ...]:
    """The text in as few lines as there is room for, broken between words.

    A word too long for a line is cut, and so is the last of at `most` so many lines.
    """
    lines: list[str] = []
    taken, blank = 0.0, width_of(" ", size=size)
    for word in text.split(" "):
        wide = width_of(word, size=size)
        if lines and taken + blank + wide <= room + HAIR:
            lines[-1] += f" {word}"
            taken += blank + wide
        else:
            lines.append(word)
            taken = wide
    if most is not None and len(lines) > most:
        lines[most - 1 :] = [" ".join(lines[most - 1 :])]
    return tuple(fitted(line, room=room, size=size) for line in lines)
