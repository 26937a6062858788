"""Bytes to text."""

import pytest

from paradestate.text.decoding import MOST_BYTES, decoded


def test_utf_8_with_and_without_its_mark() -> None:
    assert decoded("é".encode(), file="f") == ("é", ())
    assert decoded("é".encode("utf-8-sig"), file="f") == ("é", ())


@pytest.mark.parametrize(
    ("data", "code", "said"),
    [
        (b"\x89PNG\r\n", "not-text", "a picture (PNG)"),
        (b"\xff\xd8\xff\xe0", "not-text", "a picture (JPEG)"),
        (b"%PDF-1.7", "not-text", "a PDF document"),
        (b"PK\x03\x04", "not-text", "a zipped file or spreadsheet"),
        (b"SQLite format 3\x00", "not-text", "a database"),
        ("a: 1".encode("utf-16"), "not-utf-8", "UTF-16"),
        (b"x" * (MOST_BYTES + 1), "too-large", "8 MB is the most read"),
    ],
)
def test_what_the_file_is_instead(data: bytes, code: str, said: str) -> None:
    text, (found,) = decoded(data, file="force.yaml")
    assert text is None
    assert found.code == code
    assert said in found.message
    assert str(found.place) == "force.yaml:1:1"


def test_a_byte_of_another_encoding_is_found_at_its_place() -> None:
    text, (found,) = decoded("a: 1\nb: caf\u00e9".encode("latin-1"), file="force.yaml")
    assert text is None
    assert found.code == "not-utf-8"
    assert (found.place.line, found.place.column) == (2, 7)
    assert "E9" in found.message
