"""Numbers by stage as a bar."""

from xml.etree import ElementTree as ET

from paradestate.core.bench import USUAL_STAGES
from paradestate.sheet.stage_bar import key_box, printed_box, stage_bar


def widths(numbers: dict[str | None, int]) -> list[tuple[str, float]]:
    made = stage_bar(numbers, stages=USUAL_STAGES, words="a bar", width=702)
    return [
        (box.attrib["fill"], float(box.attrib["width"]))
        for box in ET.fromstring(made.svg)  # noqa: S314 - made by us
    ]


def test_one_stand_is_one_length_finished_first_and_missing_last() -> None:
    assert widths({"based": 3, None: 5, "painted": 2}) == [
        ("var(--ink)", 210),
        ("url(#tx-3)", 140),
        ("none", 350),
    ]


def test_of_nothing_the_bar_is_an_empty_outline() -> None:
    assert widths({}) == [("none", 700)]


def test_it_says_what_it_shows() -> None:
    made = stage_bar({"based": 1}, stages=USUAL_STAGES, words="one of one finished")
    assert 'aria-label="one of one finished"' in made.svg
    assert key_box(None, stages=USUAL_STAGES).words == "missing"


def test_a_printed_marker_has_its_ring() -> None:
    made = printed_box()
    assert made.words == "printed marker"
    assert [ring.tag.rpartition("}")[2] for ring in ET.fromstring(made.svg)] == [  # noqa: S314 - ours
        "circle",
        "circle",
    ]
