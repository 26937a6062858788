"""How a stage of completion looks: rising cover of ink, so that a photocopy still tells them apart.

Missing is a dashed outline, in the packet dots, finished solid; the stages between are rules that
come closer, the last of them crossed. All lengths are in millimetres of the drawing.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from paradestate.sheet.svg import Drawing, Element, Length, drawing, element

INK = "var(--ink)"
RULE = "var(--rule)"
SHEET = "var(--sheet)"

_WIDEST, _CLOSEST = 6.0, 3.6
"""Distance between rules of the first and the last stage that has plain rules."""

_THINNEST, _THICKEST = 1.1, 1.25

_CROSS, _CROSS_THICK = 4.4, 1.15
"""Of the last stage before finished: about 45 in 100 covered, lighter than any colour."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Texture:
    """The look of one stage."""

    fill: str
    stroke: str = INK
    dash: str | None = None

    @property
    def is_solid(self) -> bool:
        """Whether it is the look of what is finished."""
        return self.fill == INK


MISSING = Texture(fill="none", stroke=RULE, dash="3 2.6")

FINISHED = Texture(fill=INK)


def texture_of(stage: str | None, *, stages: Sequence[str]) -> Texture:
    """The look of a stage; None is missing, and the last stage is finished."""
    if stage is None or stage not in stages:
        return MISSING
    place = stages.index(stage)
    return FINISHED if place == len(stages) - 1 else Texture(fill=f"url(#tx-{place})")


def patterns(stages: Sequence[str]) -> Drawing:
    """The patterns of all stages, to stand once on a page, before any drawing that uses them."""
    made = [_pattern(f"tx-{place}", _marks(place, stages)) for place in range(len(stages) - 1)]
    defs = element("defs", *made, *lacking_pattern())
    return drawing([defs], size=(1, 1), words="textures", class_="vh", is_hidden=True)


def lacking_pattern() -> Iterator[Element]:
    """The red rules of figures that are lacking."""
    yield _pattern("tx-lack", _Marks(step=7, thick=2.2, colour="var(--red)"))


@dataclass(frozen=True, slots=True, kw_only=True)
class _Marks:
    step: Length
    thick: Length
    is_dots: bool = False
    is_crossed: bool = False
    colour: str = INK


def _marks(place: int, stages: Sequence[str]) -> _Marks:
    """What covers the stand at a stage that isn't the last."""
    last = len(stages) - 2
    if place == 0:
        return _Marks(step=5, thick=0.6, is_dots=True)
    if place == last:
        return _Marks(step=_CROSS, thick=_CROSS_THICK, is_crossed=True)
    share = (place - 1) / max(1, last - 2)
    return _Marks(
        step=_WIDEST + (_CLOSEST - _WIDEST) * share,
        thick=_THINNEST + (_THICKEST - _THINNEST) * share,
    )


def _pattern(name: str, marks: _Marks) -> Element:
    if marks.is_dots:
        half = float(marks.step) / 2
        drawn = element("circle", cx=half, cy=half, r=marks.thick, fill=marks.colour)
    else:
        across = f"M0 0H{marks.step:.2f}" if marks.is_crossed else ""
        drawn = element(
            "path",
            d=f"M0 0V{marks.step:.2f}{across}",
            stroke=marks.colour,
            stroke_width=marks.thick,
        )
    made = element("pattern", drawn, id=name, width=marks.step, height=marks.step)
    made.set("patternUnits", "userSpaceOnUse")
    if not marks.is_dots:
        made.set("patternTransform", "rotate(45)")
    return made
