"""The QR code: read back from its drawing by the letter, module by module."""

import re
from xml.etree import ElementTree as ET

import segno

from paradestate.web.phone.qr import QUIET, qr_code

TEXT = "https://192.168.7.20:8766/pair?word=abcd-efgh-jkmn-pqrs-tuvw"


def dark_modules(svg: str) -> set[tuple[int, int]]:
    root = ET.fromstring(svg)  # noqa: S314 - our own
    path = next(child.get("d") for child in root if child.tag == "path") or ""
    found = set()
    for across, down, length, back in re.findall(r"M(\d+) (\d+)h(\d+)v1h-(\d+)z", path):
        assert length == back
        found |= {(int(down), int(across) + step) for step in range(int(length))}
    return found


def test_its_dark_modules_are_those_of_the_code() -> None:
    matrix = segno.make_qr(TEXT, error="m").matrix
    expected = {
        (down + QUIET, across + QUIET)
        for down, row in enumerate(matrix)
        for across, is_dark in enumerate(row)
        if is_dark
    }
    assert dark_modules(qr_code(TEXT, words="a code").svg) == expected


def test_it_has_its_white_border_and_its_words() -> None:
    drawn = qr_code(TEXT, words="QR code of the pairing page")
    side = len(segno.make_qr(TEXT, error="m").matrix) + 8
    assert f'viewBox="0 0 {side} {side}"' in drawn.svg
    assert f'<rect width="{side}" height="{side}" fill="#fff" />' in drawn.svg
    assert 'aria-label="QR code of the pairing page"' in drawn.svg
    assert "style" not in drawn.svg
