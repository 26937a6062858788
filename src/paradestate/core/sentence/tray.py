"""Trays in words: how sure their number is, what a move is barred by, what is in each row."""

import re
from collections.abc import Iterable, Iterator, Sequence
from itertools import groupby

from paradestate.core.certainty import Exact
from paradestate.core.outline import decimal_text
from paradestate.core.sentence.wording import capital, listed, several
from paradestate.core.tray.laid import LaidRow, LaidTray
from paradestate.core.tray.moving import Bar, Barred
from paradestate.core.tray.plan import TrayPlan
from paradestate.core.tray.thing import Case, Thing
from paradestate.core.unfolding import SEPARATOR, name_within, spoken

_NUMBER = re.compile(r"^\d+ ")


def thing_words(thing: Thing) -> str:
    """The whole name of a stand: `No 2 Company, 3 Platoon, 1 Section`."""
    return spoken(thing.name)


def plan_sentences(plan: TrayPlan) -> Iterator[str]:
    """How many trays there are, how sure that is, and which companies are torn apart."""
    number = len(plan.trays)
    stands = sum(len(tray.lying) for tray in plan.trays)
    yield f"{several(stands, 'stand')} in {several(number, 'tray')}."
    yield certainty_sentence(plan)
    torn = plan.torn
    if torn:
        verb = "lies" if len(torn) == 1 else "lie"
        yield f"{listed(torn)} {verb} in more than one tray."
    if plan.is_by_hand:
        yield "Laid by hand."


def certainty_sentence(plan: TrayPlan) -> str:
    """Whether fewer trays might do."""
    number, least = len(plan.trays), plan.bound.least
    if plan.misfits:
        what = "stand has" if len(plan.misfits) == 1 else "stands have"
        return f"{len(plan.misfits)} {what} no place; {_least(plan)}."
    if isinstance(plan.certainty, Exact):
        return (
            "Exact: fewer trays don't hold them." if number else "Exact: there is nothing to lay."
        )
    return f"Within: {_least(plan)}, so at most {several(number - least, 'tray')} too many."


def _least(plan: TrayPlan) -> str:
    return f"the area alone needs {several(plan.bound.least, 'tray')}"


def tray_words(tray: LaidTray) -> str:
    """How much of a tray is taken: `130 mm of 200 taken in 5 rows`."""
    taken, depth = decimal_text(tray.depth_taken), decimal_text(tray.case.inside.depth)
    return f"{taken} mm of {depth} taken in {several(len(tray.rows), 'row')}"


def case_words(case: Case) -> str:
    """A tray with its size: `Case 2, 300 x 200 mm inside, 38 mm clear`."""
    return f"{capital(case.name)}, {inside_words(case)}"


def inside_words(case: Case) -> str:
    """The size of a tray: `300 x 200 mm inside, 38 mm clear`."""
    width, depth = decimal_text(case.inside.width), decimal_text(case.inside.depth)
    clear = "" if case.height is None else f", {decimal_text(case.height)} mm clear"
    return f"{width} x {depth} mm inside{clear}"


def row_sentence(row: LaidRow) -> str:
    """What lies in a row, from left to right; a company that has it to itself isn't named."""
    own = own_company(row)
    parts = [name_within(each.thing.name, own) for each in row.lying]
    return "; ".join(_grouped(parts))


def own_company(row: LaidRow) -> str:
    """The company that has a row to itself; empty where it is shared."""
    companies = {each.thing.company for each in row.lying}
    return companies.pop() if len(companies) == 1 else ""


def _grouped(names: Sequence[str]) -> Iterator[str]:
    """`1 Platoon: 1 Section and 2 Section`; what stands alone by its whole name."""
    for above, alike in groupby(names, key=lambda name: name.rpartition(SEPARATOR)[0]):
        called = ", ".join(_numbered([name.rpartition(SEPARATOR)[2] for name in alike]))
        yield f"{spoken(above)}: {called}" if above else called


def _numbered(names: Sequence[str]) -> Iterator[str]:
    """`1 Section` and `2 Section` as `Section 1 and 2`; names without a number as they are."""
    for kind, alike in groupby(names, key=lambda name: _NUMBER.sub("", name)):
        numbers = [name.removesuffix(f" {kind}") for name in alike]
        yield f"{kind} {listed(numbers)}" if numbers != [kind] else kind


def row_title(row: LaidRow, *, number: int) -> str:
    """`Row 2: No 1 Company`, with the company that has it to itself."""
    own = own_company(row)
    offset = max(each.deep for each in row.lying) - row.starts
    lines = f", staggered by {decimal_text(offset)} mm" if row.is_staggered else ""
    return f"Row {number}{lines}" + (f": {own}" if own else "")


def barred_sentence(barred: Barred) -> str:
    """The rule that forbids a move, with its numbers."""
    case, thing = capital(barred.case.name), thing_words(barred.thing)
    inside, needed = barred.case.inside, decimal_text(barred.needed)
    match barred.bar:
        case Bar.TOO_HIGH:
            return too_low_sentence(barred.thing, (barred.case,))
        case Bar.ROW_TOO_WIDE:
            wide = decimal_text(inside.width)
            return f"Row {barred.row} of {case} would be {needed} mm wide; it has {wide}."
        case Bar.TRAY_TOO_SHALLOW:
            deep = decimal_text(inside.depth)
            return f"{case} would be {needed} mm deep in rows; it has {deep}."
        case Bar.NOT_ALIKE:
            return f"{thing} isn't of the size of that place, and nothing there can close up."
        case Bar.NO_ROOM:
            return f"{case} has no free place of {size_words(barred.thing)}."


def too_low_sentence(thing: Thing, cases: Iterable[Case]) -> str:
    """How high it is, and how much the trays have: `Standard is 44 mm; Box has 38 clear.`."""
    high = "" if thing.height is None else f" is {decimal_text(thing.height)} mm"
    clear = listed(
        f"{capital(case.name)} has {decimal_text(case.height)} clear"
        for case in cases
        if case.height is not None
    )
    return f"{thing_words(thing)}{high}; {clear}."


def size_words(thing: Thing) -> str:
    """`40 x 20 mm`, `a disc of 30 mm`."""
    if thing.is_round:
        return f"a disc of {decimal_text(thing.width)} mm"
    return f"{decimal_text(thing.width)} x {decimal_text(thing.depth)} mm"
