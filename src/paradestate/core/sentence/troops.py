"""Sentences about figures, stands, formations and what is raised."""

from collections.abc import Iterator

from paradestate.core.figure import FigureKind
from paradestate.core.force import Raise, Wishes
from paradestate.core.formation import Formation, Need, Part
from paradestate.core.number import percent_text
from paradestate.core.outline import Disc, Outline, decimal_text, outline_text
from paradestate.core.sentence.wording import (
    by_hand_words,
    capital,
    counted,
    decimal,
    listed,
    plural,
    several,
    window_words,
)
from paradestate.core.stand import USUAL_MARGIN, Sight, StandPattern


def _outline(outline: Outline) -> str:
    if isinstance(outline, Disc):
        return f"a disc of {decimal_text(outline.diameter)} mm"
    return outline_text(outline)


def figure_sentence(figure: FigureKind) -> str:
    """A figure kind in words."""
    height = f", {decimal_text(figure.height)} mm high" if figure.height is not None else ""
    foot = f", standing on {_outline(figure.footprint)}" if figure.footprint else ""
    stands_for = [f"{plural(kind)} ({match})" for kind, match in figure.may_stand_for.items()]
    instead = f"; it may stand for {listed(stands_for)}" if stands_for else ""
    text = f"{capital(figure.name)}: a figure of sort {figure.sort}{height}{foot}{instead}."
    return text + by_hand_words(figure.by_hand)


def stand_sentence(stand: StandPattern) -> str:
    """A stand pattern in words."""
    base = "a model without a base" if stand.base is None else f"on {_outline(stand.base)}"
    clauses = (base, *_shape_clauses(stand), *_crew_clauses(stand), *_table_clauses(stand))
    text = f"{capital(stand.name)}: {'; '.join(clauses)}."
    return text + by_hand_words(stand.by_hand)


def _shape_clauses(stand: StandPattern) -> Iterator[str]:
    if stand.footprint is not None:
        yield f"covering {_outline(stand.footprint)}"
    if stand.edge != USUAL_MARGIN:
        yield f"{decimal_text(stand.edge)} mm free along the rim"
    if stand.gap != USUAL_MARGIN:
        yield f"{decimal_text(stand.gap)} mm between figures"
    if stand.height is not None:
        yield f"{decimal_text(stand.height)} mm high"


def _crew_clauses(stand: StandPattern) -> Iterator[str]:
    if stand.figures:
        yield f"holds {counted(stand.figures)}"
    if stand.men is not None:
        yield f"stands for {'1 man' if str(stand.men) == '1' else f'{stand.men} men'}"
    if stand.printed:
        yield "a printed one suffices"
    if stand.modelled_as:
        yield f"modelled it holds {counted(stand.modelled_as)}"
    if stand.shows:
        yield f"known by its {listed(stand.shows)}"
    if stand.must_not_show:
        yield f"must not hold a {listed(stand.must_not_show, joint='or')}"


def _table_clauses(stand: StandPattern) -> Iterator[str]:
    if stand.carries:
        yield f"carries {several(stand.carries, 'stand')}"
    if stand.stays:
        yield "stays where it starts"
    if stand.called:
        yield f"printed as '{stand.called}'"
    if stand.seen_by_opponent is Sight.NO:
        yield "not seen by the opponent"
    if stand.seen_by_opponent is Sight.WHEN_REVEALED:
        yield "seen by the opponent when revealed"


def formation_sentence(formation: Formation) -> str:
    """A formation in words."""
    arm = f" of {formation.arm}" if formation.arm else ""
    like = f" like {formation.like}" if formation.like else ""
    opening = f"{capital(formation.name)}: a {formation.echelon or 'body'}{arm}{like}"
    clauses = [clause for clause in _formation_clauses(formation) if clause]
    text = f"{'; '.join([opening, *clauses])}."
    return text + by_hand_words(formation.by_hand)


def _formation_clauses(formation: Formation) -> Iterator[str]:
    if formation.parts:
        yield f"made of {listed(part_words(part) for part in formation.parts)}"
    if formation.add:
        yield f"with {listed(part_words(part) for part in formation.add)} added"
    if formation.drop:
        yield f"without {listed(formation.drop)}"
    if formation.men is not None:
        yield f"{formation.men} men are printed" if formation.parts else f"{formation.men} men"
    if formation.men_per_figure is not None:
        yield f"one figure for {decimal(formation.men_per_figure)} men"
    if formation.figure:
        yield f"the figure is the {formation.figure}"
    if formation.figures_per_stand is not None:
        yield f"{several(formation.figures_per_stand, 'figure')} to a stand"
    yield from _body_clauses(formation)


def _body_clauses(formation: Formation) -> Iterator[str]:
    if formation.may_detach:
        yield f"{counted(formation.may_detach)} may leave it and act alone"
    if formation.weak is not None:
        yield f"weak, at {percent_text(formation.weak)} of its numbers"
    if formation.called:
        yield f"printed as '{formation.called}'"


def part_words(part: Part) -> str:
    """A part in words: `2-4 companies (usually 4)`."""
    usual = f" (usually {part.usual})" if part.usual is not None else ""
    wished = " as a wish" if part.need is Need.WISHED else ""
    theatre = f" in {part.theatre}" if part.theatre else ""
    note = f" ({part.by_hand})" if part.by_hand else ""
    return (
        f"{several(part.number, part.of)}{usual}{wished}{window_words(part.window)}{theatre}{note}"
    )


def raise_sentence(raise_: Raise) -> str:
    """What is raised, in words."""
    date = f" of {raise_.date}" if raise_.date else ""
    theatre = f" for {raise_.theatre}" if raise_.theatre else ""
    numbers = f" with {counted(raise_.numbers)}" if raise_.numbers else ""
    names = "".join(
        f"; each {part} is named '{given}'"
        if isinstance(given, str)
        else f"; {plural(part)} are named {listed(given)}"
        for part, given in raise_.names.items()
    )
    wished = "" if raise_.wished is Wishes.NONE else f"; wished: {_wished(raise_)}"
    text = f"Raised: the {raise_.formation}{date}{theatre}{numbers}{names}{wished}."
    return text + by_hand_words(raise_.by_hand)


def _wished(raise_: Raise) -> str:
    return listed(raise_.wished) if isinstance(raise_.wished, tuple) else "everything"
