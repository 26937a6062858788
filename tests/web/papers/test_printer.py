"""The printer that a browser remembers."""

import pytest
from starlette.responses import Response

from paradestate.web.papers.printer import COOKIE, Printer, printer_of, remember, remembered

MEASURED = Printer(paper="letter", across="96.8", down="97.2", turn="short", is_corrected=True)


def cookie(printer: Printer) -> str:
    """What a browser is told to send back."""
    header = remember(Response(), printer, is_secure=False).headers["set-cookie"]
    return header.split(";")[0].removeprefix(f"{COOKIE}=")


def test_what_is_remembered_comes_back() -> None:
    assert cookie(MEASURED) == "letter~96.8~97.2~short~yes"
    assert remembered({COOKIE: cookie(MEASURED)}) == MEASURED
    assert remembered({COOKIE: cookie(Printer())}) == Printer()


def test_a_browser_keeps_it_from_scripts_and_other_sites() -> None:
    header = remember(Response(), MEASURED, is_secure=True).headers["set-cookie"].lower()
    assert all(each in header for each in ("httponly", "samesite=strict", "secure", "max-age"))


@pytest.mark.parametrize(
    "text",
    ["", "a4", "~~~~~", "a4~none~~long~", "a4~9~~long~", "a4~96,8~~long~", "a4~%C3%28~~long~"],
)
def test_what_cannot_be_read_counts_as_none(text: str) -> None:
    assert remembered({COOKIE: text}) == Printer()


def test_a_paper_that_is_none_is_the_usual_one() -> None:
    assert printer_of({"paper": "A0", "turn": "sideways"}) == Printer()


@pytest.mark.parametrize(
    ("across", "down", "scale"),
    [("", "", ""), ("96.8", "", "96.8,96.8"), ("", "97.2", "97.2,97.2"), ("96", "97", "96,97")],
)
def test_a_line_that_was_not_measured_is_as_long_as_the_other(
    across: str, down: str, scale: str
) -> None:
    assert Printer(across=across, down=down).scale == scale


@pytest.mark.parametrize(
    ("across", "message"),
    [
        ("96,8", "'96,8' has a comma."),
        ("9", "A line of 100 mm doesn't come out 9 mm long."),
        ("long", None),
    ],
)
def test_a_measure_that_cannot_be_is_a_stop(across: str, message: str | None) -> None:
    (found,) = printer_of({"across": across}).findings
    assert found.code in {"line-not-100", "not-a-number"} or message is None
    assert message is None or found.message == message
