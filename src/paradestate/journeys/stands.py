"""Every kind of stand with its sums, and the platoons in line on the table.

folder -> counted -> an account of each pattern -> bodies in line
"""

import datetime
from dataclasses import dataclass
from fractions import Fraction
from pathlib import Path

from paradestate.core.abreast import Abreast, bodies_in_line
from paradestate.core.choice import Choice
from paradestate.core.figure import Sort
from paradestate.core.ratio import Ratio, evenness, ratio
from paradestate.core.stand_account import StandAccount, stand_accounts
from paradestate.journeys.count import CountAnswer, count
from paradestate.journeys.memory import NOTHING, Memory


@dataclass(frozen=True, slots=True, kw_only=True)
class Stands:
    """The stands of a force."""

    counted: CountAnswer
    """Where a stop prevents the count, the patterns are those that could be read."""
    accounts: tuple[StandAccount, ...]
    bodies: tuple[Abreast, ...]
    """Smaller ones first, the whole last; none without platoons, or where nothing was counted."""
    ratio: Ratio | None
    """Men to a figure, of all that must be there; None where there are no men or no figures."""
    evenness: Fraction | None
    """The greatest ratio of a kind of stand over the least, of those that must be there."""


def stands(folder: Path, *, today: datetime.date, memory: Memory = NOTHING) -> Stands:
    """The stands of the force of a folder. Raises FileError where it can't be read."""
    answer = count(folder, today=today, choice=Choice(), memory=memory)
    return memory.kept(("stands", folder), lambda: _told(answer), rests_on=(answer,))


def _told(answer: CountAnswer) -> Stands:
    counted, read = answer.count, answer.checked
    if counted is None:
        accounts = stand_accounts(read.force, None, findings=read.findings)
        return Stands(counted=answer, accounts=accounts, bodies=(), ratio=None, evenness=None)
    force, made = counted.force, counted.made
    accounts = stand_accounts(force, made, findings=read.findings)
    ratios = [each.ratio for each in accounts if each.must and each.ratio is not None]
    figures = made.must.foot + made.must.by_sort[Sort.MOUNTED]
    return Stands(
        counted=answer,
        accounts=accounts,
        bodies=bodies_in_line(force, made, fronts=counted.fronts),
        ratio=ratio(made.must.men, figures=figures) if figures and made.must.men.most else None,
        evenness=evenness(ratios) if ratios else None,
    )
