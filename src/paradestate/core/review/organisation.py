"""Doubts about the organisation: loops, windows, layers, numbers and bodies without stands."""

import datetime
from collections.abc import Iterator, Mapping, Sequence
from functools import cache
from itertools import combinations, pairwise

from paradestate.core.finding import Finding, Level
from paradestate.core.force import Force
from paradestate.core.formation import Echelon, Need, Part
from paradestate.core.place import KeyPath, Place, nearest_place
from paradestate.core.review.rule import Rule
from paradestate.core.sentence.wording import plural
from paradestate.core.structure import structure, tangle_finding, tangle_from
from paradestate.core.variant import Composition, Compositions, LocatedPart, compositions

ONE_DAY = datetime.timedelta(days=1)

ABSURD_BODIES = 20
"""So many formations, or more, in one are taken for a slip (common practice, no source)."""

ABSURD_STANDS = 50
"""So many stands, or more, of one kind in one formation are taken for a slip (likewise)."""

DOUBLE_DIGIT = 11
"""Two digits alike from 22 up look like a digit typed twice."""


def _sound(force: Force) -> Compositions:
    """The compositions where no formation contains itself or too many others, else nothing."""
    made, _ = compositions(force)
    if any(tangle_from(made, name) for name in made):
        return {}
    return made


def variants(force: Force) -> Iterator[Finding]:
    """What `like`, `add` and `drop` can't do."""
    yield from compositions(force)[1]


def loops(force: Force) -> Iterator[Finding]:
    """A formation that contains itself, each loop once; or the first that is too deep."""
    made, _ = compositions(force)
    said: set[frozenset[str]] = set()
    for name in made:
        tangle = tangle_from(made, name)
        if tangle is None or tangle[0] != name:
            continue
        members = frozenset(tangle if tangle[-1] == name else ())
        if members not in said:
            said.add(members)
            yield tangle_finding(force, tangle)


def choices(force: Force) -> Iterator[Finding]:
    """What prevents the raised formation from being counted: dates, ranges, theatres."""
    if _sound(force):
        own = {finding.code for finding in compositions(force)[1]}
        yield from (found for found in structure(force)[1] if found.code not in own)


def _parts(force: Force) -> Iterator[tuple[Composition, LocatedPart]]:
    """Every part where it was written, once."""
    for name, composition in compositions(force)[0].items():
        for located in composition.parts:
            if located.path[1] == name:
                yield composition, located


def _place(force: Force, path: KeyPath) -> Place:
    return nearest_place(force.places, path)


def backward_windows(force: Force) -> Iterator[Finding]:
    """A window that ends before it begins, of a part or of supporting troops."""
    windows = [(located.part.of, located.part.window, located.path) for _, located in _parts(force)]
    windows.extend(
        (entry.name, entry.window, ("supporting troops", entry.name))
        for entry in force.supporting_troops.values()
    )
    windows.append(("covers", force.covers, ("covers",)))
    for name, window, path in windows:
        if window.last < window.first:
            yield Finding(
                level=Level.STOP,
                code="window-backwards",
                message=f"{name}: from {window.first.isoformat()} to {window.last.isoformat()} "
                "ends before it begins.",
                effect="It is never in force.",
                hint=f"Did you mean from {window.ends} until {window.begins}?",
                place=_place(force, (*path, "until")),
                related=(_place(force, (*path, "from")),),
            )


def usual_numbers(force: Force) -> Iterator[Finding]:
    """A usual number outside its own range."""
    for composition, located in _parts(force):
        part = located.part
        if part.usual is not None and part.usual not in part.number:
            yield Finding(
                level=Level.STOP,
                code="number-outside-range",
                message=f"{composition.formation.name}: the usual number of {part.of} is "
                f"{part.usual}, which isn't within {part.number}.",
                effect="Nothing is counted until this is settled.",
                hint=f"Choose a number from {part.number.least} to {part.number.most}.",
                place=_place(force, (*located.path, "usual")),
            )


def _dated(force: Force) -> Iterator[tuple[Composition, str, list[LocatedPart]]]:
    """Parts of the same thing in the same theatre that all have a window, in order of dates."""
    for composition in compositions(force)[0].values():
        groups: dict[tuple[str, str], list[LocatedPart]] = {}
        for located in composition.parts:
            groups.setdefault((located.part.of, located.part.theatre), []).append(located)
        for (name, _), group in groups.items():
            if len(group) > 1 and not any(located.part.window.is_open for located in group):
                yield composition, name, sorted(group, key=_first_day)


def _first_day(located: LocatedPart) -> datetime.date:
    return located.part.window.first


def window_overlaps(force: Force) -> Iterator[Finding]:
    """Two windows of the same part that hold on the same days."""
    for composition, name, group in _dated(force):
        for one, other in combinations(group, 2):
            first = max(one.part.window.first, other.part.window.first)
            last = min(one.part.window.last, other.part.window.last)
            if first <= last and other.path[1] == composition.formation.name:
                yield _overlap(force, name, one=one, other=other, days=(first, last))


def _overlap(
    force: Force,
    name: str,
    *,
    one: LocatedPart,
    other: LocatedPart,
    days: tuple[datetime.date, datetime.date],
) -> Finding:
    both = one.part.number + other.part.number
    return Finding(
        level=Level.WARN,
        code="windows-overlap",
        message=f"{name}: {_spoken(one.part)} and {_spoken(other.part)} both hold from "
        f"{days[0].isoformat()} to {days[1].isoformat()}, which would give {both}.",
        effect="On those days both are counted.",
        hint="Which day is the change? End the one on the day before the other begins.",
        place=_place(force, other.path),
        related=(_place(force, one.path),),
    )


def _spoken(part: Part) -> str:
    window = part.window
    sides = []
    if window.begins is not None:
        sides.append(f"from {window.first.isoformat()}")
    if window.ends is not None:
        sides.append(f"until {window.last.isoformat()}")
    return f"{part.number} ({', '.join(sides)})"


def window_gaps(force: Force) -> Iterator[Finding]:
    """Days between two windows of the same part on which none is in force."""
    for composition, name, group in _dated(force):
        for before, after in pairwise(group):
            end, begin = before.part.window.last, after.part.window.first
            if begin - end <= ONE_DAY or after.path[1] != composition.formation.name:
                continue
            yield Finding(
                level=Level.WARN,
                code="windows-gap",
                message=f"No {name} is in force between {end.isoformat()} and {begin.isoformat()}.",
                effect=f"Forces dated then have a {composition.formation.name} without.",
                hint="Let the one end on the day before the other begins.",
                place=_place(force, after.path),
                related=(_place(force, before.path),),
            )


def must_under_wished(force: Force) -> Iterator[Finding]:
    """A part written as must below something that is only wished wherever it is used."""
    made = _sound(force)
    raised = force.raise_.formation if force.raise_ else ""
    needs: dict[str, set[Need]] = {}
    for composition in made.values():
        for located in composition.parts:
            needs.setdefault(located.part.of, set()).add(located.part.need)
    for name, composition in made.items():
        if name == raised or needs.get(name) != {Need.WISHED}:
            continue
        for located in composition.parts:
            place = force.places.get((*located.path, "need"))
            if located.part.need is Need.MUST and place is not None:
                yield Finding(
                    level=Level.REMARK,
                    code="must-under-wished",
                    message=f"{located.part.of} in {name} is marked must, but {name} is only "
                    "wished.",
                    effect="Counted as wished.",
                    hint=f"Make {name} must where it is a part, or take 'need: must' out.",
                    place=place,
                )


def bodies_without_stands(force: Force) -> Iterator[Finding]:
    """A formation that puts nothing on the table, in a force that has stands."""
    made = _sound(force)
    if not force.stands:
        return
    filled = _with_stands(force, made)
    for name, composition in made.items():
        dangling = any(
            located.part.of not in made and located.part.of not in force.stands
            for located in composition.parts
        )
        if name not in filled and not dangling and not _shares_figures(made, name):
            yield Finding(
                level=Level.WARN,
                code="no-stands",
                message=f"{name} has no stands.",
                effect="It will be on paper and never on the table.",
                hint="Give it parts that are stands, or take it out.",
                place=_place(force, ("formations", name)),
            )


def _with_stands(force: Force, made: Compositions) -> set[str]:
    """The formations below which some stand is."""
    filled: set[str] = set()
    grew = True
    while grew:
        more = {
            name
            for name, composition in made.items()
            if any(
                located.part.of in force.stands or located.part.of in filled
                for located in composition.parts
            )
            or composition.formation.men_per_figure is not None
        }
        grew = more != filled
        filled = more
    return filled


def _shares_figures(made: Compositions, name: str) -> bool:
    """Whether the formation gets its figures by the fixed ratio of one that holds it."""
    return any(
        composition.formation.men_per_figure is not None
        and any(located.part.of == name for located in composition.parts)
        for composition in made.values()
    )


def absurd_numbers(force: Force) -> Iterator[Finding]:
    """A number that looks like a slip of the finger."""
    made = _sound(force)
    for composition, located in _parts(force):
        part = located.part
        number = part.number.most
        if part.of not in made and part.of not in force.stands:
            continue
        if not made or not _looks_absurd(number, is_body=part.of in made):
            continue
        stand, total = _stands_given(force, made, located=located)
        digit = str(number)[0]
        doubled = len(str(number)) > 1 and set(str(number)) == {digit}
        yield Finding(
            level=Level.WARN,
            code="absurd-number",
            message=f"{number} {plural(part.of)} in a {composition.formation.name} gives {total} "
            f"{plural(stand)} in the whole force.",
            effect="Sums use it as it stands.",
            hint=f"Did you mean {digit}?" if doubled else "Look at the number again.",
            place=_place(force, (*located.path, "number")),
        )


def _looks_absurd(number: int, *, is_body: bool) -> bool:
    if number > DOUBLE_DIGIT and len(set(str(number))) == 1:
        return True
    return number >= (ABSURD_BODIES if is_body else ABSURD_STANDS)


def _stands_given(force: Force, made: Compositions, *, located: LocatedPart) -> tuple[str, int]:
    """The commonest stand below a part, and how many the raised force has of it by this part."""

    @cache
    def below(name: str) -> Mapping[str, int]:
        if name in force.stands:
            return {name: 1}
        counted: dict[str, int] = {}
        for held in made[name].parts if name in made else ():
            for stand, number in below(held.part.of).items():
                counted[stand] = counted.get(stand, 0) + number * held.part.number.most
        return counted

    number = located.part.number.most * _times(force, made, name=located.path[1])
    counted = below(located.part.of) or {located.part.of: 1}
    stand = max(counted, key=lambda name: counted[name])
    return stand, counted[stand] * number


def _times(force: Force, made: Compositions, *, name: str) -> int:
    """How often a formation stands in the raised force, every range at its most."""
    raised = force.raise_.formation if force.raise_ else name

    @cache
    def times(held: str) -> int:
        if held == raised:
            return 1
        return sum(
            located.part.number.most * times(holder)
            for holder, composition in made.items()
            for located in composition.parts
            if located.part.of == held
        )

    return times(name)


ORDER: Sequence[Echelon] = tuple(Echelon)
"""Echelons from the smallest to the greatest."""


def upside_down(force: Force) -> Iterator[Finding]:
    """A body inside one of a smaller echelon."""
    made = _sound(force)
    for composition, located in _parts(force):
        inner = made.get(located.part.of)
        outer = composition.formation.echelon
        if inner is None or outer is None or inner.formation.echelon is None:
            continue
        if ORDER.index(inner.formation.echelon) > ORDER.index(outer):
            yield Finding(
                level=Level.WARN,
                code="echelon-upside-down",
                message=f"{located.part.of} is a {inner.formation.echelon}, inside "
                f"{composition.formation.name}, which is a {outer}.",
                effect="Totals by level will look odd.",
                hint="Look at the echelon of both.",
                place=_place(force, located.path),
            )


RULES: tuple[Rule, ...] = (
    variants,
    loops,
    choices,
    backward_windows,
    usual_numbers,
    window_overlaps,
    window_gaps,
    must_under_wished,
    bodies_without_stands,
    absurd_numbers,
    upside_down,
)
