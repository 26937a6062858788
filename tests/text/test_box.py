"""What stands on a box, in a newcomer's words."""

import pytest

from paradestate.text.box import read_box
from paradestate.text.slip import Slip

KINDS = ("rifleman", "officer", "mortar crew")


@pytest.mark.parametrize(
    ("text", "box"),
    [
        ("", {}),
        ("one box: 32 riflemen, 4 officers", {"rifleman": 32, "officer": 4}),
        ("32 Riflemen and 4 officers.", {"rifleman": 32, "officer": 4}),
        ("2 boxes of 10 riflemen + 1 officer", {"rifleman": 20, "officer": 2}),
        ("a box: 1 rifleman", {"rifleman": 1}),
        ("box: 1 rifleman", {"rifleman": 1}),
        ("10 riflemen; 5 riflemen", {"rifleman": 15}),
        ("3 x mortar  crew", {"mortar crew": 3}),
        ("0 officers", {}),
    ],
)
def test_numbers_and_kinds_are_read(text: str, box: dict[str, int]) -> None:
    assert read_box(text, kinds=KINDS) == box


@pytest.mark.parametrize(
    ("text", "code", "said"),
    [
        ("riflemen", "box-without-number", "32 riflemen"),
        ("32 gunners", "unknown-name", "'gunners'"),
        ("32 rifelmen", "unknown-name", "Did you mean"),
        ("99999999 riflemen", "absurd-number", "99999999"),
    ],
)
def test_nothing_is_guessed(text: str, code: str, said: str) -> None:
    slip = read_box(text, kinds=KINDS)
    assert isinstance(slip, Slip)
    assert slip.code == code
    assert said in slip.message + slip.hint
