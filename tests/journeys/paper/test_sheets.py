"""Papers of a folder."""

import datetime
from dataclasses import replace
from fractions import Fraction
from pathlib import Path

import pytest

from paradestate.core.choice import Choice
from paradestate.core.finding import Level
from paradestate.core.imposition.layout import Layout
from paradestate.core.imposition.paper_size import LETTER
from paradestate.core.imposition.print_scale import measured
from paradestate.core.outline import millimetres
from paradestate.journeys.paper.every_paper import EVERY_PAPER
from paradestate.journeys.paper.paper_kind import Asked
from paradestate.journeys.paper.sheets import Sheets, sheets
from paradestate.sheet.paper.typesetting import TEMPLATES
from tests.forces import EXAMPLES

ON = datetime.date(2026, 3, 5)


def made(asked: Asked | None = None, *, choice: Choice | None = None) -> Sheets:
    return sheets(EXAMPLES / "marenz", today=ON, choice=choice or Choice(), asked=asked or Asked())


def codes(answer: Sheets) -> list[str]:
    return [found.code for found in answer.checked.findings if found.code != "stands-alike"]


ONLY_LABELS = Asked(only=("labels",))


def test_every_paper_of_the_example_is_made_and_nothing_is_doubtful() -> None:
    answer = made()
    assert answer.sheets is not None
    assert {sheet.name: sheet.printed.pages for sheet in answer.sheets} == {
        "parade state": 1,
        "labels": 1,
        "rear marks": 1,
        "templates": 1,
        "markers": 2,
        "key card": 1,
        "tray plans": 2,
        "packing list": 2,
        "stock-take sheet": 2,
        "job cards": 2,
        "purchase slips": 1,
        "troops list": 2,
        "show labels": 1,
    }
    assert codes(answer) == []
    assert [(tick.words, tick.holds) for tick in answer.ticks] == [
        ("37 labels for 37 stands to label", True),
        ("45 stands in trays for 45 stands to pack", True),
    ]


def test_every_paper_has_a_name_of_its_own_a_template_and_words() -> None:
    names = [kind.name for kind in EVERY_PAPER]
    assert len(set(names)) == len(names)
    for kind in EVERY_PAPER:
        assert (TEMPLATES / f"{kind.name.replace(' ', '-')}.typ").is_file()
        assert kind.about.endswith(".")


def test_only_those_asked_for_are_made_in_the_order_of_the_list() -> None:
    answer = made(Asked(only=("markers", "labels")))
    assert answer.sheets is not None
    assert [sheet.file_name for sheet in answer.sheets] == ["labels.pdf", "markers.pdf"]


def test_a_paper_that_there_isnt_is_a_stop_and_nothing_is_made() -> None:
    answer = made(Asked(only=("lables",)))
    assert answer.sheets is None
    (found,) = [each for each in answer.checked.findings if each.level is Level.STOP]
    assert found.code == "unknown-choice"
    assert found.hint == "Did you mean 'labels'?"


def test_the_digest_is_that_of_the_bytes_and_the_same_each_time() -> None:
    first, second = made(ONLY_LABELS).sheets, made(ONLY_LABELS).sheets
    assert first is not None
    assert second is not None
    assert first[0].sha256 == second[0].sha256
    assert len(first[0].sha256) == 64


def test_a_plan_that_is_typed_brings_its_labels_and_a_games_own_does_too() -> None:
    typed = made(replace(ONLY_LABELS, plan="light tanks=2"))
    assert typed.ticks[0].words == "39 labels for 39 stands to label"
    named = made(ONLY_LABELS, choice=Choice(game="whole-day attack"))
    assert named.ticks[0].words == "37 labels for 37 stands to label"


@pytest.mark.parametrize(
    ("plan", "code"), [("balloons=1", "unknown-choice"), ("light tanks", "not-a-purchase")]
)
def test_a_plan_that_cant_be_read_is_a_stop(plan: str, code: str) -> None:
    answer = made(Asked(plan=plan))
    assert answer.sheets is None
    assert code in codes(answer)


def test_a_scale_is_said_and_only_made_good_where_that_is_asked() -> None:
    layout = Layout(scale=measured(Fraction("96.8"), Fraction("96.8")))
    asked = replace(ONLY_LABELS, layout=layout)
    plain, warned = made(ONLY_LABELS), made(asked)
    corrected = made(replace(asked, is_corrected=True))
    assert plain.sheets is not None
    assert warned.sheets is not None
    assert corrected.sheets is not None
    assert plain.sheets[0].sha256 == warned.sheets[0].sha256 != corrected.sheets[0].sha256
    assert codes(warned) == codes(corrected) == ["printed-size-wrong"]


def test_another_paper_in_the_printer_is_said_where_it_cuts() -> None:
    """Row 65: 63 section labels fill an A4 to its foot."""
    asked = replace(ONLY_LABELS, loaded=LETTER)
    assert codes(made(asked)) == []
    full = made(replace(asked, plan="bicycle troop=2, " * 17 + "bicycle troop=2"))
    (found,) = [each for each in full.checked.findings if each.code == "other-paper"]
    assert found.message.endswith("the last row would be cut.")


def test_type_too_small_to_be_read_from_there_is_said() -> None:
    """Row 67."""
    answer = made(replace(ONLY_LABELS, distance=millimetres(1200)))
    (found,) = [each for each in answer.checked.findings if each.code == "type-too-small"]
    assert "Least readable at 120 cm is about 20 pt." in found.message


def folder(tmp_path: Path, text: str) -> Path:
    path = tmp_path / "force"
    path.mkdir()
    (path / "force.yaml").write_text(f"format: 1\ntitle: Test\nraise: {{formation: top}}\n{text}")
    return path


def test_a_letter_that_cant_be_printed_is_said(tmp_path: Path) -> None:
    force = folder(
        tmp_path,
        "stands: {scout: {base: 40 x 20 mm, called: 斥候}}\n"
        "formations: {top: {parts: {scout: 1}}}\n",
    )
    answer = sheets(force, today=ON, choice=Choice(), asked=ONLY_LABELS)
    assert answer.sheets is not None
    assert "letter-not-in-face" in codes(answer)


def test_a_force_without_stands_has_nothing_to_print(tmp_path: Path) -> None:
    force = folder(tmp_path, "formations: {top: {parts: {}}}\n")
    answer = sheets(force, today=ON, choice=Choice(), asked=Asked())
    assert not answer.sheets


def test_a_force_that_cant_be_counted_has_no_papers(tmp_path: Path) -> None:
    force = folder(tmp_path, "formations: {top: {parts: {nothing: 1}}}\n")
    assert sheets(force, today=ON, choice=Choice(), asked=Asked()).sheets is None
