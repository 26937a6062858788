"""Several stands that are brought on alike in one entry: an evening is one entry, and one undo."""

from dataclasses import replace
from typing import Any

import pytest

from paradestate.core.holdings import Holdings, part_of
from paradestate.core.journal import JournalState, added_up
from paradestate.core.journal_entry import EntryKind, JournalEntry
from paradestate.core.journal_text import UnknownEntryError, entry_text, read_entry
from paradestate.core.log import drafted, says_the_same
from paradestate.core.log_finding import said_words
from paradestate.core.log_request import NamedStand
from paradestate.core.sentence.journal import entry_words
from tests.core.test_log import DESK as ONE_SECTION
from tests.core.test_log import HELD, LENT, refused, request, written
from tests.entries import figures

NAMES = ("1 Section", "2 Section", "3 Section")
RIFLE = NamedStand(pattern="rifle section", figures={"rifleman": 4})
DESK = replace(ONE_SECTION, stands={**ONE_SECTION.stands, **dict.fromkeys(NAMES, RIFLE)})


def moved(*names: str, to: str, start: str = "in packet", **said: Any) -> JournalEntry:  # noqa: ANN401
    return written(EntryKind.MOVED, desk=DESK, stands=names, from_stage=start, to_stage=to, **said)


def test_their_figures_stay_loose_until_the_last_stage_and_then_they_are_whole() -> None:
    entry = moved(*NAMES, to="painted")
    assert entry.leaves == figures(rifleman={"in packet": 12})
    assert entry.comes == figures(rifleman={"painted": 12})
    assert entry.stands == NAMES
    entry = moved(*NAMES, to="based")
    assert entry.comes == Holdings(stands={"rifle section": {"based": 3}})


def test_the_stage_before_is_meant_where_none_is_said() -> None:
    assert moved("1 Section", to="painted", start="").leaves == figures(rifleman={"undercoated": 4})


def test_stands_that_are_held_whole_move_as_pieces() -> None:
    whole = Holdings(stands={"rifle section": {"painted": 3}})
    desk = replace(DESK, state=replace(DESK.state, held=whole))
    entry = written(
        EntryKind.MOVED, desk=desk, stands=NAMES, from_stage="painted", to_stage="based"
    )
    assert (entry.leaves, entry.comes) == (
        whole,
        Holdings(stands={"rifle section": {"based": 3}}),
    )


def test_a_session_of_several_stands_has_its_minutes() -> None:
    entry = written(
        EntryKind.SESSION,
        desk=DESK,
        stands=NAMES[:2],
        from_stage="in packet",
        to_stage="undercoated",
        minutes=40,
    )
    assert (entry.minutes, entry.stands) == (40, NAMES[:2])


@pytest.mark.parametrize(
    ("said", "code", "message"),
    [
        ({"stands": (*NAMES, "9 Section")}, "unknown-choice", "9 Section"),
        ({"stands": ("1 Section", "Truck")}, "log-option", "not all of one pattern"),
        ({"stands": ("1 Section", "1 Section")}, "log-option", "1 Section is named twice"),
        ({"stands": NAMES, "stand": "1 Section"}, "log-option", "with something else"),
        ({"stands": NAMES, "from_stage": "undercoated"}, "more-than-held", "12 of 26 riflemen"),
    ],
)
def test_what_can_not_be_brought_on_alike_is_refused(
    said: dict[str, Any], code: str, message: str
) -> None:
    asked = {"from_stage": "in packet", "to_stage": "painted", **said}
    found = refused(EntryKind.MOVED, desk=DESK, **asked)
    assert found.code == code
    assert message in found.message


def test_more_of_them_than_the_force_has_are_told() -> None:
    held = replace(HELD, stands={"rifle section": {"based": 2}})
    desk = replace(DESK, state=replace(DESK.state, held=held))
    said: dict[str, Any] = {"stands": NAMES, "from_stage": "in packet", "to_stage": "based"}
    _, (found,) = drafted(request(EntryKind.MOVED, **said), desk)
    assert found.message == "That makes 5 rifle sections whole, and the force has 4."


def test_the_same_sent_again_is_known_and_other_stands_are_another_entry() -> None:
    said: dict[str, Any] = {"from_stage": "in packet", "to_stage": "painted"}
    entry = moved(*NAMES[:2], to="painted")
    assert says_the_same(entry, request(EntryKind.MOVED, stands=NAMES[:2], **said))
    assert not says_the_same(entry, request(EntryKind.MOVED, stands=NAMES[1:], **said))
    asked = request(EntryKind.MOVED, stands=NAMES[:2], **said)
    assert said_words(asked).startswith("moved 1 Section and 2 Section from in packet to painted")


def test_each_of_them_is_remembered_with_its_part() -> None:
    start = JournalState(held=HELD, lent=LENT)
    entry = moved(*NAMES, to="painted")
    state = added_up(start, [entry])
    assert state.worked == {("", name): figures(rifleman={"painted": 4}) for name in NAMES}
    based = replace(entry, id="b", leaves=entry.comes, comes=Holdings(stands={"x": {"based": 3}}))
    assert added_up(state, [based]).worked == {
        ("", name): Holdings(stands={"x": {"based": 1}}) for name in NAMES
    }
    assert part_of(HELD, among=1) is HELD


def test_an_entry_of_several_stands_comes_back_from_its_text() -> None:
    entry = moved(*NAMES, to="painted")
    text = entry_text(entry)
    assert '"together":["1 Section","2 Section","3 Section"]' in text
    assert read_entry(text, id=entry.id) == entry


@pytest.mark.parametrize("names", ['["a","b","c","d","e"]', "[1,2]", '"a"'])
def test_names_without_an_equal_part_each_are_not_understood(names: str) -> None:
    entry = moved(*NAMES, to="painted")
    text = entry_text(entry).replace('["1 Section","2 Section","3 Section"]', names)
    with pytest.raises(UnknownEntryError):
        read_entry(text, id=entry.id)


def test_of_many_stands_the_first_is_said_and_how_many_more() -> None:
    entry = moved(*NAMES, to="painted")
    assert entry_words(entry) == (
        "moved 12 riflemen from in packet to painted (1 Section, 2 Section and 3 Section)"
    )
    many = replace(entry, stands=(*NAMES, "4 Section"))
    assert entry_words(many).endswith("to painted (1 Section and 3 more stands)")
