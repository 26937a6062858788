"""Receiving a parcel: what was ordered, what came of it, what is short or miscast."""

from collections.abc import Mapping, Sequence

from starlette.responses import Response

from paradestate.core.certainty import Exact
from paradestate.core.choice import Choice
from paradestate.core.delivery import Delivery, packs_words
from paradestate.core.finding import Finding
from paradestate.core.journal_entry import EntryKind
from paradestate.core.log_request import LogRequest
from paradestate.core.money import money_text
from paradestate.core.on_order import OnOrder, figures_on_order
from paradestate.core.sentence.journal import entry_words, on_order_words
from paradestate.core.sentence.wording import counted, day_words, listed
from paradestate.core.source import Source
from paradestate.journeys.check import checked
from paradestate.journeys.choosing import want_of
from paradestate.journeys.holdings import holdings
from paradestate.journeys.log import log
from paradestate.journeys.order import OrderJourney, Request, order
from paradestate.journeys.receiving import BookedIn, Parcel
from paradestate.journeys.receiving import receive as booked_in
from paradestate.web.log_form import field, figures_said, head_said, new_id
from paradestate.web.visit import Visit

SECONDS = 10.0
"""How long the cheapest order is looked for when a form is to be filled in with it."""
WHY = "why"
"""The field that says why something won't come."""


def show(visit: Visit) -> Response:
    """The choice of a source, or the form for its parcel."""
    name = visit.query.get("source", "")
    if visit.query.get("packs"):
        return _filled_in(visit, visit.query["packs"], source=name)
    if visit.query.get("fill") != "cheapest":
        return _page(visit, source=name)
    journey = _cheapest(visit)
    if journey.answer is None or journey.problem is None:
        return _page(visit, source=name, findings=journey.checked.findings)
    packs = journey.answer.order.packs
    name = name or next((seller for seller, _ in packs), "")
    said = {
        field(word, pack): str(number)
        for (seller, pack), number in packs.items()
        for word in ("ordered", "came")
        if seller == name
    }
    return _page(visit, source=name, said=said, told=_order_words(journey, source=name))


def _filled_in(visit: Visit, packs: str, *, source: str) -> Response:
    """The form with the packs of a purchase slip: `North/N1=1, North/N2=2`."""
    numbers, findings = want_of(packs)
    of_source = numbers or {}
    name = source or next(iter(of_source), "").partition("/")[0]
    said = {
        field(word, key.removeprefix(f"{name}/")): str(number)
        for key, number in of_source.items()
        for word in ("ordered", "came")
        if key.startswith(f"{name}/")
    }
    return _page(visit, source=name, findings=findings, said=said)


def _order_words(journey: OrderJourney, *, source: str) -> str:
    """Which order a form was filled in with."""
    answer, problem = journey.answer, journey.problem
    if answer is None or problem is None or not answer.order.packs:
        return "Nothing is lacking, so there is no order to fill in."
    by_source: dict[str, dict[str, int]] = {}
    for (seller, pack), number in answer.order.packs.items():
        by_source.setdefault(seller, {})[pack] = number
    parts = "; ".join(f"{seller}: {packs_words(packs)}" for seller, packs in by_source.items())
    total = money_text(answer.order.total, problem.currency)
    sure = "exact" if isinstance(answer.certainty, Exact) else "the best found in time"
    here = "" if source in by_source else f" Nothing of it is from {source}."
    return f"The cheapest order of what is lacking now ({total}, {sure}): {parts}.{here}"


def receive(visit: Visit) -> Response:
    """Books the parcel in."""
    form, head = visit.form, head_said(visit)
    every = {word: figures_said(form, word) for word in ("ordered", "came", "short", "miscast")}
    slips = [found for _, findings in every.values() for found in findings]
    name = form.text("source")
    if slips or head.findings:
        found = (*head.findings, *slips)
        return _page(visit, source=name, findings=found, said=form.texts, status=422)
    parcel = Parcel(
        id=head.id,
        written=head.written,
        on=head.on,
        delivery=Delivery(
            source=name,
            ordered=every["ordered"][0],
            came=every["came"][0],
            short=every["short"][0],
            miscast=every["miscast"][0],
        ),
        note=form.text("note"),
    )
    done = booked_in(visit.folder, today=visit.today, parcel=parcel, memory=visit.memory)
    if done.logged.entry is None:
        return _page(visit, source=name, findings=done.findings, said=form.texts, status=422)
    return _page(visit, source=name, findings=done.findings, done=done)


def cancel(visit: Visit) -> Response:
    """Takes off what is on order what won't come of it."""
    form, head = visit.form, head_said(visit)
    figures, slips = figures_said(form, "cancelled")
    found = (*head.findings, *slips)
    name = form.text("source")
    if found:
        return _page(visit, source=name, findings=found, said=form.texts, status=422)
    request = LogRequest(
        id=head.id,
        kind=EntryKind.CANCELLED,
        written=head.written,
        on=head.on,
        figures=figures,
        source=name,
        note=form.text(WHY).strip(),
    )
    answer = log(visit.folder, today=visit.today, request=request, memory=visit.memory)
    if answer.entry is None:
        return _page(visit, source=name, findings=answer.findings, said=form.texts, status=422)
    return visit.back_to(f"holdings?written={answer.entry.id}")


def _cheapest(visit: Visit) -> OrderJourney:
    """The cheapest order of what is lacking now. Raises TooManySearchesError."""
    search = visit.site.searches.begun(
        ("parcel", visit.folder),
        lambda search: order(
            visit.folder,
            today=visit.today,
            choice=Choice(),
            request=Request(),
            search=search,
            memory=visit.memory,
        ),
        seconds=SECONDS,
        rests_on=visit.counted(),
    )
    search.wait()
    return search.answer()


def _page(
    visit: Visit,
    *,
    source: str,
    findings: Sequence[Finding] = (),
    said: Mapping[str, str] | None = None,
    done: BookedIn | None = None,
    told: str = "",
    status: int = 200,
) -> Response:
    read = checked(visit.folder, today=visit.today, memory=visit.memory)
    chosen = read.force.sources.get(source)
    # Of the two forms of this page the one that was sent keeps what was typed into it.
    is_off = WHY in (said or {})
    orders = _on_order(visit, source=source)
    entry = visit.form.text("entry") if status != 200 else new_id()  # noqa: PLR2004 - 200: fine
    return visit.page(
        "parcel.html",
        day_field="Known on" if is_off else "Came on",
        is_off=is_off,
        new_id=new_id,
        status=status,
        sources=read.force.sources,
        chosen=chosen,
        kinds=() if chosen is None else _kinds(chosen),
        findings_here=findings,
        said=said or {},
        done=done,
        told=told,
        entry=entry,
        field=field,
        on_order=listed(map(on_order_words, orders)),
        awaited=figures_on_order(orders),
        words={"entry": entry_words, "day": day_words, "counted": counted},
    )


def _on_order(visit: Visit, *, source: str) -> Sequence[OnOrder]:
    """What is on order from a source."""
    state = holdings(visit.folder, today=visit.today, memory=visit.memory).state
    return [each for each in state.on_order if each.source == source] if state else []


def _kinds(source: Source) -> tuple[str, ...]:
    """The kinds that any pack of a source holds."""
    return tuple(dict.fromkeys(kind for pack in source.packs.values() for kind in pack.holds))
