"""The parade: every stand in its rank, what is next, and the stand that is looked at."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from urllib.parse import urlencode
from uuid import uuid4

from starlette.responses import Response

from paradestate.core.finding import Finding
from paradestate.core.journal_entry import EntryKind, JournalEntry
from paradestate.core.log_request import LogRequest
from paradestate.core.next_step import NextStep, next_step
from paradestate.core.parade import OnParade, Rank, ranks
from paradestate.core.sentence.journal import entry_words
from paradestate.core.sentence.wording import several
from paradestate.journeys.count import Count
from paradestate.journeys.history import history
from paradestate.journeys.log import log
from paradestate.sheet import parade_ground
from paradestate.sheet.parade_ground import NARROW, WIDE, Ground, rank_drawing, stand_words
from paradestate.sheet.stage_bar import key_box, stage_bar
from paradestate.sheet.svg import Drawing
from paradestate.sheet.texture import patterns
from paradestate.web.page_kind import Page
from paradestate.web.visit import Visit

LOOKED_AT = 20
"""Newest entries among which the one that can be undone is looked for."""

MOST_NAMED = 3
"""Stands that are named where more are meant."""


@dataclass(frozen=True, slots=True, kw_only=True)
class RankView:
    """One rank as it is shown, in a wide and a narrow drawing."""

    rank: Rank
    finished: int
    plate: Drawing
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


@dataclass(frozen=True, slots=True, kw_only=True)
class Tick:
    """A cross-check in words, and whether it holds."""

    words: str
    holds: bool


def show(visit: Visit) -> Response:
    """The parade as it stands."""
    return _page(visit, chosen=visit.query.get("stand", ""))


def bring_on(visit: Visit) -> Response:
    """Brings a stand on by one stage."""
    name, form = visit.form.text("stand"), visit.form
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
        id=form.text("entry") or str(uuid4()),
        kind=EntryKind.MOVED,
        written=visit.now,
        on=visit.today,
        figures={} if step.is_whole else step.figures,
        from_stage=step.from_stage,
        to_stage=step.to_stage,
        stand=name,
    )
    return _logged(visit, request, chosen=name)


def undo(visit: Visit) -> Response:
    """Strikes the newest entry out."""
    request = LogRequest(
        id=visit.form.text("entry") or str(uuid4()),
        kind=EntryKind.STRUCK_OUT,
        written=visit.now,
        on=visit.today,
        struck_out=visit.form.text("undone"),
        note="Undone on the parade.",
    )
    return _logged(visit, request, chosen=visit.form.text("stand"))


PAGE = Page(path="parade", title="Parade", show=show, actions={"bring-on": bring_on, "undo": undo})


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
    placed = ranks(counted.force, counted.made, strength=counted.strength)
    return visit.page(
        "parade.html",
        status=status,
        counted=counted,
        views=[_view(visit, rank, counted=counted, chosen=chosen) for rank in placed if rank.must],
        wish_drawings=_wishes(visit, placed, counted=counted, chosen=chosen),
        chit=_chit(placed, counted=counted, chosen=chosen),
        patterns=patterns(stages),
        key=[
            (stage or "missing", key_box(stage, stages=stages)) for stage in (*stages[::-1], None)
        ],
        must=_numbers([each for rank in placed for each in rank.must]),
        wished=_numbers([each for rank in placed for each in rank.wished]),
        bar=stage_bar,
        scale=(parade_ground.scale_line(width=WIDE), parade_ground.scale_line(width=NARROW)),
        every=[(rank.name, each) for rank in placed for each in (*rank.must, *rank.wished)],
        ticks=list(_ticks(counted)),
        next=_next(placed, stages=stages),
        last=_last(visit),
        stand_words=stand_words,
        several=several,
        new_id=lambda: str(uuid4()),
        entry_words=entry_words,
        found=found,
        told=told,
    )


def _view(visit: Visit, rank: Rank, *, counted: Count, chosen: str) -> RankView:
    return RankView(
        rank=rank,
        finished=rank.finished(counted.force.bench.stages),
        plate=parade_ground.plate(rank),
        must=_drawn(visit, rank, stands=rank.must, counted=counted, chosen=chosen),
        holds_chosen=any(each.stand.name == chosen for each in rank.must),
    )


def _drawn(
    visit: Visit, rank: Rank, *, stands: Sequence[OnParade], counted: Count, chosen: str
) -> tuple[Drawing, Drawing]:
    """Stands of a rank, drawn for a desk and for a phone."""

    def address(name: str) -> str:
        return f"{visit.address('parade')}?{urlencode({'stand': name})}#stand"

    wide, narrow = (
        Ground(
            patterns=counted.force.stands,
            stages=counted.force.bench.stages,
            address=address,
            width=width,
            chosen=chosen,
        )
        for width in (WIDE, NARROW)
    )
    return rank_drawing(rank, stands, ground=wide), rank_drawing(rank, stands, ground=narrow)


def _wishes(
    visit: Visit, placed: Sequence[Rank], *, counted: Count, chosen: str
) -> tuple[Drawing, Drawing] | None:
    """All wished items in one drawing, apart from what is a must."""
    stands = [replace(each, group="") for rank in placed for each in rank.wished]
    if not stands:
        return None
    rank = replace(placed[0], name="Wished", number=0, colour="", colour_name="")
    return _drawn(visit, rank, stands=stands, counted=counted, chosen=chosen)


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
                    entry=str(uuid4()),
                )
    return None


def _numbers(stands: Sequence[OnParade]) -> Mapping[str | None, int]:
    """Stands that are wanted, by stage; None for those that lack something."""
    counted: dict[str | None, int] = {}
    for each in stands:
        if each.state is not None:
            counted[each.state.stage] = counted.get(each.state.stage, 0) + 1
    return counted


@dataclass(frozen=True, slots=True, kw_only=True)
class Next:
    """What would bring the parade on soonest: the stands that are nearest to the next stage."""

    stage: str
    to_stage: str
    stands: tuple[OnParade, ...]
    named: str


def _next(placed: Sequence[Rank], *, stages: Sequence[str]) -> Next | None:
    """The must stands at the most advanced stage that isn't the last."""
    stands = [each for rank in placed for each in rank.must if each.state is not None]
    for stage, to_stage in zip(stages[-2::-1], stages[:0:-1], strict=True):
        at_stage = tuple(each for each in stands if each.state and each.state.stage == stage)
        if at_stage:
            names = [each.stand.name.replace(" / ", ", ") for each in at_stage]
            more = len(names) - MOST_NAMED
            named = "; ".join(names[:MOST_NAMED]) + (f"; and {more} more" if more > 0 else "")
            return Next(stage=stage, to_stage=to_stage, stands=at_stage, named=named)
    return None


def _last(visit: Visit) -> JournalEntry | None:
    """The newest entry that can still be undone."""
    past = history(visit.folder, today=visit.today, last=LOOKED_AT, memory=visit.memory)
    for entry in past.entries:
        if entry.id not in past.struck_out and entry.kind is not EntryKind.STRUCK_OUT:
            return entry
    return None


def _ticks(counted: Count) -> Iterator[Tick]:
    """The cross-checks that apply, each with its numbers."""
    level, kind, company = counted.check.totals
    yield Tick(
        words=f"foot figures by level {level}, by kind {kind}, by company {company}",
        holds=counted.check.agrees,
    )
    must, sums = counted.made.must, counted.made.rollup
    stands, multiplied = {**must.stands, **must.printed}, sums.stands
    shared = {name: number for name, number in stands.items() if name in multiplied}
    yield Tick(
        words=f"{sum(shared.values())} stands by name, {sum(multiplied.values())} multiplied",
        holds=shared == dict(multiplied),
    )
    owned = counted.strength
    held, used = sum(owned.held.values()), sum(owned.used.values())
    surplus = sum(owned.surplus.values())
    yield Tick(
        words=f"{used} used and {surplus} over make the {held} that are held",
        holds=used + surplus == held,
    )
    wanted, there = sum(owned.wanted.values()), sum(owned.filled.values())
    lacking = sum(owned.deficiency.values())
    yield Tick(
        words=f"{there} there and {lacking} lacking make the {wanted} that are wanted",
        holds=there + lacking == wanted,
    )
