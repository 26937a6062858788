"""What is wrong or doubtful about stands and their trays, as findings."""

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass

from paradestate.core.finding import Finding, Level
from paradestate.core.force import Force
from paradestate.core.outline import decimal_text
from paradestate.core.place import nearest_place
from paradestate.core.sentence.tray import case_words, size_words, thing_words, too_low_sentence
from paradestate.core.sentence.wording import capital, listed, several
from paradestate.core.tray.clearance import Breach, Rule
from paradestate.core.tray.content import MOST_CASES, MOST_THINGS
from paradestate.core.tray.packed import Relaid
from paradestate.core.tray.plan import Misfit, TrayPlan, Want
from paradestate.core.tray.thing import Case, Thing

FEW = 3
"""Names that are said where there are more."""


def no_trays(force: Force) -> Finding:
    """The stop where the folder has no trays."""
    return Finding(
        level=Level.STOP,
        code="no-trays",
        message="No trays are given.",
        effect="Nothing is laid anywhere.",
        hint="Write them down: trays: {case: {inside: 300 x 200 mm, height: 40 mm, gap: 2 mm, "
        "number: 2}}.",
        place=nearest_place(force.places, ("trays",)),
    )


def too_many_things(force: Force, number: int) -> Finding:
    """The stop where there are more stands than are laid out."""
    return Finding(
        level=Level.STOP,
        code="too-many-to-lay",
        message=f"{number:,} stands are to go into trays; {MOST_THINGS} is the most laid out.",
        effect="Nothing is laid anywhere.",
        hint="Raise a smaller formation, or lay out what is finished with --finished.",
        place=nearest_place(force.places, ("raise", "formation")),
    )


def ground_findings(
    force: Force, *, cases: Sequence[Case], things: Sequence[Thing], sizeless: Mapping[str, int]
) -> Iterator[Finding]:
    """What isn't known: sizes, heights; and trays that are left out of account."""
    number = sum(tray.number for tray in force.trays.values())
    if number > MOST_CASES:
        yield _trays_left_out(force, number)
    for pattern, count in sizeless.items():
        yield Finding(
            level=Level.WARN,
            code="size-unsaid",
            message=f"{capital(pattern)}: nobody says how large it is.",
            effect=f"{several(count, 'stand')} of it lie in no tray.",
            hint=f"Give '{pattern}' a 'base', or a 'footprint' where it has none.",
            place=nearest_place(force.places, ("stands", pattern)),
        )
    yield from _heights_unsaid(force, cases=cases, things=things)


def _trays_left_out(force: Force, number: int) -> Finding:
    return Finding(
        level=Level.WARN,
        code="trays-left-out",
        message=f"{number:,} trays are given; the first {MOST_CASES} are tried.",
        effect="Stands that have no place in these lie in none.",
        hint="Give fewer.",
        place=nearest_place(force.places, ("trays",)),
    )


def _heights_unsaid(
    force: Force, *, cases: Sequence[Case], things: Sequence[Thing]
) -> Iterator[Finding]:
    """A remark where a lid can't be held against what is below it."""
    open_kinds = dict.fromkeys(case.kind for case in cases if case.height is None)
    patterns = dict.fromkeys(thing.pattern for thing in things if thing.height is None)
    if open_kinds:
        names = listed(capital(kind) for kind in open_kinds)
        message = f"{names}: the clear height isn't said."
        place = ("trays", next(iter(open_kinds)))
        hint = "Measure from the floor to the lid and write it as 'height' of the tray."
    elif patterns:
        message = f"The height of {_some(patterns)} isn't said."
        place = ("stands", next(iter(patterns)))
        hint = "Measure with flags and aerials, and write it as 'height' of the stand."
    else:
        return
    yield Finding(
        level=Level.REMARK,
        code="height-unsaid",
        message=message,
        effect="Whether everything goes under the lid isn't known.",
        hint=hint,
        place=nearest_place(force.places, place),
    )


def _some(names: Iterable[str]) -> str:
    every = list(names)
    if len(every) <= FEW:
        return listed(every)
    return listed([*every[:FEW], f"{len(every) - FEW} more"])


def misfit_findings(force: Force, plan: TrayPlan) -> Iterator[Finding]:
    """Everything without a place, alike stands together, and which trays would do."""
    together: dict[tuple[str, Want], list[Misfit]] = {}
    for misfit in plan.misfits:
        together.setdefault((misfit.thing.pattern, misfit.want), []).append(misfit)
    for (pattern, want), alike in together.items():
        made = _MISFITS[want](alike)
        yield Finding(
            level=made.level,
            code=made.code,
            message=made.message,
            effect=_without(alike),
            hint=made.hint,
            place=nearest_place(force.places, ("stands", pattern)),
        )


def _without(alike: Sequence[Misfit]) -> str:
    if len(alike) == 1:
        return "It has no place in any tray."
    return f"{several(len(alike), 'stand')} of it have no place in any tray."


@dataclass(frozen=True, slots=True, kw_only=True)
class _Said:
    """What is said of stands that have no place for one reason."""

    level: Level
    code: str
    message: str
    hint: str


def _too_high(alike: Sequence[Misfit]) -> _Said:
    thing, cases = alike[0].thing, alike[0].too_low
    kinds = {case.kind: case for case in reversed(cases)}
    lowest = decimal_text(thing.height) if thing.height is not None else ""
    return _Said(
        level=Level.STOP,
        code="tray-too-low",
        message=too_low_sentence(thing, reversed(kinds.values())),
        hint=f"A tray that is {lowest} mm clear would do; or make the stand lower.",
    )


def _too_large(alike: Sequence[Misfit]) -> _Said:
    misfit = alike[0]
    size = size_words(misfit.thing)
    low = f" {too_low_sentence(misfit.thing, misfit.too_low)}" if misfit.too_low else ""
    return _Said(
        level=Level.WARN,
        code="larger-than-tray",
        message=f"{thing_words(misfit.thing)}, {size}, is larger than every tray.{low}",
        hint=f"A tray of {size} inside, or more, would do.",
    )


def _no_room(alike: Sequence[Misfit]) -> _Said:
    homes = {case.kind: case for case in reversed(alike[0].would_do)}
    names = listed((case_words(case) for case in reversed(homes.values())), joint="or")
    return _Said(
        level=Level.WARN,
        code="no-place-left",
        message=f"{_some(thing_words(each.thing) for each in alike)}: no place is left.",
        hint=f"One more of these would do: {names}.",
    )


_MISFITS = {Want.TOO_HIGH: _too_high, Want.TOO_LARGE: _too_large, Want.NO_ROOM: _no_room}


def relaid_findings(force: Force, relaid: Relaid) -> Iterator[Finding]:
    """What of a kept arrangement doesn't hold any more, and what it doesn't know."""
    place = nearest_place(force.places, ("packed",))
    if relaid.astray:
        yield Finding(
            level=Level.WARN,
            code="packed-astray",
            message=f"'packed' names what isn't there to be laid: {_some(relaid.astray)}.",
            effect="These places are left free.",
            hint="Keep the arrangement anew, or take these names out.",
            place=place,
        )
    for case, breach in relaid.broken:
        yield Finding(
            level=Level.WARN,
            code="packed-no-more",
            message=breach_sentence(case, breach),
            effect="It was given another place where there was one.",
            hint="Look at the tray, and keep the arrangement anew.",
            place=nearest_place(force.places, ("packed", case.name, breach.lying.thing.name)),
        )
    if relaid.added:
        yield Finding(
            level=Level.REMARK,
            code="packed-too",
            message=f"'packed' says nothing of {_some(relaid.added)}.",
            effect="Each was given a place that was left, where there was one.",
            hint="Look where they lie, and keep the arrangement anew.",
            place=place,
        )


def breach_sentence(tray: Case, breach: Breach) -> str:
    """The rule that a place breaks."""
    thing = breach.lying.thing
    match breach.rule:
        case Rule.TOO_HIGH:
            return too_low_sentence(thing, (tray,))
        case Rule.OUTSIDE:
            return f"{thing_words(thing)} would reach beyond a side of {capital(tray.name)}."
        case Rule.TOO_NEAR:
            other = "another" if breach.other is None else thing_words(breach.other.thing)
            gap = decimal_text(tray.gap)
            return f"{thing_words(thing)} would lie within {gap} mm of {other}."
