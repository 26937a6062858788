"""What a carry file gave back is found line by line; what is broken costs itself alone."""

import json
import zlib
from base64 import b32encode
from collections.abc import Iterable
from typing import Any

import pytest

from paradestate.core.finding import Level
from paradestate.text.given_back import (
    MOST_ENTRIES,
    MOST_LINES,
    MOST_SETS,
    MOST_UNPACKED,
    AskedForce,
    GivenBack,
    GivenCode,
    lacking_codes,
    read_given_back,
)

FORCE = AskedForce(name="marenz", title="Republic of Marenz")
FILE = "back.txt"


def head(**more: object) -> str:
    return json.dumps({"given back": 1, "force": "marenz", "title": "Republic of Marenz", **more})


def entry(number: int) -> str:
    return json.dumps({"id": str(number), "says": {}})


def code(number: int, *lines: str, of: int = 3, name: str = "0A1B2C3D") -> str:
    packed = b32encode(zlib.compress("\n".join(lines).encode())).decode().rstrip("=")
    return f"PS1/{name}/{number}/{of}/{packed}"


def read(*lines: str) -> GivenBack:
    return read_given_back("\n".join(lines).encode(), file=FILE, force=FORCE)


def ids(given: GivenBack) -> list[Any]:
    return [each.said["id"] for each in given.entries]


def told(given: GivenBack) -> list[tuple[str, str]]:
    return [(each.code, str(each.place)) for each in given.findings]


def lacking(codes: Iterable[GivenCode]) -> list[tuple[str, str, str]]:
    return [(each.code, str(each.place), each.message) for each in lacking_codes(codes)]


def test_entries_below_their_head_are_found_with_their_places() -> None:
    given = read(head(entries=2), entry(1), "", f"{entry(2)}\r")
    assert (ids(given), told(given)) == (["1", "2"], [])
    assert [each.place.line for each in given.entries] == [2, 4]


def test_by_its_name_or_by_its_title_it_is_of_this_force() -> None:
    assert ids(read(head(force="renamed"), entry(1))) == ["1"]
    assert ids(read(head(title="Retitled"), entry(1))) == ["1"]


def test_of_another_force_nothing_is_taken_and_what_follows_is() -> None:
    given = read(head(force="kelmar", title="Kelmar"), entry(1), "junk", head(), entry(2))
    assert (ids(given), told(given)) == (["2"], [("given-back-other-force", "back.txt:1:1")])
    (found,) = given.findings
    assert found.level is Level.STOP
    assert "'Kelmar', not of 'Republic of Marenz'" in found.message


def test_of_another_version_nothing_is_taken() -> None:
    given = read(head(**{"given back": 2}), entry(1))
    assert (ids(given), told(given)) == ([], [("given-back-newer", "back.txt:1:1")])


def test_a_file_that_was_cut_says_how_much_is_missing() -> None:
    given = read(head(entries=4), entry(1), entry(2)[:9])
    assert ids(given) == ["1"]
    assert told(given) == [
        ("given-back-line", "back.txt:3:1"),
        ("given-back-missing", "back.txt:1:1"),
    ]
    assert "Of 4 entries 1 stand here" in given.findings[1].message
    assert ids(read(head(entries="many"), entry(1))) == ["1"]


def test_lines_that_are_nothing_are_named_together() -> None:
    given = read("hello", head(), "[" * 9000, "[1]", entry(1), "null")
    assert ids(given) == ["1"]
    assert [each.message for each in given.findings] == [
        "No entry and no code: line 1.",
        "No entry and no code: lines 3, 4 and 6.",
    ]


def test_entries_without_their_head_are_not_taken() -> None:
    given = read(entry(1), entry(2))
    assert (ids(given), told(given)) == ([], [("given-back-line", "back.txt:1:1")])
    assert "missing above lines 1 and 2" in given.findings[0].message


def test_codes_are_found_wherever_they_stand_and_each_by_itself() -> None:
    one, two = code(1, head(), entry(1), of=2), code(2, head(), entry(2), entry(3), of=2)
    given = read(f'"QR_CODE","{two}","19:02"', "", f"{one} {two}")
    assert ids(given) == ["2", "3", "1", "2", "3"]
    assert [str(each.place) for each in given.entries[1:3]] == ["back.txt:1:12", "back.txt:3:1"]
    assert told(given) == []
    assert lacking(given.codes) == []


def test_what_follows_a_code_on_its_line_is_not_lost() -> None:
    given = read(code(1, head(), entry(1), of=1) + head(), entry(2))
    assert (ids(given), told(given)) == (["1", "2"], [])


def test_a_text_that_only_speaks_of_a_code_is_none() -> None:
    says = json.dumps({"id": "1", "says": {"device": code(1, head(), entry(9))}})
    assert ids(read(head(), says)) == ["1"]


def test_codes_that_did_not_come_are_named_and_those_that_are_broken() -> None:
    given = read(code(2, head(), entry(2), of=9), code(7, head(), entry(7), of=9)[:-4])
    assert ids(given) == ["2"]
    assert lacking(given.codes) == [
        ("given-back-code", "back.txt:2:1", "Code 7 of 9 (0A1B2C3D) isn't whole."),
        (
            "given-back-missing",
            "back.txt:1:1",
            "Of the 9 codes (0A1B2C3D) 1, 3 to 6, 8 and 9 didn't come.",
        ),
    ]


def test_a_code_that_came_broken_and_whole_is_whole_in_any_order() -> None:
    whole = code(1, head(), entry(1), of=1)
    for lines in ([whole, whole[:-3]], [whole[:-3], whole]):
        given = read(*lines)
        assert (ids(given), lacking(given.codes)) == (["1"], [])


def test_sets_of_two_phones_are_counted_apart_over_all_files() -> None:
    first = read(code(1, head(), entry(1), of=2), code(1, head(), entry(8), of=1, name="F" * 8))
    second = read(code(2, head(), entry(2), of=2))
    assert lacking((*first.codes, *second.codes)) == []
    assert [each[0] for each in lacking(first.codes)] == ["given-back-missing"]


@pytest.mark.parametrize(
    "text",
    [
        "PS1/0A1B2C3D/1/1/",
        "PS1/0A1B2C3D/1/1/A",
        "PS1/0A1B2C3D/1/1/MFRGGZDF",
        code(2, head(), entry(1), of=1),
        code(1, "x" * (MOST_UNPACKED + 1), of=1),
        f"PS1/0A1B2C3D/1/1/{b32encode(zlib.compress(bytes([255]))).decode().rstrip('=')}",
    ],
)
def test_what_is_no_whole_code_is_broken(text: str) -> None:
    given = read(text)
    assert given.entries == ()
    assert lacking(given.codes)[0][0] == "given-back-code"


def test_a_flipped_letter_of_a_code_is_noticed() -> None:
    text = code(1, head(), entry(1), of=1)
    for at in range(len("PS1/0A1B2C3D/1/1/") + 2, len(text) - 2):
        other = "B" if text[at] == "A" else "A"
        given = read(text[:at] + other + text[at + 1 :])
        assert [each.is_whole for each in given.codes] == [False], at


def test_a_file_in_which_nothing_stands_is_told_as_such() -> None:
    for text in ("", "\n \n"):
        assert told(read(text)) == [("given-back-nothing", "back.txt:1:1")]


def test_what_is_no_text_or_too_much_is_stopped() -> None:
    picture = read_given_back(b"\x89PNG\r\n", file=FILE, force=FORCE)
    assert told(picture) == [("not-text", "back.txt:1:1")]
    given = read(head(), *map(entry, range(MOST_ENTRIES + 1)))
    assert (told(given), given.entries) == ([("too-large", "back.txt:1:1")], ())


def test_codes_that_unfold_to_far_more_than_a_phone_holds_are_refused_at_once() -> None:
    lines = [code(1, *["{}"] * 60_000, name=f"{number:08X}") for number in range(2)]
    long = [code(1, "a" * (MOST_UNPACKED - 1), name=f"{number:08X}") for number in range(21)]
    for given in (read(*lines), read(*long)):
        assert told(given) == [("too-large", f"{FILE}:1:1")]
        assert (given.entries, given.codes) == ((), ())


@pytest.mark.parametrize("line", ["", "a", "PS1/0A1B2C3D/1/1/"])
def test_a_file_with_far_more_lines_or_codes_than_a_phone_gives_back_is_refused(line: str) -> None:
    assert told(read(*[line] * (MOST_LINES + 2))) == [("too-large", f"{FILE}:1:1")]


def test_codes_of_another_force_are_told_once() -> None:
    other = json.dumps({"given back": 1, "force": "other", "title": "Other"})
    given = read(*(code(number, other, entry(number)) for number in (1, 2, 3)))
    assert told(given) == [("given-back-other-force", f"{FILE}:1:1")]
    assert len(given.codes) == 3


def test_of_many_sets_of_codes_the_first_are_told_and_the_others_counted() -> None:
    given = read(*(code(1, head(), entry(1), name=f"{n:08X}") for n in range(MOST_SETS + 2)))
    found = list(lacking_codes(given.codes))
    assert len(found) == MOST_SETS + 1
    assert found[-1].message == "2 more sets of codes came, from here on."
    assert str(found[-1].place) == f"{FILE}:{MOST_SETS + 1}:1"
