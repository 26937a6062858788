"""Letters that can't be printed."""

from paradestate.core.finding import Level
from paradestate.core.paper.paper_finding import letter_findings, too_long


def test_each_letter_that_is_lacking_is_named_once() -> None:
    (found,) = letter_findings(["a日b日c本"], printable=frozenset("abc"))
    assert (found.level, found.code) == (Level.WARN, "letter-not-in-face")
    assert found.message == "'a日b日c本': '日' and '本' can't be printed."


def test_a_paper_that_is_too_long_says_what_sets_it() -> None:
    found = too_long("Labels", name="labels")
    assert (found.level, found.code) == (Level.WARN, "paper-too-long")
    assert found.hint == "The command sets it, however long that takes: sheets --only 'labels'."
