"""What is wrong or doubtful with marks: too alike, the same twice, the enemy's, too few."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from paradestate.core.finding import Finding, Level
from paradestate.core.force import Force
from paradestate.core.mark.code import SIGNS, Mark, most_marks
from paradestate.core.mark.colour_choice import ColourQuestion, best_colours
from paradestate.core.mark.difference import THRESHOLD, Differences, Pair, Viewer
from paradestate.core.mark.marking import Company, Marking
from paradestate.core.mark.paint import enemy_colours, value_of, values_of
from paradestate.core.mark.unit import Unit
from paradestate.core.place import KeyPath, Place, nearest_place
from paradestate.core.sentence.mark import (
    SEEN_BY,
    difference_text,
    mark_words,
    unit_words,
)
from paradestate.core.sentence.wording import capital, listed, plural, several
from paradestate.core.unfolding import spoken


@dataclass(frozen=True, slots=True, kw_only=True)
class Marked:
    """A force with its marks, and how far all colours are apart that it could use."""

    force: Force
    whole: str
    """The raised formation."""
    marks: Marking
    differences: Differences
    candidates: tuple[str, ...]
    """Colours at hand."""

    @property
    def enemy(self) -> tuple[str, ...]:
        """The enemy's colours that have a value."""
        return tuple(values_of(enemy_colours(self.force), self.force.marks))


def findings(marked: Marked) -> Iterator[Finding]:
    """All of them."""
    yield from _without_colours(marked)
    yield from _without_value(marked)
    yield from _too_few(marked)
    yield from _twice(marked)
    yield from _alike(marked)
    yield from _enemy_alike(marked)


def _place(marked: Marked, *path: str) -> Place:
    return nearest_place(marked.force.places, path)


def _colours_place(marked: Marked, company: Company) -> Place:
    return _place(marked, "marks", company.formation, "colours")


def _without_colours(marked: Marked) -> Iterator[Finding]:
    """No colour is given at all, where several bodies have to be told apart."""
    companies = marked.marks.companies
    if len(companies) > 1 and not marked.marks.colours:
        names = listed(plural(name) for name in dict.fromkeys(each.formation for each in companies))
        yield Finding(
            level=Level.REMARK,
            code="marks-unsaid",
            message=f"No colours are given by which the {names} are told apart.",
            effect="None of their stands has a mark.",
            hint=f"Have {len(companies)} chosen, or write them under 'marks'.",
            place=_place(marked, "marks"),
        )


def _without_value(marked: Marked) -> Iterator[Finding]:
    """Colours whose six digits nobody says."""
    force = marked.force
    named: list[tuple[str, KeyPath, Level]] = [
        (name, ("marks", formation, "colours"), Level.WARN)
        for formation, names in force.marks.by_formation.items()
        for name in names
    ]
    named += [(name, ("opponent", "colours"), Level.REMARK) for name in enemy_colours(force)]
    for name, path, level in dict.fromkeys(named):
        if not value_of(name, force.marks):
            yield Finding(
                level=level,
                code="colour-without-value",
                message=f"Nothing says how {name} looks.",
                effect="It is compared with no other colour, and not drawn.",
                hint=f"Write its six digits under 'marks': colours: {{{name}: 7F7F7F}}.",
                place=_place(marked, *path),
            )


def _too_few(marked: Marked) -> Iterator[Finding]:
    """More units than marks (row 71 of the mistakes)."""
    marks, grid = marked.marks, marked.marks.grid
    without = [each for each in marks.companies if not each.colour]
    units = [unit for unit in marks.marks if unit.company is not None]
    if not marks.colours or (not without and grid.is_held):
        return
    signs = min(grid.signs, len(SIGNS))
    makes = most_marks(colours=grid.companies, bars=len(grid.bars), signs=signs)
    yield Finding(
        level=Level.STOP,
        code="marks-too-few",
        message=f"{len(units)} units; {several(grid.companies, 'colour')} x "
        f"{several(len(grid.bars), 'number')} of bars x {several(signs, 'sign')} make {makes} "
        "marks with a check.",
        effect=_unmarked(without),
        hint=_more_colours(marked, without) if without else _other_level(),
        place=_colours_place(marked, marks.companies[0]),
    )


def _unmarked(without: Sequence[Company]) -> str:
    if not without:
        return "No sign is left for the check, so nothing is marked."
    names = listed(_name(each) for each in without)
    return f"{names} {'has' if len(without) == 1 else 'have'} no mark."


def _name(company: Company) -> str:
    return spoken(company.name) or capital(company.formation)


def _more_colours(marked: Marked, without: Sequence[Company]) -> str:
    """The colours at hand that go best with those that are there."""
    kept = tuple(values_of(marked.marks.colours, marked.force.marks))
    number = len(without)
    word = "a colour" if number == 1 else f"{number} colours"
    best = _best(marked, number=number, kept=kept)
    if best is None:
        return f"Add {word} under 'marks'; too few are at hand to name them."
    colours, least = best
    told = difference_text(least)
    enough = "" if least >= THRESHOLD else ", which is too alike: sign and bars have to tell"
    return f"Add {word}: {listed(colours)}. The least difference is then {told}{enough}."


def _other_level() -> str:
    return (
        f"{len(SIGNS)} signs tell {len(SIGNS)} colours and {len(SIGNS) - 1} bars apart. Name "
        "formations a level higher or lower under 'marks', or raise the force in two."
    )


def _best(
    marked: Marked, *, number: int, kept: Sequence[str]
) -> tuple[tuple[str, ...], int] | None:
    """The best colours to add to those kept, and the least difference of all of them."""
    found = best_colours(
        ColourQuestion(
            candidates=tuple(name for name in marked.candidates if name not in kept),
            number=number,
            kept=tuple(kept),
            enemy=marked.enemy,
        ),
        marked.differences,
    )
    if found is None or found.least is None:
        return None
    return found.colours, found.least


def _twice(marked: Marked) -> Iterator[Finding]:
    """The same mark on two units (row 69)."""
    shared: dict[tuple[int | None, ...], list[tuple[Mark, tuple[Unit, ...]]]] = {}
    for mark, units in marked.marks.by_mark.items():
        if len(units) > 1:
            shared.setdefault(tuple(unit.company for unit in units), []).append((mark, units))
    for companies, marks in shared.items():
        mark, units = marks[-1]
        more = "" if len(marks) == 1 else f" So do {several(len(marks) - 1, 'more pair')} of them."
        names = listed(unit_words(unit, whole=marked.whole) for unit in units)
        first = next(each for each in companies if each is not None)
        yield Finding(
            level=Level.STOP,
            code="mark-twice",
            message=f"{names} bear the same mark ({mark_words(mark)}).{more}",
            effect="Whoever reads it can't say which of them it is.",
            hint=f"Give one of them another colour than {mark.colour}.",
            place=_colours_place(marked, marked.marks.companies[first]),
        )


def _alike(marked: Marked) -> Iterator[Finding]:
    """Two colours that somebody takes for one another (row 68)."""
    numbers = _numbers(marked)
    names = [name for name in marked.marks.colours if name in numbers]
    for pair in marked.differences.among(names):
        if not pair.is_alike:
            continue
        usual = difference_text(pair.by_viewer[Viewer.USUAL])
        seen = (
            ""
            if pair.weakest is Viewer.USUAL
            else (f", {difference_text(pair.least)} to {SEEN_BY[pair.weakest]}")
        )
        formation, one = numbers[pair.one]
        other_formation, other = numbers[pair.other]
        second = f"{other}" if formation == other_formation else f"{other_formation} {other}"
        yield Finding(
            level=Level.WARN,
            code="colours-alike",
            message=f"{capital(formation)} {one} ({pair.one}) and {second} ({pair.other}): "
            f"difference {usual} to most people{seen}.",
            effect=f"Below {difference_text(THRESHOLD)} one is taken for the other across a table; "
            "only sign and bars tell them apart.",
            hint=_instead(marked, pair),
            place=_place(marked, "marks", formation, "colours", str(one)),
            related=(_place(marked, "marks", other_formation, "colours", str(other)),),
        )


def _numbers(marked: Marked) -> Mapping[str, tuple[str, int]]:
    """Colour with a value, to its formation and which of its colours it is."""
    marks = marked.force.marks
    found: dict[str, tuple[str, int]] = {}
    for formation in dict.fromkeys(each.formation for each in marked.marks.companies):
        for number, name in enumerate(marks.by_formation.get(formation, ()), start=1):
            if value_of(name, marks):
                found.setdefault(name, (formation, number))
    return found


def _instead(marked: Marked, pair: Pair) -> str:
    """Two colours at hand in place of a pair; where none do, as many as there are, all anew."""
    ours = values_of(marked.marks.colours, marked.force.marks)
    kept = [name for name in ours if name not in {pair.one, pair.other}]
    best = _best(marked, number=2, kept=kept)
    if best is not None and best[1] >= THRESHOLD:
        return f"Try {' / '.join(best[0])}."
    best = _best(marked, number=len(ours), kept=())
    if best is not None and best[1] >= THRESHOLD:
        return f"Try all anew: {' / '.join(best[0])}."
    return f"No {len(ours)} colours at hand are further apart: go by sign and bars, or add paints."


def _enemy_alike(marked: Marked) -> Iterator[Finding]:
    """Our colours that the enemy's troops bear too (row 70)."""
    force = marked.force
    for company in marked.marks.companies:
        if not company.value or company.formation in force.marks.rear_bars:
            continue
        for name in marked.enemy:
            apart = _apart(marked, company, enemy=name)
            if apart is None:
                continue
            yield Finding(
                level=Level.WARN,
                code="enemy-alike",
                message=f"The opponent's troops also bear {apart}: {_name(company)} is marked "
                f"{company.colour}.",
                effect="Across the table his stands are taken for ours.",
                hint=f"Add a rear bar (rear bar: yes beside the colours of {company.formation}), "
                "or have other colours chosen.",
                place=_colours_place(marked, company),
                related=(_place(marked, "opponent", "colours"),),
            )


def _apart(marked: Marked, company: Company, *, enemy: str) -> str | None:
    """An enemy's colour that is too near a company's, and how near; None where it is far enough."""
    if company.value == value_of(enemy, marked.force.marks):
        return enemy
    pair = marked.differences.of(company.colour, enemy)
    if not pair.is_alike:
        return None
    return (
        f"{enemy}, {difference_text(pair.least)} from {company.colour} to {SEEN_BY[pair.weakest]}"
    )


def pairs_in_use(marked: Marked) -> tuple[Pair, ...]:
    """Every two colours of ours, in order."""
    return tuple(marked.differences.among(marked.marks.colours))
