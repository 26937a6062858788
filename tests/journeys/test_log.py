"""Writing down what happened."""

import datetime
from pathlib import Path
from typing import Any
from uuid import uuid4

import pytest

from paradestate.core.finding import Level
from paradestate.core.journal_entry import EntryKind
from paradestate.journeys.history import history
from tests.journeys.conftest import FERRY_GUARD, TOWN_WATCH, written
from tests.journeys.logging_to import NOW, TODAY, logged, tried

DAY = datetime.timedelta(days=1)
SECTION = "1 Rifle Section"


def test_an_entry_is_written_and_what_is_held_then_is_told(guard: Path) -> None:
    answer = logged(guard, EntryKind.RECEIVED, figures={"boat": 1})
    assert answer.state.held.figures["boat"] == {"in packet": 1}
    assert history(guard, today=TODAY, last=9).entries == (answer.entry,)


def test_a_slip_leaves_no_journal_behind(guard: Path) -> None:
    answer = tried(guard, EntryKind.RECEIVED, figures={"bot": 1})
    assert [found.code for found in answer.findings] == ["unknown-choice"]
    assert not (guard / "journal.sqlite").exists()


def test_a_force_that_can_not_be_read_is_not_written_about(guard: Path) -> None:
    (guard / "force.yaml").write_text("figures: {", encoding="utf-8")
    answer = tried(guard, EntryKind.RECEIVED, figures={"boat": 1})
    assert (answer.entry, answer.findings[0].level) == (None, Level.STOP)
    assert set(answer.texts) == {str(guard / "force.yaml")}


def test_the_same_entry_sent_twice_is_stored_once(guard: Path) -> None:
    own = str(uuid4())
    first = logged(guard, EntryKind.RECEIVED, figures={"boat": 1}, id=own)
    again = logged(guard, EntryKind.RECEIVED, figures={"boat": 1}, id=own)
    assert (first.was_there, again.was_there) == (False, True)
    assert again.entry == first.entry
    assert again.state.held.figures["boat"] == {"in packet": 1}
    assert history(guard, today=TODAY, last=9).number == 1


def test_what_took_the_last_figures_can_be_sent_again(guard: Path) -> None:
    own = str(uuid4())
    said = {"figures": {"rifleman": 2}, "from_stage": "painted", "id": own}
    assert not logged(guard, EntryKind.LOST, **said).was_there
    assert logged(guard, EntryKind.LOST, **said).was_there
    other = tried(guard, EntryKind.LOST, **{**said, "figures": {"rifleman": 1}})
    assert [found.code for found in other.findings] == ["entry-id-taken"]


@pytest.mark.parametrize(
    ("kind", "said", "code"),
    [
        (EntryKind.STRUCK_OUT, {"struck_out": "zz", "note": "slip"}, "unknown-entry"),
        (EntryKind.PROMISED, {"figures": {"boat": 1}}, "promised-more-than-held"),
        (EntryKind.LOST, {"figures": {"boat": 1}}, "more-than-held"),
    ],
)
def test_what_is_refused_begins_no_journal(
    guard: Path, kind: EntryKind, said: dict[str, Any], code: str
) -> None:
    assert [found.code for found in tried(guard, kind, **said).findings] == [code]
    assert not (guard / "journal.sqlite").exists()


def test_an_entry_is_struck_out_once_and_its_id_may_be_typed_in_capitals(guard: Path) -> None:
    sent = logged(guard, EntryKind.RECEIVED, figures={"boat": 1}).entry
    assert sent is not None
    logged(guard, EntryKind.STRUCK_OUT, struck_out=sent.id[:8].upper(), note="slip")
    again = tried(guard, EntryKind.STRUCK_OUT, struck_out=sent.id, note="slip")
    assert [found.code for found in again.findings] == ["struck-out-already"]


def test_strikes_of_strikes_are_told_as_they_count(guard: Path) -> None:
    ids = []
    struck = logged(guard, EntryKind.RECEIVED, figures={"boat": 1}).entry
    for _ in range(3):
        assert struck is not None
        ids.append(struck.id)
        struck = logged(guard, EntryKind.STRUCK_OUT, struck_out=struck.id, note="slip").entry
    known = history(guard, today=TODAY, last=9)
    assert known.struck_out == frozenset({ids[0], ids[2]})


def test_lending_what_is_promised_is_told(guard: Path) -> None:
    logged(guard, EntryKind.PROMISED, figures={"rifleman": 10}, on=TODAY + DAY)
    lent = logged(guard, EntryKind.LENT, figures={"rifleman": 2}, from_stage="painted")
    assert [found.code for found in lent.findings] == ["promise-broken"]
    back = logged(guard, EntryKind.RETURNED, figures={"rifleman": 2})
    assert back.findings == ()


def test_an_entry_is_struck_out_by_the_beginning_of_its_id(guard: Path) -> None:
    sent = logged(guard, EntryKind.RECEIVED, figures={"boat": 1}).entry
    assert sent is not None
    answer = logged(guard, EntryKind.STRUCK_OUT, struck_out=sent.id[:9], note="wrong box")
    assert "boat" not in answer.state.held.figures
    known = history(guard, today=TODAY, last=1)
    assert known.struck_out == frozenset({sent.id})
    assert (known.number, len(known.entries)) == (2, 1)
    assert answer.entry is not None
    back = logged(guard, EntryKind.STRUCK_OUT, struck_out=answer.entry.id, note="right after all")
    assert back.state.held.figures["boat"] == {"in packet": 1}
    assert history(guard, today=TODAY, last=1).struck_out == frozenset({answer.entry.id})


def test_an_id_that_fits_no_entry_is_refused(guard: Path) -> None:
    logged(guard, EntryKind.RECEIVED, figures={"boat": 1})
    answer = tried(guard, EntryKind.STRUCK_OUT, struck_out="zz", note="slip")
    assert [found.code for found in answer.findings] == ["unknown-entry"]


def test_what_later_entries_rest_on_is_not_struck_out(guard: Path) -> None:
    sent = logged(guard, EntryKind.RECEIVED, figures={"boat": 1}).entry
    logged(guard, EntryKind.MOVED, figures={"boat": 1}, to_stage="assembled")
    assert sent is not None
    answer = tried(guard, EntryKind.STRUCK_OUT, struck_out=sent.id, note="slip")
    assert [found.code for found in answer.findings] == ["more-than-held"]
    assert history(guard, today=TODAY, last=9).number == 2


def test_of_entries_that_lack_the_same_figures_the_first_is_named(guard: Path) -> None:
    sent = logged(guard, EntryKind.RECEIVED, figures={"boat": 3}).entry
    for _ in range(3):
        logged(guard, EntryKind.MOVED, figures={"boat": 1}, to_stage="assembled")
    assert sent is not None
    answer = tried(guard, EntryKind.STRUCK_OUT, struck_out=sent.id, note="slip")
    (found,) = answer.findings
    assert "1 more boat from 'in packet'" in found.message


def test_what_is_written_late_is_weighed_on_its_day(guard: Path) -> None:
    logged(guard, EntryKind.RECEIVED, figures={"boat": 2}, on=TODAY)
    early = tried(guard, EntryKind.LOST, figures={"boat": 1}, on=TODAY - DAY)
    assert [found.code for found in early.findings] == ["more-than-held"]
    logged(guard, EntryKind.SOLD, figures={"boat": 2}, on=TODAY)
    late = logged(guard, EntryKind.RECEIVED, figures={"boat": 1}, on=TODAY - DAY)
    assert late.state.held.figures["boat"] == {"in packet": 1}


def test_a_count_on_a_past_day_leaves_what_came_later_alone(guard: Path) -> None:
    logged(guard, EntryKind.RECEIVED, figures={"boat": 2}, on=TODAY)
    answer = logged(
        guard, EntryKind.COUNTED, figures={"boat": 1}, to_stage="in packet", on=TODAY - DAY
    )
    assert answer.state.held.figures["boat"] == {"in packet": 3}


def test_a_stand_is_named_as_the_count_names_it(guard: Path) -> None:
    answer = logged(guard, EntryKind.MOVED, stand=SECTION, from_stage="in packet", to_stage="based")
    assert answer.state.held.stands == {"rifle section": {"based": 1}}
    assert answer.state.held.figures == {"rifleman": {"in packet": 4, "painted": 2}}
    wrong = tried(guard, EntryKind.LOST, stand="3 Rifle Section")
    assert [found.code for found in wrong.findings] == ["unknown-choice"]


def test_a_stand_can_not_be_named_while_the_force_can_not_be_counted(guard: Path) -> None:
    file = guard / "force.yaml"
    text = file.read_text(encoding="utf-8").replace(
        "rifle section: 2", "rifle section: {number: 2-3}"
    )
    file.write_text(
        text.replace(
            "{parts: {rifle section: {number: 2-3}, boat: 1}}",
            "{parts: [{of: rifle section, number: 2-3}]}",
        ),
        encoding="utf-8",
    )
    answer = tried(guard, EntryKind.LOST, stand=SECTION)
    assert (answer.entry, answer.findings[0].level) == (None, Level.STOP)


class TestCollections:
    def test_what_belongs_to_no_force_alone_is_written_for_all(self, club: Path) -> None:
        answer = logged(club, EntryKind.RECEIVED, figures={"rifleman": 4})
        assert answer.entry is not None
        assert answer.entry.force == ""
        assert (club / "journal.sqlite").exists()
        named = logged(club / "watch", EntryKind.RECEIVED, figures={"rifleman": 4})
        assert named.entry is not None
        assert named.entry.force == "watch"
        assert history(club, today=TODAY, last=9).number == 2

    @pytest.mark.parametrize(
        ("kind", "said"), [(EntryKind.PROMISED, {}), (EntryKind.LOST, {"stand": SECTION})]
    )
    def test_a_promise_or_a_stand_belongs_to_one_force(
        self, club: Path, kind: EntryKind, said: dict[str, str]
    ) -> None:
        answer = tried(club, kind, **said)
        (found,) = answer.findings
        assert (found.code, found.hint) == ("log-incomplete", "Name its folder: guard, watch.")

    def test_forces_of_different_stages_are_logged_apart(self, club: Path) -> None:
        with (club / "watch" / "force.yaml").open("a", encoding="utf-8") as file:
            file.write("bench: {stages: [in packet, painted, based]}\n")
        answer = tried(club, EntryKind.RECEIVED, figures={"rifleman": 4})
        assert [found.code for found in answer.findings] == ["stages-differ"]

    def test_one_figure_is_not_promised_to_two_forces_unsaid(self, club: Path) -> None:
        logged(club, EntryKind.NOTED, note="the club's boxes")
        thursday = TODAY + 7 * DAY
        whole = logged(club / "watch", EntryKind.PROMISED, on=thursday)
        assert whole.entry is not None
        assert whole.entry.promised == {"rifleman": 8}
        (found,) = logged(
            club / "guard", EntryKind.PROMISED, figures={"rifleman": 10}, on=thursday
        ).findings
        assert found.level is Level.WARN
        assert found.message == (
            "3 riflemen too many are promised to guard and watch on Thursday 12 March 2026: "
            "15 held."
        )
        again = tried(club / "guard", EntryKind.PROMISED, figures={"rifleman": 6}, on=thursday)
        assert [found.message for found in again.findings] == [
            "Riflemen: 15 held, 16 promised (10 promised before) for Thursday 12 March 2026."
        ]
        free = logged(club / "guard", EntryKind.PROMISED, figures={"rifleman": 10}, on=TODAY)
        assert free.findings == ()


def test_a_clock_that_goes_back_does_no_harm(guard: Path) -> None:
    earlier = NOW - datetime.timedelta(days=400)
    logged(guard, EntryKind.RECEIVED, figures={"boat": 2})
    answer = logged(
        guard, EntryKind.MOVED, figures={"boat": 1}, to_stage="assembled", written=earlier
    )
    assert answer.state.held.figures["boat"] == {"in packet": 1, "assembled": 1}
    known = history(guard, today=TODAY, last=9)
    assert [entry.written for entry in known.entries] == [earlier, NOW]
    assert known.findings == ()
    behind = logged(guard, EntryKind.NOTED, note="a year ago?", on=TODAY - 400 * DAY)
    assert behind.findings == ()


SELLS = """
sources:
  North:
    currency: GBP
    carriage: {0: 4.50}
    packs:
      N1: {price: 5.00, holds: {rifleman: HELD}, lead days: 7}
"""


def test_of_sources_that_differ_between_forces_it_is_said_which_holds(tmp_path: Path) -> None:
    club = tmp_path / "club"
    written(club / "guard", FERRY_GUARD + SELLS.replace("HELD", "32"))
    written(club / "watch", TOWN_WATCH + SELLS.replace("HELD", "30"))
    said = {"figures": {"North/N1": 1}, "id": str(uuid4())}
    answer = tried(club, EntryKind.ORDERED, **said)
    assert answer.entry is not None
    assert answer.entry.ordered == {"rifleman": 30}
    (found,) = [each for each in answer.findings if each.code == "sources-differ"]
    assert found.effect == "It is taken as watch says."
    again = tried(club, EntryKind.ORDERED, **said)
    assert again.was_there
    assert "sources-differ" not in {each.code for each in again.findings}
    own = tried(club / "guard", EntryKind.ORDERED, figures={"North/N1": 1})
    assert own.entry is not None
    assert own.entry.ordered == {"rifleman": 32}
    assert "sources-differ" not in {each.code for each in own.findings}
