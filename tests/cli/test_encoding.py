"""Text in whatever encoding the output has."""

import codecs

import pytest

from paradestate.cli.encoding import speak_plainly


def test_stand_ins_for_letters_that_can_not_be_encoded() -> None:
    speak_plainly()
    assert "£1 █ ж".encode("ascii", "plainly") == b"GBP 1 # <U+0436>"
    assert " 19 h ┝━━ ├─ │ 3 cm²".encode("ascii", "plainly") == b" 19 h +== |- | 3 cm2"
    assert "£1 ж".encode("latin-1", "plainly") == b"\xa31 <U+0436>"


def test_reading_is_not_repaired() -> None:
    speak_plainly()
    with pytest.raises(UnicodeDecodeError):
        codecs.decode(b"\xff", "ascii", "plainly")
