"""Who writes with a form of an evening, and under which ids."""

from dataclasses import replace
from datetime import timedelta
from pathlib import Path

from starlette.requests import Request

from paradestate.core.play.event import Ended
from paradestate.core.play.game_record import GameRecord, Line
from paradestate.web.application import new_site
from paradestate.web.evening.sending import first_id, lines_from, pen_of
from paradestate.web.form import Form
from paradestate.web.phone.gate import DEVICE
from paradestate.web.visit import Visit
from tests.entries import uuid
from tests.journeys.conftest import written
from tests.web.grounds import NOW

OWN = """\
format: 1
title: Test
stands: {a: {base: none}}
formations: {top: {parts: {a: 1}}}
raise: {formation: top}
"""


def sending(folder: Path, *, device: str = "", **texts: str) -> Visit:
    """A form that came in."""
    return Visit(
        site=new_site(folder, hosts=frozenset(), clock=lambda: NOW),
        request=Request({"type": "http", "headers": [], DEVICE: device}),
        cookie="",
        folder=folder,
        form=Form(texts={"entry": uuid(1), **texts}),
    )


def test_the_same_form_has_the_same_id_and_one_that_was_changed_another(tmp_path: Path) -> None:
    form = sending(tmp_path, what="tanks=2", number="2")
    assert first_id(form) == first_id(sending(tmp_path, number="2", what="tanks=2"))
    others = (
        sending(tmp_path, what="tanks=2", number="1"),
        sending(tmp_path, what="tanks=2"),
        sending(tmp_path, entry=uuid(2), what="tanks=2", number="2"),
    )
    assert len({first_id(form), *map(first_id, others)}) == 1 + len(others)


def test_the_page_on_a_phone_tells_under_a_name_of_its_own(tmp_path: Path) -> None:
    """The table page on the same phone numbers what it tells by itself."""
    folder = written(tmp_path / "own", OWN)
    visit = sending(folder, device="Anna's phone", of="1f")
    pen = pen_of(visit)
    assert (pen.device, pen.of, pen.entry) == ("Anna's phone, on the page", "1f", first_id(visit))
    assert pen_of(replace(visit, request=Request({"type": "http", "headers": []}))).device == ""
    assert [pen.new_id(), pen.new_id()][0] == first_id(visit)


def test_what_was_written_later_is_not_said_of_a_form_that_is_sent_again() -> None:
    later = NOW + timedelta(seconds=1)
    moments = ((NOW, ""), (NOW, ""), (NOW, "another phone"), (later, ""))
    lines = tuple(
        Line(
            id=uuid(number), on=written_at.date(), written=written_at, event=Ended(), device=device
        )
        for number, (written_at, device) in enumerate(moments)
    )
    record = GameRecord(id=uuid(9), opening=lines[0], lines=lines)
    assert lines_from(record, uuid(0)) == lines[:2]
    assert lines_from(record, uuid(3)) == lines[3:]
    assert lines_from(record, uuid(8)) == ()
