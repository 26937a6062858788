"""The stands: each kind drawn to scale with its sums, and the platoons in line on the table."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from urllib.parse import urlencode

from starlette.responses import Response

from paradestate.core.abreast import Abreast
from paradestate.core.finding import Finding, Level
from paradestate.core.outline import decimal_text, outline_text
from paradestate.core.sentence.stand import (
    chain_words,
    crowding_words,
    difference_words,
    hundredth,
    lead_words,
    line_words,
    raised_words,
    ratio_words,
    room_words,
    tenth,
)
from paradestate.core.sentence.wording import capital, counted, listed, several
from paradestate.core.spot import width_of
from paradestate.core.stand_account import Calling, StandAccount, patterns_of
from paradestate.journeys.stands import Stands, stands
from paradestate.sheet.ground_strip import DESK, MIDDLE, PHONE, ground_strip
from paradestate.sheet.stand_plan import (
    full_size_line,
    full_size_plan,
    letters_of,
    page_scale,
    stand_plan,
)
from paradestate.sheet.svg import Drawing
from paradestate.web.page_kind import Page
from paradestate.web.rank_view import stand_address
from paradestate.web.visit import Visit

SMALL, LARGE = 300, 720
"""Widths of drawings: on a slip or a phone, and of one stand alone on a desk."""

WIDEST_OF_MANY = 150
"""Millimetres; a wider stand doesn't make all others small, but is drawn at its own scale."""

WIDEST_ON_PAPER = 165
"""Millimetres for which a sheet of A4 has room, with the measures beside."""

OF_STANDS = frozenset({"figures", "stands", "opponent", "table"})
"""Sections of the files whose findings are told here."""

HEADINGS = {
    Calling.MUST: ("Must have", "raised by the organisation"),
    Calling.WISHED: ("Wished", "never counted with what is a must"),
    Calling.SUPPORTING: ("Only of supporting troops", "raised when they are bought"),
    Calling.NOBODY: ("Not raised", "nothing asks for them"),
}


@dataclass(frozen=True, slots=True, kw_only=True)
class Holding:
    """So many figures of one kind on a stand."""

    words: str
    letter: str
    """Stands for them on the drawing; empty where there is one kind only."""
    is_telltale: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class StandView:
    """One pattern as it is shown."""

    account: StandAccount
    title: str
    raised: str
    base: str
    address: str
    parade: str
    """Address of the first stand of it on the parade; empty where none is raised."""
    drawings: tuple[Drawing, ...]
    """None where no size is given; a wide and a narrow one where it is shown alone."""
    holdings: tuple[Holding, ...]
    men: str
    ratio: str
    crowding: str
    room: str
    chain: str


@dataclass(frozen=True, slots=True, kw_only=True)
class GroupView:
    """The patterns that are there for one reason."""

    title: str
    note: str
    views: tuple[StandView, ...]
    is_folded: bool


def show(visit: Visit) -> Response:
    """Every kind of stand, or the one that is asked for."""
    told = stands(visit.folder, today=visit.today, memory=visit.memory)
    pattern = visit.query.get("pattern", "")
    for account in told.accounts:
        if account.stand.name == pattern:
            return _one(visit, account)
    missing = f"There is no kind of stand called '{pattern}'." if pattern else ""
    return _every(visit, told, missing=missing)


def full_size(visit: Visit) -> Response:
    """The stands at their own size, to be printed and cut out."""
    told = stands(visit.folder, today=visit.today, memory=visit.memory)
    pattern = visit.query.get("pattern", "")
    every = visit.memory.kept(
        ("full-size plans", visit.folder),
        lambda: tuple((each, full_size_plan(each)) for each in told.accounts),
        rests_on=(told,),
    )
    drawn = [(each, plan) for each, plan in every if pattern in {"", each.stand.name}]
    return visit.page(
        "stands_full_size.html",
        line=full_size_line(),
        pattern=pattern,
        plans=[(capital(each.stand.name), plan) for each, plan in drawn if plan is not None],
        without=listed(each.stand.name for each, plan in drawn if plan is None),
        too_wide=listed(each.stand.name for each, _ in drawn if _is_too_wide(each)),
    )


PAGE = Page(path="stands", title="Stands", show=show, parts={"full-size": full_size})


def _is_too_wide(account: StandAccount) -> bool:
    outline = account.stand.outline
    return outline is not None and width_of(outline) > WIDEST_ON_PAPER


def _every(visit: Visit, told: Stands, *, missing: str) -> Response:
    views = visit.memory.kept(
        ("stand views", visit.folder), lambda: _small_views(visit, told), rests_on=(told,)
    )
    findings = told.counted.checked.findings
    raised = tuple(each for each in told.accounts if each.calling in {Calling.MUST, Calling.WISHED})
    line = _line(told.bodies, name=visit.query.get("body", ""))
    return visit.page(
        "stands.html",
        status=404 if missing else 200,
        told=told,
        missing=missing,
        lead=lead_words(raised or told.accounts),
        groups=list(_groups(views, is_counted=told.counted.count is not None)),
        views=views,
        figures=list(_boxes(told)),
        by_ratio=_by_ratio(told),
        stops=[found for found in findings if found.level is Level.STOP],
        others=[found for found in findings if _is_of_no_pattern(found)],
        line=line,
        line_words=None if line is None else line_words(line),
        fronts=[found for found in findings if found.code == "fronts-differ"],
        strips=() if line is None else _strips(visit, line),
        percent=difference_words,
        decimal=decimal_text,
        several=several,
    )


def _strips(visit: Visit, line: Abreast) -> tuple[tuple[str, Drawing], ...]:
    """The same drawing for three widths of page, with the class that shows it there."""
    widths = (("wide", DESK), ("middle", MIDDLE), ("phone", PHONE))
    return visit.memory.kept(
        ("strips", visit.folder),
        lambda: tuple((name, ground_strip(line, width=width)) for name, width in widths),
        rests_on=(line,),
    )


def _boxes(told: Stands) -> Iterator[tuple[str, str]]:
    """What is filled in at the head of the sheet."""
    raised = [each for each in told.accounts if each.calling is Calling.MUST]
    yield "Must have", several(len(raised), "kind")
    if told.ratio is not None:
        yield "Men to a figure", hundredth(told.ratio.most)
    if told.evenness is not None:
        yield "Evenness (1 is even)", tenth(told.evenness)


def _one(visit: Visit, account: StandAccount) -> Response:
    outline = account.stand.outline
    plans = (
        []
        if outline is None
        else [
            stand_plan(account, width=width, scale=page_scale([outline], width=width))
            for width in (LARGE, SMALL)
        ]
    )
    return visit.page(
        "stand.html",
        view=_view(visit, account, drawings=tuple(plan for plan in plans if plan is not None)),
        query=urlencode({"pattern": account.stand.name}),
        decimal=decimal_text,
        listed=listed,
    )


def _scale(told: Stands) -> float:
    outlines = [each.stand.outline for each in told.accounts]
    usual = [each for each in outlines if each is not None and width_of(each) <= WIDEST_OF_MANY]
    return page_scale(usual, width=SMALL)


def _small_views(visit: Visit, told: Stands) -> tuple[StandView, ...]:
    scale = _scale(told)
    drawn = [(each, stand_plan(each, width=SMALL, scale=scale)) for each in told.accounts]
    return tuple(
        _view(visit, each, drawings=() if plan is None else (plan,)) for each, plan in drawn
    )


def _view(visit: Visit, account: StandAccount, *, drawings: tuple[Drawing, ...]) -> StandView:
    stand = account.stand
    letters = letters_of(account)
    return StandView(
        account=account,
        title=capital(stand.name),
        raised=raised_words(account),
        base=outline_text(stand.outline),
        address=visit.address(f"stands?{urlencode({'pattern': stand.name})}"),
        parade=stand_address(visit, account.first) if account.first else "",
        drawings=drawings,
        holdings=tuple(
            Holding(
                words=several(number, kind),
                letter=letters.get(kind, ""),
                is_telltale=kind in stand.shows,
            )
            for kind, number in stand.modelled.items()
        ),
        men="" if stand.men is None else str(stand.men),
        ratio="" if account.ratio is None else ratio_words(account.ratio),
        crowding="" if account.crowding is None else crowding_words(account.crowding),
        room=room_words(account),
        chain=chain_words(account),
    )


def _groups(views: Sequence[StandView], *, is_counted: bool) -> Iterator[GroupView]:
    """By why they are there; without a count all together."""
    if not is_counted:
        yield GroupView(title="All kinds", note="not counted", views=tuple(views), is_folded=False)
        return
    for calling, (title, note) in HEADINGS.items():
        those = tuple(view for view in views if view.account.calling is calling)
        if those:
            is_folded = calling in {Calling.SUPPORTING, Calling.NOBODY}
            doubts = {found for view in those for found in view.account.findings}
            said = f"{note}; {several(len(doubts), 'doubt')}" if doubts else note
            yield GroupView(title=title, note=said, views=those, is_folded=is_folded)


def _by_ratio(told: Stands) -> str:
    """Stands whose figures are shared out by a fixed ratio: no pattern says what they look like."""
    if told.counted.count is None:
        return ""
    patterns = {account.stand.name for account in told.accounts}
    every = told.counted.count.made.must.stands
    return counted({name: number for name, number in every.items() if name not in patterns})


def _is_of_no_pattern(finding: Finding) -> bool:
    """Whether it is about stands, yet shown with none of them, nor with the fronts."""
    section = finding.place.path[:1]
    is_here = finding.level is not Level.STOP and finding.code != "fronts-differ"
    return is_here and not patterns_of(finding) and bool(OF_STANDS.intersection(section))


def _line(bodies: Sequence[Abreast], *, name: str) -> Abreast | None:
    """The body of a name, else the first."""
    return next((body for body in bodies if body.name == name), next(iter(bodies), None))
