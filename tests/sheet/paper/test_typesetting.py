"""Papers as PDF, measured in the file."""

import shutil
from dataclasses import replace
from fractions import Fraction
from pathlib import Path
from typing import Any

import pytest

from paradestate.core.imposition.cut_mark import CutMark
from paradestate.core.imposition.layout import Layout
from paradestate.core.imposition.paper_size import LETTER
from paradestate.core.imposition.print_scale import measured
from paradestate.core.paper.labels import labels
from paradestate.core.paper.markers import markers
from paradestate.core.paper.paper import Heading, Paper
from paradestate.sheet.paper import typesetting
from paradestate.sheet.paper.error import TypesettingError
from paradestate.sheet.paper.typesetting import is_ours, printed
from tests.core.paper.grounds import battalion, ground_of
from tests.forces import force_from
from tests.sheet.paper.papers import (
    EVERY,
    MILLIMETRES_PER_POINT,
    Line,
    is_near,
    made,
    one_label,
    opened,
    pages,
    paper,
    read,
    texts,
)

pytestmark = pytest.mark.unmeasured


def box_of(mark: CutMark) -> Line:
    sides = (mark.from_left, mark.from_top, mark.to_left, mark.to_top)
    return tuple(float(side) for side in sides)


def laid_out_for(layout: Layout) -> Paper[object]:
    """The labels of the battalion as the example raises it."""
    shown = labels(replace(battalion(), layout=layout)).shown
    assert shown is not None
    return replace(paper("labels"), layout=layout, shown=shown)


@pytest.mark.parametrize("name", EVERY)
def test_every_cut_mark_is_where_it_is_meant_to_be(name: str) -> None:
    for page, meant in zip(pages(name), paper(name).shown.pages, strict=True):
        assert meant.marks or all(piece.is_round for piece in meant.pieces)
        assert [mark for mark in meant.marks if not page.has_line(box_of(mark))] == []


@pytest.mark.parametrize("name", ["labels", "markers"])
def test_every_disc_is_cut_out_at_its_size_along_the_inside_of_its_rim(name: str) -> None:
    for page, meant in zip(pages(name), paper(name).shown.pages, strict=True):
        discs = [piece.frame for piece in meant.pieces if piece.is_round]
        assert discs
        for frame in discs:
            sides = (frame.left, frame.top, frame.right, frame.bottom)
            box = tuple(float(side) for side in sides)
            assert any(is_near(rim, box) for rim in page.rims), frame


def test_the_battalions_37_labels_are_on_one_page_and_one_of_a_section_is_38_by_18() -> None:
    """Story 12: 38.0 within 0.2 mm on paper; in the file within 0.05 mm."""
    (page,) = read(printed(laid_out_for(Layout())).pdf)
    for meant in ((8, 7, 8, 8), (26, 7, 26, 8), (7, 8, 8, 8), (7, 46, 8, 46)):
        assert page.has_line(meant)


@pytest.mark.parametrize("name", EVERY)
def test_every_page_has_its_size_and_a_line_of_100_mm_each_way(name: str) -> None:
    assert len(pages(name)) == made(name).pages
    for page in pages(name):
        assert is_near(page.size, (210, 297))
        assert page.has_line((55, 290.4, 155, 290.4))
        assert page.has_line((203.4, 98.5, 203.4, 198.5))


def test_each_page_says_what_it_is_whose_of_which_day_and_how_many_there_are() -> None:
    first, second = texts(made("markers").pdf)
    assert "Markers as on 5 March 2026; Republic of Marenz, Field Battalion" in first
    assert "page 1 of 2" in first
    assert "Markers, second side" in second
    assert "page 2 of 2" in second


def test_a_heading_that_is_too_long_is_cut_short_and_runs_into_nothing() -> None:
    with opened(printed(one_label(force="Long " * 60)).pdf) as pdf:
        words = pdf.pages[0].extract_words()
    last = next(word for word in words if word["text"].endswith("…"))
    number = next(word for word in words if word["text"] == "page")
    assert last["x1"] < number["x0"]


def test_whose_reader_isnt_to_know_the_force_reads_the_day_alone() -> None:
    (text,) = texts(printed(one_label()).pdf)
    assert text.splitlines()[0] == "Labels as on 5 March 2026 page 1 of 1"


@pytest.mark.parametrize("name", EVERY)
def test_the_same_paper_gives_the_same_bytes(name: str) -> None:
    assert printed(paper(name)).pdf == made(name).pdf


@pytest.mark.parametrize("name", EVERY)
def test_nothing_about_this_computer_is_in_the_file(name: str) -> None:
    data = made(name).pdf
    with opened(data) as pdf:
        about = pdf.metadata
    assert set(about) <= {"Title", "Keywords", "Creator", "CreationDate", "ModDate"}
    assert about["Keywords"] == "Parade State"
    assert about["CreationDate"] == about["ModDate"] == "D:20260305000000Z"
    for secret in (b"/usr", b"site-packages", b"template", b".typ", b"Author"):
        assert secret not in data


def test_only_our_faces_are_used_and_they_are_in_the_file() -> None:
    with opened(printed(one_label()).pdf) as pdf:
        faces = {char["fontname"].partition("+") for char in pdf.pages[0].chars}
    assert {face[2] for face in faces} == {"Hyperlegible-Regular", "Hyperlegible-Bold"}
    assert all(subset for subset, _, _ in faces)


def test_a_corrected_sheet_is_drawn_larger_so_that_it_comes_out_right() -> None:
    """Row 64: a printer that makes 96.8 of 100 across and 97.2 down."""
    layout = Layout(scale=measured(Fraction("96.8"), Fraction("97.2")))
    corrected = laid_out_for(layout)
    (page,) = read(printed(corrected).pdf)
    assert is_near(page.size, (210, 297))
    # the printer makes it smaller, and what was drawn fills the smaller page
    out = replace(
        page, lines=tuple((a * 0.968, b * 0.972, c * 0.968, d * 0.972) for a, b, c, d in page.lines)
    )
    lengths = [(line[2] - line[0], line[3] - line[1]) for line in out.lines]
    assert any(is_near(line, (100, 0)) for line in lengths)
    assert any(is_near(line, (0, 100)) for line in lengths)
    (meant,) = corrected.shown.pages  # type: ignore[attr-defined] # it shows labels
    assert [mark for mark in meant.marks if not out.has_line(box_of(mark))] == []


def test_a_sheet_for_a_printer_that_makes_all_greater_is_drawn_smaller_about_the_middle() -> None:
    layout = Layout(scale=measured(Fraction(103), Fraction(103)))
    (page,) = read(printed(replace(one_label(), layout=layout)).pdf)
    assert page.has_line(
        (105 - 50 / 1.03, 148.5 + 141.9 / 1.03, 105 + 50 / 1.03, 148.5 + 141.9 / 1.03)
    )


def test_a_letter_is_a_letter() -> None:
    (page,) = read(printed(replace(one_label(), layout=Layout(size=LETTER))).pdf)
    assert is_near(page.size, (215.9, 279.4))


def test_words_say_how_small_they_came_out() -> None:
    (used,) = made("labels").least_type
    assert used.what == "names on labels"
    assert 8 <= used.points <= 11


def test_what_is_printed_is_never_read_as_a_template() -> None:
    force = '#panic("x") *bold* $x$ ${'
    (text,) = texts(printed(one_label(force=force)).pdf)
    assert force in text


def test_a_paper_that_is_read_has_head_foot_and_a_line_of_100_mm_on_every_page(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    shutil.copytree(typesetting.TEMPLATES, tmp_path, dirs_exist_ok=True)
    (tmp_path / "long-list.typ").write_text(
        '#import "form.typ": *\n#flowing[#for number in range(120) [+ Stand #number\n]]\n'
    )
    monkeypatch.setattr(typesetting, "TEMPLATES", tmp_path)
    heading = replace(paper("labels").heading, title="Long list", force="Long " * 60)
    pdf = printed(replace(paper("labels"), name="long list", heading=heading)).pdf
    every = texts(pdf)
    assert len(every) > 1
    for number, text in enumerate(every, start=1):
        assert text.startswith("Long list")
        assert f"page {number} of {len(every)}" in text
        assert "as on 5 March 2026" in text
        assert "100 mm from end to end" in text
        assert "…" in text
    for page in read(pdf):
        lengths = [(line[2] - line[0], line[3] - line[1]) for line in page.lines]
        assert any(is_near(length, (100, 0)) for length in lengths)


def test_a_template_that_goes_wrong_or_sets_with_a_doubt_is_said(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    shutil.copytree(typesetting.TEMPLATES, tmp_path, dirs_exist_ok=True)
    monkeypatch.setattr(typesetting, "TEMPLATES", tmp_path)
    for name, text, said in (
        ("wrong", "#panic()", "can't be set"),
        ("doubtful", '#import "form.typ": *\n#flowing[#text(font: "Nowhere")[x]]', "with a doubt"),
    ):
        (tmp_path / f"{name}.typ").write_text(text)
        with pytest.raises(TypesettingError, match=said):
            printed(replace(paper("labels"), name=name))


def test_a_paper_without_a_template_is_refused_in_words() -> None:
    with pytest.raises(TypesettingError, match="The paper 'no such' can't be set"):
        printed(replace(paper("labels"), name="no such"))


def test_our_papers_are_known_by_their_words() -> None:
    assert is_ours(made("labels").pdf)
    assert not is_ours(b"%PDF-1.7 another program's")
    assert not is_ours(b"Parade State")


def test_the_smallest_markers_keep_their_faces_to_themselves() -> None:
    ground = ground_of(
        force_from(
            "stands:\n"
            "  dot: {base: 1 x 1 mm, printed: yes, seen by opponent: no}\n"
            "  post: {base: 6 x 7 mm, printed: yes, seen by opponent: no}\n"
            "formations: {top: {parts: {dot: 2, post: 2}}}\n"
        )
    )
    shown = markers(ground).shown
    assert shown is not None
    about = Heading(title="Markers", force="", date=ground.date)
    tiny = Paper(name="markers", heading=about, layout=ground.layout, shown=shown)
    with opened(printed(tiny).pdf) as file:
        panels = [_sides(each) for each in file.pages[0].rects if each["stroke"]]
    frames = [each.frame for each in shown.pages[0].pieces]
    assert len(panels) == len(frames) == 8
    for left, top, right, bottom in panels:
        assert any(
            frame.left <= left < right <= frame.right and frame.top <= top < bottom <= frame.bottom
            for frame in frames
        )


def _sides(drawn: dict[str, Any]) -> tuple[float, ...]:
    return tuple(drawn[side] * MILLIMETRES_PER_POINT for side in ("x0", "top", "x1", "bottom"))
