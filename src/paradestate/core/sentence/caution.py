"""Cautions for work at the bench: common practice, no source; the maker's sheet comes first."""

from dataclasses import dataclass

FIRST = (
    "Common practice, no source. What the maker's own sheet and the rules where you live say "
    "comes before it."
)


@dataclass(frozen=True, slots=True, kw_only=True)
class Caution:
    """What to mind with one sort of thing."""

    about: str
    words: str


CAUTIONS = (
    Caution(
        about="Spray undercoat and varnish",
        words="Out of doors or with a strong draught, far from flames, sparks and heaters; wear a "
        "mask for vapour and gloves; keep cans cool and out of the sun.",
    ),
    Caution(
        about="Solvents and thinners",
        words="Closed when not in use, away from flames, food and children; spread soaked rags out "
        "to dry in the open; nothing down the drain.",
    ),
    Caution(
        about="Dust of resin, metal and filler",
        words="File and sand wet, wear a mask for fine dust, wipe up wet instead of sweeping, and "
        "wash your hands before you eat.",
    ),
    Caution(
        about="Blades and drills",
        words="Cut on a mat and away from the hand that holds; a sharp blade slips less than a "
        "blunt one; cap it, and throw old ones away in a closed tin.",
    ),
    Caution(
        about="Magnets",
        words="Well away from pacemakers and other implants; out of reach of children, for two "
        "that are swallowed are an emergency; away from bank cards and watches.",
    ),
)
