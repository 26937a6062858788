"""What was said of an entry."""

from paradestate.core.journal_entry import EntryKind
from paradestate.core.log_request import LogRequest
from tests.entries import ON, WRITTEN, uuid


def test_a_request_knows_which_options_were_used() -> None:
    bare = LogRequest(id=uuid(1), kind=EntryKind.NOTED, written=WRITTEN, on=ON, note="primer")
    assert bare.said == frozenset()
    full = LogRequest(
        id=uuid(1),
        kind=EntryKind.SESSION,
        written=WRITTEN,
        on=ON,
        figures={"rifleman": 1},
        from_stage="assembled",
        to_stage="painted",
        stand="Truck",
        minutes=5,
    )
    assert full.said == {"figures", "from", "to", "stand", "minutes"}
