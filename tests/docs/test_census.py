"""The page that goes through seventy-two kinds of rule names words that there are."""

import re
from pathlib import Path

from paradestate.text.format.force import force_schema
from tests.docs.test_coverage_of_words import words_of

PAGE = Path(__file__).parents[2] / "docs" / "understand" / "census.md"

ROWS = re.findall(r"^\| (\d+) \| .* \| (.*) \|$", PAGE.read_text(encoding="utf-8"), re.MULTILINE)

NOT_WORDS = {
    *("best 2 of 3d6", "1d6 x 2", "at least", "at most"),
    "attack on the league",
}
"""What stands in quotes and is dice, or a name of the owner's."""


def test_every_kind_of_rule_has_its_row() -> None:
    assert [int(number) for number, _ in ROWS] == list(range(1, 73))


def test_every_row_names_words_of_the_format_or_says_that_it_is_by_hand() -> None:
    known = {*words_of(force_schema())}
    for number, says in ROWS:
        quoted = set(re.findall(r"`([^`]+)`", says)) - NOT_WORDS
        named = {text.split(":")[0].strip("{}") for text in quoted}
        assert named <= known, number
        assert named or "by hand" in says.lower(), number


def test_what_is_by_hand_has_its_reason() -> None:
    """A colon, a comma or a `because` follows; in the last row it is the word itself."""
    bare = [number for number, says in ROWS if re.search(r"by hand(?! *[:,;`]|, because)", says)]
    assert bare == []
