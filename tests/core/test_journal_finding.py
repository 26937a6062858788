"""What is said of a journal that was read."""

from dataclasses import replace

from paradestate.core.bench import Bench
from paradestate.core.digest_chain import Altered
from paradestate.core.figure import FigureKind
from paradestate.core.finding import Level
from paradestate.core.force import Force
from paradestate.core.holdings import Holdings
from paradestate.core.journal import Shortfall
from paradestate.core.journal_entry import EntryKind
from paradestate.core.journal_finding import (
    altered_line,
    below_nought,
    fitting,
    lent_out,
    not_understood,
    ordered_out,
    stands_differ,
    unknown_names,
)
from paradestate.core.journal_text import UnknownEntryError
from paradestate.core.on_order import OnOrder
from paradestate.core.place import Place
from tests.entries import ON, entry, figures, uuid

AT = Place(file="journal.sqlite", line=3, column=1)
FORCE = Force(
    title="Marenz",
    raise_=None,
    figures={"rifleman": FigureKind(name="rifleman")},
    bench=Bench(stages=("in packet", "painted")),
)


def test_an_altered_line_is_a_warning_at_its_line() -> None:
    found = altered_line(Altered(number=7, id=uuid(7)), journal=AT)
    assert (found.level, str(found.place)) == (Level.WARN, "journal.sqlite:7:1")
    assert found.message == (
        f"Line 7 ({uuid(7)}) isn't as it was written: the digests don't agree."
    )
    gone = altered_line(Altered(number=7, id=""), journal=AT)
    assert gone.message.startswith(
        "Line 7 is missing, or isn't where the journal says that it ends"
    )


def test_what_is_not_understood_is_a_stop() -> None:
    found = not_understood(UnknownEntryError("unknown word 'mood'"), journal=AT)
    assert (found.level, found.message) == (
        Level.STOP,
        "This entry isn't understood: unknown word 'mood'.",
    )


def test_what_takes_more_than_there_was_is_named() -> None:
    short = Shortfall(
        entry=entry(EntryKind.SOLD, id=uuid(5)), name="rifleman", stage="painted", lacking=2
    )
    found = below_nought(short, journal=AT)
    assert (found.level, found.code) == (Level.STOP, "held-below-nought")
    assert found.message == (
        "'sold' of 5 March 2026 (00000000) takes 2 more riflemen from 'painted' than there were."
    )


def test_what_is_lent_is_told() -> None:
    lent = Holdings(figures={"rifleman": {"painted": 2}}, stands={"truck": {"based": 1}})
    assert lent_out(lent, journal=AT).message == "Lent: 2 riflemen painted and 1 truck based."


def test_what_is_on_order_is_told() -> None:
    order = OnOrder(
        entry="1", source="North", day=ON, expected=ON, figures={"rifleman": 2, "officer": 1}
    )
    other = replace(order, source="South", expected=None)
    (found,) = ordered_out([order, other], counts_as_there=False, journal=AT)
    assert (found.level, found.code, found.message) == (
        Level.REMARK,
        "on-order",
        (
            "On order: 2 riflemen and 1 officer from North (expected 5 March 2026) and 2 riflemen "
            "and 1 officer from South (nobody says for when)."
        ),
    )
    assert found.effect == "They aren't owned until they are received."
    (found,) = ordered_out([order], counts_as_there=True, journal=AT)
    assert found.effect == "They count as there, so they aren't ordered again."
    assert not list(ordered_out([], counts_as_there=True, journal=AT))


def test_names_that_no_force_defines_are_doubted() -> None:
    held = Holdings(
        figures={"riflemann": {"painted": 2, "based": 1}, "rifleman": {"painted": 1}},
        stands={"lorry": {"based": 1}},
    )
    known = {"figures": ["rifleman"], "stands": ["truck"]}
    found = list(unknown_names(held, known=known, journal=AT))
    assert [(each.level, each.message) for each in found] == [
        (Level.WARN, "The journal has 3 'riflemann', which `figures` doesn't define."),
        (Level.WARN, "The journal has 1 'lorry', which `stands` doesn't define."),
    ]


def test_a_force_uses_its_own_kinds_at_its_own_stages() -> None:
    held = figures(rifleman={"painted": 2, "primed": 1}, trooper={"painted": 9})
    usable, (found,) = fitting(held, FORCE, journal=AT)
    assert usable == figures(rifleman={"painted": 2})
    assert (found.code, found.message) == (
        "held-at-unknown-stage",
        "1 rifleman is at 'primed', which is no stage of this force.",
    )
    _, (found,) = fitting(figures(rifleman={"primed": 2}), FORCE, journal=AT)
    assert found.message == "2 riflemen are at 'primed', which is no stage of this force."


def test_stands_of_one_name_and_other_figures_are_doubted() -> None:
    found = stands_differ("rifle section", ["guard", "watch"], journal=AT)
    assert (found.level, found.code, found.place) == (Level.WARN, "stands-differ", AT)
    assert found.message == "'rifle section' is made of other figures in guard and watch."
