"""What a game left to be repaired, on the bench with the day on which it is wanted."""

import datetime
import shutil
from dataclasses import replace
from fractions import Fraction
from pathlib import Path

import pytest

from paradestate.core.choice import Choice
from paradestate.core.journal_entry import EntryKind
from paradestate.core.log_request import LogRequest
from paradestate.core.play.event import Subject, Told
from paradestate.journeys.bench.bench import OrderOfWork, order_of_work
from paradestate.journeys.game.losses_pen import LossesTold, Teller
from paradestate.journeys.game.losses_struck import strike_loss
from paradestate.journeys.game.pen import write_requests
from paradestate.journeys.game.repairs import RepairsAsked, put_on_the_bench, repairs_offered
from paradestate.journeys.history import history
from tests.forces import EXAMPLES
from tests.journeys.logging_to import logged
from tests.journeys.played_losses import AT, DAY, SECTIONS, ids, play

WEEK = datetime.timedelta(days=7)
NIGHTS = f"aim: {{game nights: [every 2 weeks from {DAY}]}}\n"
NEXT_NIGHT = DAY + 2 * WEEK
BROKEN = SECTIONS[1]


def to_repair(name: str, what: str) -> Told:
    return Told(subject=Subject("to repair", name), value=what)


@pytest.fixture
def teller(tmp_path: Path) -> Teller:
    copy = tmp_path / "marenz"
    shutil.copytree(EXAMPLES / "marenz", copy)
    for name in SECTIONS[:2]:
        logged(copy, EntryKind.RECEIVED, stand=name)
    new = ids(7000)
    return Teller(folder=copy, today=DAY, now=AT, new_id=lambda: next(new))


def codes(done: LossesTold) -> list[str]:
    return [each.code for each in done.findings]


def order(teller: Teller) -> OrderOfWork:
    found = order_of_work(teller.folder, today=teller.today, choice=Choice()).order
    assert found is not None
    return found


def test_what_is_broken_is_wanted_on_the_next_game_night_until_it_is_done(teller: Teller) -> None:
    (teller.folder / "nights.yaml").write_text(NIGHTS, encoding="utf-8")
    assert not order(teller).ladder.repairs
    assert put_on_the_bench(teller, RepairsAsked()).after.record is None
    play(teller.folder, to_repair(BROKEN, "bayonet snapped"), to_repair("Observers", "chipped"))
    done = put_on_the_bench(teller, RepairsAsked())
    assert codes(done) == ["unknown-choice"]
    assert dict(done.after.to_repair) == {"Observers": "chipped"}
    (entry,) = done.entries
    assert (entry.stand, entry.wanted, entry.note) == (BROKEN, NEXT_NIGHT, "bayonet snapped")
    found = order(teller)
    (repair,) = found.ladder.repairs
    assert [work.stand.name for work in repair.works] == [BROKEN]
    assert (repair.milestone.wanted, repair.rung) == (NEXT_NIGHT, 1)
    assert (repair.ends, repair.due) == (Fraction(15), Fraction(8 * 60))
    (sentence,) = found.repair_sentences(DAY)
    assert "done after 15 min, of 8 h before it at your pace; four in five by " in sentence
    assert all(each.goal.name != repair.milestone.name for each in found.forecast_of.values())
    mended = LogRequest(
        id=teller.new_id(),
        kind=EntryKind.MOVED,
        written=AT,
        on=DAY,
        stand=BROKEN,
        to_stage="based",
    )
    assert write_requests(teller, [mended]).entries
    assert not order(teller).ladder.repairs


def test_a_form_is_written_once_and_what_went_back_is_struck_out_like_any_other(
    teller: Teller,
) -> None:
    play(teller.folder, to_repair(BROKEN, "bayonet snapped"))
    asked = RepairsAsked(names=(BROKEN,), wanted=DAY + WEEK)
    form = replace(teller, form=teller.new_id())
    done = put_on_the_bench(form, asked)
    (entry,) = done.entries
    assert (done.after.to_repair, done.after.went_back) == ({}, {BROKEN: entry})
    again = put_on_the_bench(form, asked)
    assert (again.was_there, again.is_done, again.entries) == (True, True, ())
    slip = replace(teller, form=teller.new_id())
    assert codes(strike_loss(slip, entry.id, because=" ")) == ["log-incomplete"]
    struck = strike_loss(slip, entry.id, because="another stand")
    assert [each.struck_out for each in struck.entries] == [entry.id]
    assert (struck.after.to_repair, struck.after.went_back) == ({BROKEN: "bayonet snapped"}, {})
    assert strike_loss(slip, entry.id, because="another stand").was_there
    other = replace(teller, form=teller.new_id())
    assert codes(strike_loss(other, entry.id, because="again")) == ["line-unclear"]


def test_a_form_begins_with_the_next_game_night_and_the_stages_before_the_last(
    teller: Teller,
) -> None:
    offered = repairs_offered(teller.folder, today=DAY)
    assert (offered.wanted, offered.stages[-1]) == (None, "painted")
    (teller.folder / "nights.yaml").write_text(NIGHTS, encoding="utf-8")
    assert repairs_offered(teller.folder, today=DAY).wanted == NEXT_NIGHT


def test_a_stand_may_be_named_with_its_day_and_its_stage(teller: Teller) -> None:
    play(teller.folder)
    assert codes(put_on_the_bench(teller, RepairsAsked())) == ["nothing-to-repair"]
    named = RepairsAsked(names=(BROKEN,), note="base bent", to_stage="assembled")
    assert codes(put_on_the_bench(teller, named)) == ["repair-undated"]
    dated = RepairsAsked(names=(BROKEN,), note="base bent", to_stage="assembled", wanted=DAY + WEEK)
    (entry,) = put_on_the_bench(teller, dated).entries
    assert entry.comes.stands == {"rifle section": {"assembled": 1}}
    assert [each.left for each in order(teller).force.repairs] == ["based"]
    past = history(teller.folder, today=DAY, last=1)
    assert past.entries[0].note == "base bent"
    (late,) = order(replace(teller, today=DAY + WEEK)).repair_sentences(DAY + WEEK)
    assert "OVERDUE" in late


def test_a_bench_with_one_stage_has_nothing_to_go_back_to(teller: Teller) -> None:
    file = teller.folder / "force.yaml"
    stages = "stages: [in packet, assembled, undercoated, painted, based]"
    text = file.read_text(encoding="utf-8")
    file.write_text(text.replace(stages, "stages: [based]"), encoding="utf-8")
    play(teller.folder, to_repair(BROKEN, "bayonet snapped"))
    assert codes(put_on_the_bench(teller, RepairsAsked(wanted=DAY))) == ["no-stage-before"]
