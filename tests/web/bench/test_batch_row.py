"""Batches as rows, and the steps that their forms say."""

import datetime
from pathlib import Path

import pytest

from paradestate.core.choice import Choice
from paradestate.journeys.bench.bench import OrderOfWork, order_of_work
from paradestate.web.bench.batch_row import BatchRow, batch_rows, step_said
from paradestate.web.form import Form
from tests.journeys.conftest import written

TODAY = datetime.date(2026, 3, 5)
FILES = """\
format: 1
title: Test
figures: {rifleman: {}}
stands:
  section: {base: none, figures: {rifleman: 4}}
  command: {base: none, figures: {rifleman: 1}}
formations:
  top: {parts: {company: 2}}
  company: {parts: {command: 1, section: 60}, called: Company}
raise: {formation: top}
bench: {stages: [raw, primed, painted], minutes: {foot: {painted: 15}}, week: 4 h}
stock: {rifleman: {raw: 300, primed: 100}}
"""


@pytest.fixture(scope="module")
def order(tmp_path_factory: pytest.TempPathFactory) -> OrderOfWork:
    place = written(tmp_path_factory.mktemp("rows") / "test", FILES)
    assert isinstance(place, Path)
    found = order_of_work(place, today=TODAY, choice=Choice()).order
    assert found is not None
    return found


def rows_of(order: OrderOfWork, **days: str) -> tuple[BatchRow, ...]:
    return batch_rows(order, days={int(number[1:]): day for number, day in days.items()})


def test_a_row_says_its_stands_its_time_and_what_it_reaches(order: OrderOfWork) -> None:
    row = next(each for each in rows_of(order, _2="1 May") if each.number == 2)
    assert row.title == "120 sections"
    assert row.where == "60 in 1 Company; 60 in 2 Company"
    assert row.when == "half chance by 1 May"
    assert row.lacking == "82 riflemen"
    assert any("smallest legal force" in each for each in row.reaches)


def test_without_a_day_the_week_is_said(order: OrderOfWork) -> None:
    assert [each.when[:5] for each in rows_of(order)] == ["week "] * 2


def test_more_stands_than_a_form_offers_are_offered_as_far_as_it_goes(order: OrderOfWork) -> None:
    views = rows_of(order)[1].steps
    assert [view.choices[0] for view in views] == [view.step.number for view in views]
    assert all(view.choices[-1] == 1 for view in views)
    partial = [view for view in views if view.figures]
    assert all(not view.step.is_whole for view in partial)


def test_a_form_is_known_again_by_its_stand_its_stages_and_its_number(order: OrderOfWork) -> None:
    for row in rows_of(order):
        for view in row.steps:
            assert step_said(order, Form(texts=view.fields)) == view.step
            changed = {**view.fields, "of": "999"}
            assert step_said(order, Form(texts=changed)) is None
    assert step_said(order, Form()) is None
