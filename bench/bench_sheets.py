"""How long it takes to lay out and set papers.

Conditions: 500 labels of four sizes, each with its own name and a mark, A4; all papers of the
bundled example, read from the disk. One process; the first call sets the typesetter up and isn't
measured. Names and dates differ from round to round, since the typesetter remembers what it has
set. Asked for: 500 labels under 2 s, all papers of the example under 5 s.
"""

import datetime
from dataclasses import replace
from itertools import count

from pytest_benchmark.fixture import BenchmarkFixture

from paradestate.core.choice import Choice
from paradestate.core.imposition.layout import Layout
from paradestate.core.imposition.shelf import imposed
from paradestate.core.mark.code import Mark, Sign
from paradestate.core.paper.label_face import LabelFace
from paradestate.core.paper.labels import Labels
from paradestate.core.paper.paper import Paper, pages_of
from paradestate.journeys.paper.paper_kind import Asked
from paradestate.journeys.paper.sheets import Sheets, sheets
from paradestate.sheet.paper.typesetting import Printed, printed
from tests.core.imposition.boxes import MARENZ
from tests.forces import EXAMPLES
from tests.sheet.paper.papers import one_label

MANY = 500
COLOURS = {"royal blue": "1F4E9E", "mid yellow": "F2C230", "sky blue": "7FB8DE", "brown": "6B4A2B"}
ROUNDS = 5


def many_labels(number_of_round: int) -> Paper[Labels]:
    outlines = [MARENZ[number % len(MARENZ)] for number in range(MANY)]
    names = list(COLOURS)
    faces = tuple(
        LabelFace(
            mark=Mark(
                colour=names[number % 4],
                value=COLOURS[names[number % 4]],
                bars=number % 4,
                sign=list(Sign)[number % 4],
            ),
            lines=(
                f"No {number % 4 + 1} Company",
                f"{number % 9} Platoon",
                f"{number}.{number_of_round} Section",
            ),
        )
        for number in range(MANY)
    )
    pages = pages_of(imposed(outlines, Layout()), faces)
    return replace(one_label(), shown=Labels(pages=pages))


def bench_500_labels(benchmark: BenchmarkFixture) -> None:
    rounds = count()

    def run() -> Printed:
        return printed(many_labels(next(rounds)))

    made: Printed = benchmark.pedantic(  # type: ignore[no-untyped-call] # the library has no types
        run, rounds=ROUNDS, warmup_rounds=1
    )
    benchmark.extra_info["pages"] = made.pages
    benchmark.extra_info["bytes"] = len(made.pdf)


def bench_all_papers_of_the_example(benchmark: BenchmarkFixture) -> None:
    rounds = count()

    def run() -> Sheets:
        today = datetime.date(2026, 3, 5) + datetime.timedelta(days=next(rounds))
        return sheets(EXAMPLES / "marenz", today=today, choice=Choice(), asked=Asked())

    made: Sheets = benchmark.pedantic(  # type: ignore[no-untyped-call] # the library has no types
        run, rounds=ROUNDS, warmup_rounds=1
    )
    benchmark.extra_info["papers"] = len(made.sheets or ())
