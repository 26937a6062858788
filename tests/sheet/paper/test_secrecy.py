"""The opponent's sheet as a file gives nothing away; what it is beside is full of it."""

import re
from dataclasses import replace
from functools import cache

import pytest

from paradestate.core.paper.opponents_sheet import opponents_sheet
from paradestate.core.paper.paper import Heading, Paper
from paradestate.core.paper.private_sheet import private_sheet
from paradestate.core.paper.umpires_sheet import umpires_sheet
from paradestate.journeys.paper.every_paper import EVERY_PAPER
from paradestate.sheet.paper.plain_value import plain
from paradestate.sheet.paper.typesetting import printed
from tests.core.paper.games import SECRETS, secrets
from tests.sheet.paper.papers import opened, texts
from tests.sheet.paper.secrets import everything_in, number_of_attachments

pytestmark = pytest.mark.unmeasured

WORDS = frozenset(re.findall(r"zz\w+", SECRETS, flags=re.IGNORECASE))
KIND = next(kind for kind in EVERY_PAPER if kind.name == "opponents sheet")


@cache
def file_of(name: str) -> bytes:
    drafts = {
        "opponents sheet": opponents_sheet,
        "private sheet": private_sheet,
        "umpires sheet": umpires_sheet,
    }
    ground = secrets()
    shown = drafts[name](ground).shown
    assert shown is not None
    force = "" if name == KIND.name else ground.force.title
    heading = Heading(title=name, force=force, date=ground.date)
    return printed(Paper(name=name, heading=heading, layout=ground.layout, shown=shown)).pdf


def found_in(pdf: bytes) -> set[str]:
    text = everything_in(pdf).casefold()
    bare = re.sub(r"[^a-z]", "", text)  # no break between letters or lines hides a word
    return {word for word in WORDS if word.casefold() in text or word.casefold() in bare}


def test_no_secret_word_is_in_the_file_in_text_metadata_attachments_or_streams() -> None:
    assert len(WORDS) > 40
    pdf = file_of("opponents sheet")
    assert found_in(pdf) == set()
    assert number_of_attachments(pdf) == 0


def test_the_search_finds_the_words_where_they_are_printed() -> None:
    """A search that can't find a word proves nothing."""
    private = found_in(file_of("private sheet"))
    assert {"zzForceByHand", "zzBattery", "zzMine", "zzMarkerCalled", "zzKeptCalled"} <= private
    assert {"zzPost", "zzReserves", "zzSmoke"} <= found_in(file_of("umpires sheet"))


def test_what_may_be_seen_is_printed() -> None:
    (text,) = texts(file_of("opponents sheet"))
    for words in ("Team", "Gun", "40 x 20 mm", "4 riflemen", "attack", "1800 x 1200 mm", "red"):
        assert words in text


def test_the_title_of_the_force_is_kept_from_the_opponent() -> None:
    assert not KIND.names_force


def test_nothing_that_is_hidden_changes_a_byte_of_the_file() -> None:
    """Dummies, reserve, off-table fire and notes leave no trace, not even a gap."""
    ground = secrets()
    other = replace(
        ground,
        dummies=0,
        reserve=replace(ground.reserve, formations={}),
        plan=tuple(each for each in ground.plan if each.entry not in {"zzBattery", "zzDigging"}),
        force=replace(ground.force, by_hand="", title="Another", states=()),
    )
    shown = opponents_sheet(other).shown
    heading = Heading(title=KIND.name, force="", date=ground.date)
    paper = Paper(name=KIND.name, heading=heading, layout=ground.layout, shown=shown)
    assert printed(paper).pdf == file_of("opponents sheet")


def test_no_picture_layer_or_form_lies_in_the_file() -> None:
    with opened(file_of("opponents sheet")) as file:
        assert not any(page.images or page.annots for page in file.pages)
        assert "OCProperties" not in file.doc.catalog
        assert "AcroForm" not in file.doc.catalog


def test_a_mark_goes_to_the_page_as_shapes_without_its_words() -> None:
    colours = opponents_sheet(secrets()).shown
    assert colours is not None
    mark = plain(colours.colours[0].marks[0].mark)
    assert isinstance(mark, dict)
    assert set(mark) == {"width", "height", "ground", "ink", "shapes"}
