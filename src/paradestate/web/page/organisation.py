"""The organisation: who is under whom, how much is done, and what another choice would change."""

from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path

from starlette.responses import Response

from paradestate.core.branch import only_in
from paradestate.core.finding import Finding, in_reading_order
from paradestate.core.sentence import branch as branch_words
from paradestate.core.sentence.change import following_rows, leading_rows
from paradestate.core.sentence.mark import mark_words
from paradestate.core.sentence.wording import capital, plural, several
from paradestate.journeys.count import Count, CountAnswer, count
from paradestate.journeys.raising import (
    NothingKeptError,
    Raised,
    RaisingAnswer,
    put_former_back,
    raise_anew,
)
from paradestate.sheet.organisation_box import fill_bar
from paradestate.sheet.texture import patterns
from paradestate.text.former import Former, former_versions
from paradestate.web.organisation.amendment import Amendment, amendment_of, fields_of
from paradestate.web.organisation.view import (
    Looking,
    addend_words,
    arm_signs,
    grown,
    size_marks,
    view_of,
)
from paradestate.web.page_kind import Page
from paradestate.web.visit import Visit

SHEET = "organisation"
UNREADABLE, CONFLICT = 422, 409


@dataclass(frozen=True, slots=True, kw_only=True)
class Asked:
    """An amendment, and the force counted as it asks."""

    amendment: Amendment
    answer: CountAnswer | None
    """None where nothing is asked for, what is can't be read, or there is nothing to compare."""

    @property
    def count(self) -> Count | None:
        """The force as it would be."""
        return None if self.answer is None else self.answer.count


@dataclass(frozen=True, slots=True, kw_only=True)
class Undo:
    """The former version that can be put back."""

    former: Former
    file: str
    raised: Raised | None
    """What was done last, where that was done here."""


def show(visit: Visit) -> Response:
    """The organisation as it is written, or as an amendment would have it."""
    return _page(visit, values=visit.query)


def accept(visit: Visit) -> Response:
    """Writes an amendment into the folder."""
    values = fields_of(visit.form.text("amendment"))
    asked = amendment_of(visit.counted().checked.force, values)
    if asked.findings:
        return _page(visit, values=values, status=422)
    answer = raise_anew(visit.folder, today=visit.today, at=visit.now, choice=asked.choice)
    return _written(visit, answer, values=values)


def put_back(visit: Visit) -> Response:
    """Puts the former version back, if it is still the one that was shown."""
    former = _newest(_raising_file(visit.counted()))
    if former is None or former.path.name != visit.form.text("former"):
        told = "The file has been written again since this sheet was made: look what is there now."
        return _page(visit, values={}, told=told, status=409)
    try:
        answer = put_former_back(visit.folder, today=visit.today, at=visit.now)
    except NothingKeptError as error:
        told = f"No former version of {error} is kept any more."
        return _page(visit, values={}, told=told, status=409)
    return _written(visit, answer, values={})


PAGE = Page(
    path=SHEET,
    title="Organisation",
    show=show,
    actions={"accept": accept, "put-back": put_back},
)


def _written(visit: Visit, answer: RaisingAnswer, *, values: Mapping[str, str]) -> Response:
    if answer.raised is not None:
        visit.memory.keep(("raised", visit.folder), answer.raised)
        return visit.back_to(SHEET)
    if answer.checked.is_stopped:
        return _page(visit, values=values, findings=answer.checked.findings, status=422)
    return visit.back_to(SHEET)


def _asked(visit: Visit, written: CountAnswer, *, values: Mapping[str, str]) -> Asked:
    amendment = amendment_of(written.checked.force, values)
    if not amendment.is_asked or amendment.findings:
        return Asked(amendment=amendment, answer=None)
    if written.count is None:
        return Asked(amendment=amendment, answer=None)
    answer = count(
        visit.folder,
        today=visit.today,
        choice=amendment.choice,
        since_written=True,
        memory=visit.memory,
    )
    return Asked(amendment=amendment, answer=answer)


def _page(
    visit: Visit,
    *,
    values: Mapping[str, str],
    findings: tuple[Finding, ...] = (),
    told: str = "",
    status: int = 200,
) -> Response:
    written = visit.counted()
    asked = _asked(visit, written, values=values)
    shown = asked.count or written.count
    more = asked.answer.checked.findings if asked.answer is not None else ()
    looking = Looking(
        address=visit.address(SHEET),
        fields=asked.amendment.fields,
        opened=values.get("open"),
        of=values.get("of", ""),
    )
    return visit.page(
        "organisation.html",
        status=UNREADABLE if asked.amendment.findings else status,
        told=told,
        found=in_reading_order(
            (*findings, *asked.amendment.findings, *more, *written.checked.findings)
        ),
        force=written.checked.force,
        written=written.count,
        asked=asked,
        shown=shown,
        looking=looking,
        undo=_undo(visit, written),
        **_of_count(visit, shown, looking=looking),
        **_of_changes(written.count, asked.count),
        words=branch_words,
        several=several,
        capital=capital,
        plural=plural,
    )


def _of_count(visit: Visit, shown: Count | None, *, looking: Looking) -> Mapping[str, object]:
    if shown is None:
        return {"view": None}
    key = ("grown", visit.folder, tuple(looking.fields.items()))
    made = visit.memory.kept(key, lambda: grown(shown), rests_on=(shown,))
    return {
        "view": view_of(shown, from_=made, looking=looking),
        "textures": patterns(shown.force.bench.stages),
        "bar": fill_bar,
        "arms": arm_signs(),
        "marks": size_marks(shown),
        "addend_words": addend_words,
        "mark_words": mark_words,
    }


def _of_changes(before: Count | None, after: Count | None) -> Mapping[str, object]:
    """What follows from the amendment, and which bodies come and go."""
    changes = () if after is None or after.changes is None else after.changes
    return {
        "leading": leading_rows(changes),
        "following": following_rows(changes),
        "comes": only_in(after.made, before.made) if before and after else (),
        "goes": only_in(before.made, after.made) if before and after else (),
    }


def _undo(visit: Visit, written: CountAnswer) -> Undo | None:
    file = _raising_file(written)
    former = _newest(file)
    if file is None or former is None:
        return None
    raised = visit.memory.last(("raised", visit.folder), Raised)
    is_last = raised is not None and raised.former.name == former.path.name
    return Undo(former=former, file=file.name, raised=raised if is_last else None)


def _raising_file(written: CountAnswer) -> Path | None:
    """The file that says what is raised."""
    place = written.checked.force.places.get(("raise",))
    return None if place is None else Path(place.file)


def _newest(file: Path | None) -> Former | None:
    kept = former_versions(file) if file is not None else ()
    return kept[0] if kept else None
