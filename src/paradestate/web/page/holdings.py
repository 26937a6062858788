"""Holdings: what is owned by kind and stage, what of it serves, and what is left over."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from starlette.responses import Response

from paradestate.core.finding import Finding
from paradestate.core.holding_line import HoldingLine, holding_lines, with_stands
from paradestate.core.holdings import all_stages
from paradestate.core.journal import JournalState
from paradestate.core.journal_entry import JournalEntry
from paradestate.core.sentence.journal import entry_words
from paradestate.core.sentence.wording import day_words, listed, several
from paradestate.journeys.count import Count
from paradestate.journeys.history import entry_of_id
from paradestate.journeys.holdings import holdings
from paradestate.sheet.holding_bars import DESK, PHONE, Bar, holding_bars
from paradestate.sheet.stage_bar import key_box
from paradestate.sheet.texture import patterns
from paradestate.web.log_form import new_id
from paradestate.web.page import holding_log, parcel, stock_take, worth
from paradestate.web.page_kind import Page
from paradestate.web.visit import Visit


@dataclass(frozen=True, slots=True, kw_only=True)
class Row:
    """A kind, or a stand pattern, as the table shows it."""

    name: str
    stages: Mapping[str, int]
    lent: int
    promised: int = 0
    """The most that is promised for one day from today on."""
    line: HoldingLine | None = None
    """None for stands, and for a kind that this force doesn't know."""

    @property
    def on_stands(self) -> int:
        """Figures on whole stands."""
        return sum(share.number for share in self.line.on_stands) if self.line else 0

    @property
    def held(self) -> int:
        """Owned and here."""
        return sum(self.stages.values()) + self.on_stands

    @property
    def used(self) -> int:
        """What serves this force."""
        return self.line.used if self.line else 0

    @property
    def left_over(self) -> int:
        """What doesn't."""
        return self.held - self.used


def show(visit: Visit) -> Response:
    """Everything that is held now."""
    named = visit.query.get("written", "")
    written = (
        entry_of_id(visit.folder, named, today=visit.today, memory=visit.memory) if named else None
    )
    return _page(visit, written=written)


def _page(
    visit: Visit, *, written: JournalEntry | None = None, findings: Sequence[Finding] = ()
) -> Response:
    answer = visit.counted()
    known = holdings(visit.folder, today=visit.today, memory=visit.memory)
    found = (*findings, *answer.checked.findings)
    if answer.count is None or known.state is None:
        return visit.page("stopped.html", title="Holdings", found=(*found, *known.findings))
    state, counted = known.state, answer.count
    stages = all_stages(state.held.figures, usual=counted.force.bench.stages)
    lines = holding_lines(counted.force, counted.made, found=counted.strength)
    rows = _rows(visit, state, lines=lines)
    return visit.page(
        "holdings.html",
        counted=counted,
        rows=rows,
        totals={stage: sum(row.stages.get(stage, 0) for row in rows) for stage in stages},
        stand_rows=_stand_rows(state),
        stages=stages,
        promises=[each for each in state.promises if each.day >= visit.today],
        bars=_bars(rows, counted=counted),
        key=[(stage, key_box(stage, stages=stages)) for stage in reversed(stages)],
        patterns=patterns(counted.force.bench.stages),
        written=written,
        found=found,
        kinds_to_log=holding_log.KINDS,
        new_id=new_id,
        words={"entry": entry_words, "day": day_words, "several": several, "listed": listed},
    )


def _rows(visit: Visit, state: JournalState, *, lines: Sequence[HoldingLine]) -> list[Row]:
    by_kind = {line.kind: line for line in lines}
    held, lent = state.held.figures, state.lent.figures
    return [
        Row(
            name=kind,
            stages=held.get(kind, {}),
            lent=sum(lent.get(kind, {}).values()),
            promised=_promised(visit, state, kind=kind),
            line=by_kind.get(kind),
        )
        for kind in dict.fromkeys((*by_kind, *held, *lent))
    ]


def _promised(visit: Visit, state: JournalState, *, kind: str) -> int:
    days: dict[object, int] = {}
    for each in state.promises:
        if each.day >= visit.today:
            days[each.day] = days.get(each.day, 0) + each.figures.get(kind, 0)
    return max(days.values(), default=0)


def _stand_rows(state: JournalState) -> list[Row]:
    held, lent = state.held.stands, state.lent.stands
    return [
        Row(
            name=pattern,
            stages=held.get(pattern, {}),
            lent=sum(lent.get(pattern, {}).values()),
        )
        for pattern in dict.fromkeys((*held, *lent))
    ]


def _bars(rows: Sequence[Row], *, counted: Count) -> tuple[object, object]:
    stages = counted.force.bench.stages
    bars = [
        Bar(
            name=row.name,
            stages=with_stands(row.name, row.stages, force=counted.force),
            lent=row.lent,
        )
        for row in rows
        if row.held or row.lent
    ]
    return (
        holding_bars(bars, stages=stages, width=DESK),
        holding_bars(bars, stages=stages, width=PHONE),
    )


PAGE = Page(
    path="holdings",
    title="Holdings",
    in_bar=True,
    show=show,
    actions={
        "log": holding_log.write,
        "receive": parcel.receive,
        "cancel": parcel.cancel,
        "stock-take": stock_take.write,
        "spreadsheet": stock_take.look,
        "accept": stock_take.accept,
    },
    parts={
        "log": holding_log.show,
        "receive": parcel.show,
        "stock-take": stock_take.show,
        "spreadsheet": stock_take.spreadsheet,
        "replacement": worth.replacement_value,
        "spare": worth.spare,
    },
)
