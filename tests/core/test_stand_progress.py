"""Whether a named stand is at the stage already to which it is to be brought."""

from collections.abc import Mapping
from dataclasses import replace
from typing import Any

from paradestate.core.finding import Finding
from paradestate.core.holdings import Holdings
from paradestate.core.journal import JournalState
from paradestate.core.journal_entry import EntryKind
from paradestate.core.log_request import Desk, LogRequest, NamedStand
from paradestate.core.stand_progress import there_already
from tests.entries import ON, WRITTEN, figures, uuid

STAGES = ("in packet", "undercoated", "painted", "based")
HELD = Holdings(
    figures={"rifleman": {"in packet": 20, "painted": 6}, "officer": {"painted": 3}},
    stands={"command": {"based": 1}},
)


def desk(worked: Mapping[str, Holdings], *, held: Holdings = HELD) -> Desk:
    return Desk(
        kinds=("rifleman", "officer"),
        stages=STAGES,
        stands={
            "First": NamedStand(pattern="section", figures={"rifleman": 4}),
            "Second": NamedStand(pattern="section", figures={"rifleman": 4}),
            "Command": NamedStand(pattern="command", figures={"officer": 1, "rifleman": 1}),
        },
        state=JournalState(held=held, worked={("", name): each for name, each in worked.items()}),
        today=ON,
    )


def told(found: Desk, kind: EntryKind = EntryKind.SESSION, **said: Any) -> list[Finding]:  # noqa: ANN401 - fields of the request
    request = LogRequest(
        **{"id": uuid(7), "kind": kind, "written": WRITTEN, "on": ON, "to_stage": "painted", **said}
    )
    return list(there_already(request, found))


PAINTED = desk({"First": figures(rifleman={"painted": 4})})


def test_a_stand_that_is_there_is_not_brought_there_again() -> None:
    (found,) = told(PAINTED, stand="First", to_stage="painted")
    assert (found.code, found.message) == (
        "stand-there-already",
        "First is 'painted' already, or further.",
    )
    assert told(PAINTED, stand="First", to_stage="undercoated")
    assert "strike out the entry that says so" in found.hint


def test_another_stand_and_another_stage_are_no_slip() -> None:
    assert not told(PAINTED, stand="Second")
    assert not told(PAINTED, stand="First", to_stage="based")
    assert not told(PAINTED, stand="First", from_stage="painted", to_stage="undercoated")
    assert not told(PAINTED, stand="section")
    assert not told(PAINTED, figures={"rifleman": 4})
    assert not told(PAINTED, stand="First", to_stage="")
    assert not told(PAINTED, EntryKind.NOTED, stand="First")
    assert not told(desk({}), stand="First")


def test_of_several_stands_each_one_is_told() -> None:
    both = desk(dict.fromkeys(("First", "Second"), figures(rifleman={"painted": 4})))
    held = replace(both, state=replace(both.state, held=figures(rifleman={"painted": 8})))
    assert len(told(held, stands=("First", "Second"))) == 2


def test_what_is_left_of_a_stand_can_be_named() -> None:
    half = desk({"First": figures(rifleman={"painted": 2})})
    (found,) = told(half, stand="First")
    assert found.message == "Of First 2 riflemen are 'painted' already, or further."
    assert found.hint == 'Name what is left of it beside the stand: "rifleman=2".'
    assert not told(half, stand="First", figures={"rifleman": 2})
    assert told(half, stand="First", figures={"rifleman": 3})


def test_a_whole_piece_is_there_with_all_its_figures() -> None:
    whole = {"Command": Holdings(stands={"command": {"based": 1}})}
    (found,) = told(desk(whole), stand="Command")
    assert found.message == "Command is 'painted' already, or further."
    assert not told(desk(whole, held=figures(officer={"painted": 3})), stand="Command")


def test_what_is_held_no_more_was_never_worked_on() -> None:
    gone = desk(
        {"First": figures(rifleman={"painted": 4})}, held=figures(rifleman={"in packet": 9})
    )
    assert not told(gone, stand="First")
