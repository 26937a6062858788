"""Papers of the workshop that another journey has to work out first."""

from dataclasses import dataclass, replace

from paradestate.core.paper.colour_cards import ColourCards, colour_cards_paper
from paradestate.core.paper.job_cards import JobCards, job_cards_paper
from paradestate.core.paper.packing_list import PackingList, packing_list
from paradestate.core.paper.paper import Draft
from paradestate.core.paper.private_sheet import PrivateSheet, private_sheet
from paradestate.core.paper.stock_take_sheet import StockTakeSheet, stock_take_sheet
from paradestate.core.paper.tray_plans import TrayPlans, tray_plans
from paradestate.core.paper.tray_rows import tray_rows
from paradestate.core.sentence.support import typed_words
from paradestate.core.sentence.tray import certainty_sentence
from paradestate.core.tray.lid import Lid, lids, marks_of
from paradestate.core.tray.plan import TrayPlan
from paradestate.journeys.count import Count
from paradestate.journeys.holdings import holdings
from paradestate.journeys.paper.paper_kind import Desk
from paradestate.journeys.paper.papers import PapersAnswer, papers
from paradestate.journeys.trays import AskedToPack, trays
from paradestate.sheet.figure_outline import LINES, SIZE


def stock_take_of(desk: Desk) -> Draft[StockTakeSheet]:
    """The sheet to count on, from what is held by now."""
    known = holdings(desk.folder, today=desk.today, memory=desk.memory)
    if known.state is None:
        return Draft(shown=None)
    return stock_take_sheet(desk.ground.force, held=known.state.held, lent=known.state.lent)


def jobs_of(desk: Desk) -> Draft[JobCards]:
    """A job card for each batch; none where the bench has stages but no minutes."""
    answer = _for_the_bench(desk)
    return Draft(shown=None) if answer.papers is None else job_cards_paper(answer.papers.jobs)


def colours_of(desk: Desk) -> Draft[ColourCards]:
    """A colour card for each kind of figure that still has to be painted."""
    answer = _for_the_bench(desk)
    if answer.papers is None:
        return Draft(shown=None)
    return colour_cards_paper(answer.papers.colours, outlines=LINES, size=SIZE)


def _for_the_bench(desk: Desk) -> PapersAnswer:
    return papers(desk.folder, today=desk.today, choice=desk.choice, memory=desk.memory)


@dataclass(frozen=True, slots=True, kw_only=True)
class Packed:
    """The trays as they are laid."""

    count: Count
    plan: TrayPlan
    to_pack: int
    lids: tuple[Lid, ...]


def packed_for(desk: Desk) -> Packed | None:
    """The trays of the force with its plan; None where it has none, or the page says why not."""
    force = desk.ground.force
    if not force.trays:
        return None
    plan = ", ".join(map(typed_words, desk.ground.plan))
    asked = AskedToPack(choice=desk.to_pack, plan=plan)
    answer = trays(desk.folder, today=desk.today, asked=asked, memory=desk.memory)
    if answer.count is None or answer.ground is None or answer.plan is None:
        return None
    return Packed(
        count=answer.count,
        plan=answer.plan,
        to_pack=len(answer.ground.things),
        lids=tuple(lids(answer.plan.trays, marks=marks_of(desk.ground.marks))),
    )


def private_sheet_of(desk: Desk) -> Draft[PrivateSheet]:
    """The private sheet, with tray and row of each unit where the owner has laid the trays."""
    packed = packed_for(desk) if desk.ground.force.packed else None
    laid = tray_rows(packed.lids) if packed is not None else {}
    return private_sheet(replace(desk.ground, laid=laid))


def tray_plans_of(desk: Desk) -> Draft[TrayPlans]:
    """The plan of each tray at full size."""
    packed = packed_for(desk)
    if packed is None:
        return Draft(shown=None)
    return tray_plans(packed.lids, layout=desk.ground.layout)


def packing_list_of(desk: Desk) -> Draft[PackingList]:
    """What lies in which tray."""
    packed = packed_for(desk)
    if packed is None:
        return Draft(shown=None)
    return packing_list(
        packed.lids,
        sure=(certainty_sentence(packed.plan),),
        left_out=[misfit.thing.name for misfit in packed.plan.misfits],
        to_pack=packed.to_pack,
    )
