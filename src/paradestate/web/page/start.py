"""Start: at most six questions or an example, and then the parade fills."""

from collections.abc import Iterator
from dataclasses import replace
from urllib.parse import urlencode

from starlette.exceptions import HTTPException
from starlette.responses import Response

from paradestate.core.order import PackName
from paradestate.core.parade import Rank, ranks
from paradestate.core.sentence.wording import listed, several
from paradestate.journeys.count import Count
from paradestate.journeys.marking import marking_of
from paradestate.journeys.new import examples
from paradestate.journeys.newcomer import (
    BOUNDS,
    first_parade,
    is_lone,
    read_answers,
    start_from_answers,
    start_from_example,
)
from paradestate.sheet.svg import Drawing
from paradestate.sheet.texture import patterns
from paradestate.web.page_kind import Page
from paradestate.web.rank_view import rank_drawings
from paradestate.web.visit import Visit

NOT_FOUND, UNPROCESSABLE = 404, 422

SECONDS = 2.0
"""How long the order is looked for that the next pack is taken from."""


def show(visit: Visit) -> Response:
    """The six questions, each with its usual answer."""
    return _asked(visit)


def _asked(visit: Visit, *, status: int = 200) -> Response:
    """The questions, with what was answered and what is wrong with it."""
    given = visit.form.texts
    answered = read_answers(given)
    return visit.page(
        "start.html",
        status=status,
        given=given,
        usual=answered.answers,
        slips=answered.slips,
        bounds=BOUNDS,
        examples=examples(),
        is_lone=is_lone(visit.site.folder),
        forces=visit.site.forces(),
    )


def make(visit: Visit) -> Response:
    """A force made from the answers."""
    answered = read_answers(visit.form.texts)
    if answered.slips or is_lone(visit.site.folder):
        return _asked(visit, status=UNPROCESSABLE)
    folder = start_from_answers(visit.site.folder, answers=answered.answers)
    return visit.to(f"/start/made?{urlencode({'force': folder.name})}")


def example(visit: Visit) -> Response:
    """A force copied from an example."""
    if is_lone(visit.site.folder):
        return _asked(visit, status=UNPROCESSABLE)
    folder = start_from_example(visit.site.folder, name=visit.form.text("example"))
    return visit.to(f"/start/made?{urlencode({'force': folder.name})}")


def made(visit: Visit) -> Response:
    """What the new force has, what that makes, and the one next pack.

    Raises TooManySearchesError.
    """
    name = visit.query.get("force", "")
    folder = visit.site.forces().get(name)
    if folder is None:
        raise HTTPException(NOT_FOUND, f"There is no force '{name}' in this folder.")
    of_force = replace(visit, name=name, folder=folder)
    search = visit.site.searches.begun(
        ("first parade", folder),
        lambda search: first_parade(folder, today=visit.today, search=search, memory=visit.memory),
        seconds=SECONDS,
        rests_on=of_force.counted(),
    )
    search.wait()
    told = search.answer()
    if told.counted.count is None:
        found = told.counted.checked.findings
        return of_force.page("stopped.html", title="First parade", found=found)
    counted, ordered = told.counted.count, told.ordered
    bought = {} if ordered is None or ordered.answer is None else ordered.answer.order.packs
    packs = [f"{number} of {_called(counted, name)}" for name, number in bought.items()]
    return of_force.page(
        "start_made.html",
        told=told,
        count=counted,
        patterns=patterns(counted.force.bench.stages),
        parade=list(_drawn(of_force, counted)),
        packs=packs,
        number_bought=sum(bought.values()),
        pack_words=[]
        if told.next_pack is None
        else [several(number, kind) for kind, number in told.next_pack.holds.items()],
        number_whole=sum(making.whole for making in told.makings),
        number_wanted=sum(making.wanted for making in told.makings),
        refused=() if ordered is None or ordered.answer is not None else ordered.checked.findings,
        several=several,
        listed=listed,
    )


def _called(counted: Count, name: PackName) -> str:
    """What a pack is called on the shelf."""
    pack = counted.force.sources[name[0]].packs[name[1]]
    return pack.title or pack.name


def _drawn(visit: Visit, counted: Count) -> Iterator[tuple[Rank, Drawing, Drawing]]:
    """Each rank of the parade, in a wide and a narrow drawing."""
    marks = marking_of(counted)
    for rank in ranks(counted.made, strength=counted.strength, marks=marks):
        if rank.must:
            yield rank, *rank_drawings(visit, rank, stands=rank.must, counted=counted)


PAGE = Page(
    path="start",
    title="Start",
    show=show,
    actions={"make": make, "example": example},
    parts={"made": made},
)
