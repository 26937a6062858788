"""The parade: every stand in its rank, what is next, and the stand that is looked at."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from urllib.parse import urlencode

from starlette.responses import Response

from paradestate.core.finding import Finding
from paradestate.core.journal_entry import EntryKind
from paradestate.core.log_request import LogRequest
from paradestate.core.next_step import NextStep, next_step
from paradestate.core.parade import OnParade, Rank, nearest, numbers_by_stage, ranks
from paradestate.core.sentence.cross_check import ticks
from paradestate.core.sentence.journal import entry_words
from paradestate.core.sentence.play import game_words
from paradestate.core.sentence.wording import several
from paradestate.core.unfolding import spoken
from paradestate.journeys.count import Count
from paradestate.journeys.game.games import game_going_on
from paradestate.journeys.history import LOOKED_AT, history
from paradestate.journeys.log import log
from paradestate.journeys.marking import marking_of
from paradestate.sheet import parade_ground
from paradestate.sheet.parade_ground import NARROW, WIDE, stand_words
from paradestate.sheet.stage_bar import key_box, printed_box, stage_bar
from paradestate.sheet.svg import Drawing
from paradestate.sheet.texture import patterns
from paradestate.web.log_form import head_said, new_id, striking_out
from paradestate.web.page_kind import Page
from paradestate.web.rank_view import rank_drawings
from paradestate.web.visit import Visit

MOST_NAMED = 3
"""Stands that are named where more are meant."""


@dataclass(frozen=True, slots=True, kw_only=True)
class RankView:
    """One rank as it is shown, in a wide and a narrow drawing."""

    rank: Rank
    finished: int
    plate: Drawing | None
    must: tuple[Drawing, Drawing]
    holds_chosen: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class Chit:
    """The stand that is looked at."""

    placed: OnParade
    rank: Rank
    drawing: Drawing
    lines: tuple[str, ...]
    """Its names, from the company down."""
    step: NextStep | None
    entry: str
    """The id that the next entry gets, so that a form sent twice is stored once."""


def show(visit: Visit) -> Response:
    """The parade as it stands."""
    return _page(visit, chosen=visit.query.get("stand", ""))


def bring_on(visit: Visit) -> Response:
    """Brings a stand on by one stage."""
    form, head = visit.form, head_said(visit)
    name = form.text("stand")
    answer = visit.counted()
    if answer.count is None:
        return _page(visit, chosen=name, status=422)
    state = next((each for each in answer.count.strength.stands if each.stand.name == name), None)
    stages = answer.count.force.bench.stages
    step = None if state is None else next_step(state, stages=stages)
    if step is None or (step.from_stage, step.to_stage) != (form.text("from"), form.text("to")):
        told = "This stand isn't any more what it was when the sheet was made: look again."
        return _page(visit, chosen=name, told=told, status=409)
    request = LogRequest(
        id=head.id,
        kind=EntryKind.MOVED,
        written=head.written,
        on=head.on,
        figures={} if step.is_whole else step.figures,
        from_stage=step.from_stage,
        to_stage=step.to_stage,
        stand=name,
    )
    return _logged(visit, request, chosen=name)


def undo(visit: Visit) -> Response:
    """Strikes the newest entry out."""
    undone = visit.form.text("undone")
    request = striking_out(visit, entry=undone, note="Undone on the parade.")
    return _logged(visit, request, chosen=visit.form.text("stand"))


PAGE = Page(
    path="parade",
    title="Parade",
    in_bar=True,
    show=show,
    actions={"bring-on": bring_on, "undo": undo},
)


def _logged(visit: Visit, request: LogRequest, *, chosen: str) -> Response:
    done = log(visit.folder, today=visit.today, request=request, memory=visit.memory)
    if done.entry is None:
        return _page(visit, chosen=chosen, findings=done.findings, status=422)
    query = f"?{urlencode({'stand': chosen})}" if chosen else ""
    return visit.back_to(f"parade{query}")


def _page(
    visit: Visit,
    *,
    chosen: str,
    findings: Sequence[Finding] = (),
    told: str = "",
    status: int = 200,
) -> Response:
    answer = visit.counted()
    found = (*findings, *answer.checked.findings)
    if answer.count is None:
        return visit.page("stopped.html", status=status, title="Parade state", found=found)
    counted = answer.count
    stages = counted.force.bench.stages
    placed = visit.memory.kept(
        ("ranks", visit.folder),
        lambda: ranks(
            counted.made,
            strength=counted.strength,
            marks=marking_of(counted, memory=visit.memory),
        ),
        rests_on=(counted,),
    )
    past = history(visit.folder, today=visit.today, last=LOOKED_AT, memory=visit.memory)
    return visit.page(
        "parade.html",
        status=status,
        counted=counted,
        views=list(_views(visit, placed, counted=counted, chosen=chosen)),
        wish_drawings=_wishes(visit, placed, counted=counted, chosen=chosen),
        chit=_chit(placed, counted=counted, chosen=chosen),
        patterns=patterns(stages),
        key=[
            (stage or "missing", key_box(stage, stages=stages)) for stage in (*stages[::-1], None)
        ],
        must=numbers_by_stage(each for rank in placed for each in rank.must),
        wished=numbers_by_stage(each for rank in placed for each in rank.wished),
        bar=stage_bar,
        printed_box=printed_box(),
        scale=(parade_ground.scale_line(width=WIDE), parade_ground.scale_line(width=NARROW)),
        every=[(rank.name, each) for rank in placed for each in (*rank.must, *rank.wished)],
        ticks=list(ticks(counted.made, check=counted.check, strength=counted.strength)),
        next=nearest(placed, stages=stages),
        named=_named,
        last=past.newest_in_force,
        undone=past.struck_just_now,
        stand_words=stand_words,
        several=several,
        new_id=new_id,
        entry_words=entry_words,
        found=found,
        told=told,
        going=game_going_on(visit.folder, today=visit.today, memory=visit.memory),
        game_words=game_words,
    )


def _views(
    visit: Visit, placed: Sequence[Rank], *, counted: Count, chosen: str
) -> Iterator[RankView]:
    """Every rank with a must; only the one that holds the chosen stand is drawn for this visit."""
    every = visit.memory.kept(
        ("rank views", visit.folder),
        lambda: tuple(_view(visit, rank, counted=counted) for rank in placed if rank.must),
        rests_on=(counted,),
    )
    for view in every:
        holds_chosen = any(each.stand.name == chosen for each in view.rank.must)
        yield _view(visit, view.rank, counted=counted, chosen=chosen) if holds_chosen else view


def _view(visit: Visit, rank: Rank, *, counted: Count, chosen: str = "") -> RankView:
    return RankView(
        rank=rank,
        finished=rank.finished(counted.force.bench.stages),
        plate=parade_ground.plate(rank),
        must=rank_drawings(visit, rank, stands=rank.must, counted=counted, chosen=chosen),
        holds_chosen=bool(chosen),
    )


def _wishes(
    visit: Visit, placed: Sequence[Rank], *, counted: Count, chosen: str
) -> tuple[Drawing, Drawing] | None:
    """All wished items in one drawing, apart from what is a must."""
    stands = [replace(each, group="") for rank in placed for each in rank.wished]
    if not stands:
        return None
    rank = replace(placed[0], name="Wished", mark=None, colour="")
    return rank_drawings(visit, rank, stands=stands, counted=counted, chosen=chosen)


def _chit(placed: Sequence[Rank], *, counted: Count, chosen: str) -> Chit | None:
    for rank in placed:
        for each in (*rank.must, *rank.wished):
            if each.stand.name == chosen:
                stages = counted.force.bench.stages
                return Chit(
                    placed=each,
                    rank=rank,
                    drawing=parade_ground.one_stand(
                        each, rank=rank, patterns=counted.force.stands, stages=stages
                    ),
                    lines=tuple(each.stand.name.split(" / ")),
                    step=None if each.state is None else next_step(each.state, stages=stages),
                    entry=new_id(),
                )
    return None


def _named(stands: Sequence[OnParade]) -> str:
    """The first few stands by their names, and how many more there are."""
    names = [spoken(each.stand.name) for each in stands]
    more = len(names) - MOST_NAMED
    return "; ".join(names[:MOST_NAMED]) + (f"; and {more} more" if more > 0 else "")
