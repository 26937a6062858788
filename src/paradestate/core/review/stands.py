"""Doubts about stands and figures: fit, telltales, likeness, men, units of length, fronts."""

from collections import Counter
from collections.abc import Collection, Iterator
from fractions import Fraction
from functools import cache

from paradestate.core.crowding import footprints_of
from paradestate.core.establishment import establishment
from paradestate.core.finding import Finding, Level
from paradestate.core.fit import MOST_ONE_BY_ONE, Fits, fit, grid_fit
from paradestate.core.force import Force
from paradestate.core.frontage import body_fronts, line_front, opponents_ratio
from paradestate.core.likeness import Alike, Clash, alike, forbidden_telltales, stray_telltales
from paradestate.core.money import half_up
from paradestate.core.outline import (
    MILLIMETRES_PER_INCH,
    Disc,
    Millimetres,
    Outline,
    Rectangle,
    decimal_text,
    outline_text,
)
from paradestate.core.place import Place, nearest_place
from paradestate.core.review.rule import Rule
from paradestate.core.sentence.wording import counted, several
from paradestate.core.stand import StandPattern


def _place(force: Force, *path: str) -> Place:
    return nearest_place(force.places, path)


def figures_that_do_not_fit(force: Force) -> Iterator[Finding]:
    """Figures for which no place is found on their stand."""
    placings = cache(fit)  # for this force: many kinds of stand have the same base and figures
    for stand in force.stands.values():
        numbers = footprints_of(stand, figures=force.figures)
        if stand.base is None or not numbers or sum(numbers.values()) > MOST_ONE_BY_ONE:
            continue
        if _side_below_a_figure(stand, numbers) is not None:
            continue
        footprints = [each for each, number in numbers.items() for _ in range(number)]
        placed = placings(stand.base, tuple(footprints), edge=stand.edge, gap=stand.gap)
        if placed.fits is Fits.YES:
            continue
        number = _most_that_fit(stand, footprints) or len(placed.spots)
        sure = "" if placed.fits is Fits.NO else " (no place was found by trying)"
        yield Finding(
            level=Level.WARN,
            code="figures-do-not-fit",
            message=f"{stand.name}: {_said(footprints)} don't fit {outline_text(stand.base)} with "
            f"{decimal_text(stand.edge)} mm edges; {number} do{sure}.",
            effect="They would hang over the rim or touch each other.",
            hint="Take fewer figures or a larger base, or give a smaller 'edge' or 'gap'.",
            place=_place(force, "stands", stand.name, "figures"),
        )


def _most_that_fit(stand: StandPattern, footprints: list[Outline]) -> int | None:
    """How many equal discs fit a rectangle in rows; None for anything else."""
    kind = footprints[0]
    if not isinstance(stand.base, Rectangle) or not isinstance(kind, Disc):
        return None
    if len(set(footprints)) > 1:
        return None
    return grid_fit(stand.base, kind, edge=stand.edge, gap=stand.gap)


def _said(footprints: list[Outline]) -> str:
    sizes = Counter(outline_text(each).removesuffix(" disc") for each in footprints)
    return " and ".join(f"{several(number, 'figure')} of {size}" for size, number in sizes.items())


def telltales(force: Force) -> Iterator[Finding]:
    """Telltales on stands that must not show them, or that could be taken for another."""
    for clash in forbidden_telltales(force.stands):
        yield _clash(force, clash, code="telltale-forbidden")
    for clash in stray_telltales(force.stands):
        yield _clash(force, clash, code="telltale-astray")


def _clash(force: Force, clash: Clash, *, code: str) -> Finding:
    marks = f", the figure that marks the {' and the '.join(clash.known_by_it)}"
    return Finding(
        level=Level.WARN,
        code=code,
        message=f"{clash.stand} holds a {clash.figure}{marks if clash.known_by_it else ''}.",
        effect=f"Players will take it for {_or_another(clash)}.",
        hint="Change the figure, or agree it with your opponent.",
        place=_place(force, "stands", clash.stand, "figures", clash.figure),
        related=tuple(_place(force, "stands", name, "shows") for name in clash.known_by_it),
    )


def _or_another(clash: Clash) -> str:
    return " or ".join(clash.known_by_it) or "another kind of stand"


def unseen_telltales(force: Force) -> Iterator[Finding]:
    """A stand said to be known by a figure that it doesn't hold."""
    for stand in force.stands.values():
        for number, figure in enumerate(stand.shows, start=1):
            if figure not in stand.figures and figure not in stand.modelled_as:
                yield Finding(
                    level=Level.WARN,
                    code="telltale-missing",
                    message=f"{stand.name} is known by a {figure}, and holds none.",
                    effect="Nobody can know it by that figure.",
                    hint="Add the figure, or take it out of 'shows'.",
                    place=_place(force, "stands", stand.name, "shows", str(number)),
                )


def stands_alike(force: Force) -> Iterator[Finding]:
    """Two kinds of stand that look the same."""
    for pair in alike(force.stands):
        yield Finding(
            level=Level.WARN,
            code="stands-alike",
            message=f"{pair.one} and {pair.other} are both {_described(force, pair)}.",
            effect="Nothing tells them apart but the rear mark.",
            hint="Give one another base or figure, or name a telltale under 'shows'.",
            place=_place(force, "stands", pair.other),
            related=(_place(force, "stands", pair.one),),
        )


def _described(force: Force, pair: Alike) -> str:
    one, other = force.stands[pair.one], force.stands[pair.other]
    ending = "s" if isinstance(pair.outline, Disc) else ""
    size = f"{outline_text(pair.outline)}{ending}"
    base = size if one.base is not None else "models without a base"
    held = counted(Counter(one.figures) & Counter(other.figures))
    return f"{base} with {held or 'one figure'}{'' if pair.same_figures else ' and one other'}"


def men_fewer_than_figures(force: Force) -> Iterator[Finding]:
    """Less than one man to a figure."""
    for stand in force.stands.values():
        figures = sum(stand.figures.values())
        if stand.men is not None and 0 < stand.men.most < figures:
            yield Finding(
                level=Level.WARN,
                code="men-fewer-than-figures",
                message=f"{stand.name}: {stand.men} men but {figures} figures.",
                effect="That is less than one man to a figure.",
                hint="Look at 'men' and 'figures' again.",
                place=_place(force, "stands", stand.name, "men"),
            )


def lengths_in_another_unit(force: Force) -> Iterator[Finding]:
    """A stand smaller than one of its figures: inches or centimetres typed as millimetres."""
    for stand in force.stands.values():
        numbers = footprints_of(stand, figures=force.figures)
        side = _side_below_a_figure(stand, numbers or {})
        if side is None:
            continue
        size = decimal_text(side)
        inches = Fraction(half_up(side * MILLIMETRES_PER_INCH * 10), 10)
        yield Finding(
            level=Level.WARN,
            code="smaller-than-a-figure",
            message=f"{stand.name}: {size} mm is smaller than a figure.",
            effect="No figure fits on it.",
            hint=f"Did you mean {size} inches ({decimal_text(inches)} mm) or {size} cm?",
            place=_place(force, "stands", stand.name, "base"),
        )


def _side_below_a_figure(
    stand: StandPattern, footprints: Collection[Outline]
) -> Millimetres | None:
    """A side of the base, front first, that is smaller than its largest figure is narrow."""
    if stand.base is None or not footprints:
        return None
    largest = max(min(_sides(each)) for each in footprints)
    return next((side for side in _sides(stand.base) if side < largest), None)


def _sides(outline: Outline) -> tuple[Millimetres, Millimetres]:
    if isinstance(outline, Disc):
        return outline.diameter, outline.diameter
    return outline.width, outline.depth


def opponents_front(force: Force) -> Iterator[Finding]:
    """A platoon of the other side that covers much more or less than ours."""
    opponent = force.opponent
    if opponent is None or opponent.front is None:
        return
    made, _ = establishment(force)
    if made is None:
        return
    for front in body_fronts(force, made):
        ratio = opponents_ratio(front.front, opponent)
        if ratio is None or abs(ratio - 1) <= opponent.difference_allowed:
            continue
        his = line_front(opponent.front.width, number=opponent.front.number, gap=opponent.gap)
        percent = half_up(abs(ratio - 1) * 100)
        yield Finding(
            level=Level.WARN,
            code="fronts-differ",
            message=f"His platoon covers {decimal_text(his)} mm, your {front.formation} "
            f"{decimal_text(front.front)} mm ({percent}% {'more' if ratio > 1 else 'less'}).",
            effect="The same ground holds more troops of one side.",
            hint="Agree a gap or a number of stands.",
            place=_place(force, "opponent", "front"),
        )


RULES: tuple[Rule, ...] = (
    figures_that_do_not_fit,
    telltales,
    unseen_telltales,
    stands_alike,
    men_fewer_than_figures,
    lengths_in_another_unit,
    opponents_front,
)
