"""Words about marks: a mark, a difference, who bears it, and how sure that is."""

from collections.abc import Sequence

from paradestate.core.mark.code import Mark
from paradestate.core.mark.difference import THRESHOLD, Pair, Viewer
from paradestate.core.mark.reading import PLAIN, Doubt, MarkRead, Reading
from paradestate.core.mark.unit import Unit
from paradestate.core.sentence.wording import listed, several, spelled
from paradestate.core.unfolding import capitals, spoken

SEEN_BY = {
    Viewer.USUAL: "most people",
    Viewer.RED_WEAK: "a red-weak viewer",
    Viewer.GREEN_WEAK: "a green-weak viewer",
    Viewer.BLUE_WEAK: "a blue-weak viewer",
    Viewer.GREY: "anybody in grey",
}
"""A viewer within a sentence."""

HEADINGS = {
    Viewer.USUAL: "As most see",
    Viewer.RED_WEAK: "Red-weak",
    Viewer.GREEN_WEAK: "Green-weak",
    Viewer.BLUE_WEAK: "Blue-weak",
    Viewer.GREY: "In grey",
}
"""A viewer over a picture."""

MOST_NAMED = 3
"""Pairs that a sentence names."""

SAFE = 2
"""Parts in which marks have to differ, so that one misread never names another unit."""

DIFFERS = (
    "What is worked out here is close to what an eye sees, and isn't what it sees: paint under "
    "varnish and the light of a hall differ from these numbers. Paint one stand of each and look."
)
"""How sure a difference is."""


def difference_text(hundredths: int) -> str:
    """A difference with one decimal; never rounded up to the least that is enough."""
    tenths = (hundredths + 5) // 10
    if hundredths < THRESHOLD <= tenths * 10:
        tenths = THRESHOLD // 10 - 1
    return f"{tenths // 10}.{tenths % 10}"


def mark_words(mark: Mark) -> str:
    """What is seen of a mark: `mid yellow, three bars, cross`."""
    bars = f"{spelled(mark.bars)} {'bar' if mark.bars == 1 else 'bars'}"
    if not mark.colour:
        check = f", number {mark.bars}" if mark.bars else ""
        return f"{PLAIN}, {bars}{check}"
    rear = ", rear bar" if mark.has_rear_bar else ""
    return f"{mark.colour}, {bars}, {mark.sign}{rear}"


def unit_words(unit: Unit, *, whole: str) -> str:
    """A unit by its full name: `No 2 Company, 3 Platoon`; `whole` is the raised formation."""
    if not unit.name:
        return f"{capitals(whole)} troops"
    name = spoken(unit.name)
    is_own = unit.company is not None and not unit.bars
    return f"{name}, own troops" if is_own else name


def pair_words(pair: Pair) -> str:
    """Two colours: `royal blue and brown`."""
    return f"{pair.one} and {pair.other}"


def least_words(pair: Pair) -> str:
    """Who sees two colours most alike, and how far apart."""
    return f"{difference_text(pair.least)}: {pair_words(pair)} to {SEEN_BY[pair.weakest]}"


def grey_sentence(pairs: Sequence[Pair]) -> str:
    """Which colours run together in grey, so that signs or bars have to tell them apart."""
    alike = sorted(
        (pair for pair in pairs if pair.is_alike_in_grey),
        key=lambda pair: pair.by_viewer[Viewer.GREY],
    )
    if not alike:
        return "In grey no two run together."
    named = [
        f"{pair_words(pair)} ({difference_text(pair.by_viewer[Viewer.GREY])})" for pair in alike
    ]
    if len(named) > MOST_NAMED:
        named[MOST_NAMED - 1 :] = [several(len(named) - MOST_NAMED + 1, "more pair")]
    return f"In grey {listed(named)} run together: there sign and bars tell, not colour."


def check_sentence(apart: int, *, signs: int) -> str:
    """What one misread part of a mark does."""
    if apart < SAFE:
        return "Some marks differ in one part alone: misread it, and it is another unit's."
    return (
        f"Any two marks differ in {spelled(apart)} parts of colour, bars and sign: misread one, "
        f"and the sign isn't the one of {signs} that is due."
    )


def read_words(read: MarkRead) -> str:
    """What was read: `mid yellow, three bars`."""
    parts = []
    if read.colours:
        parts.append(listed((name or PLAIN for name in read.colours), joint="or"))
    if read.bars is not None:
        parts.append(f"{spelled(read.bars)} {'bar' if read.bars == 1 else 'bars'}")
    if read.sign is not None:
        parts.append(str(read.sign))
    return ", ".join(parts)


def reading_sentence(found: Reading, *, whole: str) -> str:
    """Whose mark it is, or what is in the way."""
    said = read_words(found.read)
    match found.doubt:
        case Doubt.NONE:
            return unit_words(found.bearers[0].unit, whole=whole)
        case Doubt.SEVERAL:
            return f"{said.capitalize()}: {len(found.bearers)} units bear that. Read one part more."
        case Doubt.MISREAD:
            return (
                f"Nobody bears {said}: one part of it is misread. With one other part it is one of "
                f"these {len(found.bearers)}."
            )
        case Doubt.NOBODY:
            return f"Nobody bears {said}."
        case Doubt.UNKNOWN_WORD:
            unknown = listed((f"'{word}'" for word in found.read.unknown), joint="and")
            return f"{unknown} is no colour of these marks, and no sign."
        case Doubt.NOTHING_READ:
            return "Say what you see: a colour, a number of bars, a sign."
