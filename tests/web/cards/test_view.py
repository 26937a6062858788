"""Cards as they stand on the page."""

import datetime
from pathlib import Path

import pytest

from paradestate.core.choice import Choice
from paradestate.journeys.paper.papers import Papers, papers
from paradestate.web.cards import view
from paradestate.web.cards.view import cards_view, supplies_view
from tests.cli.test_bench_supplies import DONE
from tests.forces import EXAMPLES

ON = datetime.date(2026, 3, 5)


@pytest.fixture(scope="module")
def cards() -> Papers:
    found = papers(EXAMPLES / "marenz", today=ON, choice=Choice()).papers
    assert found is not None
    return found


def test_stands_of_one_company_stand_under_its_name(cards: Papers) -> None:
    sections = cards_view(cards).jobs[3]
    assert [(each.title, len(each.rows)) for each in sections.groups] == [
        ("No 1 Company", 6),
        ("No 2 Company", 6),
    ]
    assert sections.groups[0].rows[0].title == "1 Platoon, 1 Section"
    assert [time for _, time in sections.stages] == ["3 h"] * 4


def test_one_stand_of_a_company_says_it_itself(cards: Papers) -> None:
    commands = cards_view(cards).jobs[2]
    assert [(each.title, each.rows[0].title) for each in commands.groups] == [
        ("", "No 1 Company, Company Command"),
        ("", "No 2 Company, Company Command"),
    ]


def test_a_card_says_when_it_is_done_and_whether_something_is_playable(cards: Papers) -> None:
    jobs = cards_view(cards).jobs
    assert (jobs[0].after, jobs[5].after) == ("", "19 h")
    assert [each.number for each in jobs if each.is_milestone] == [6, 9]
    assert [time for _, time in jobs[0].stages] == [""] * 4


def test_of_very_many_stands_the_first_batches_are_shown(
    cards: Papers, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(view, "MOST_STANDS", 5)
    found = cards_view(cards)
    assert ([each.number for each in found.jobs], found.left_out) == ([1, 2, 3], 6)
    monkeypatch.setattr(view, "MOST_STANDS", 1)
    assert len(cards_view(cards).jobs) == 1


def test_colours_of_one_part_stand_under_its_name(tmp_path: Path) -> None:
    colours = "bench: {colours: {tunic: [{colour: sand, coats: 9}, {colour: wash}]}, minutes:"
    text = DONE.replace("bench: {minutes:", colours)
    (tmp_path / "force.yaml").write_text(text, encoding="utf-8")
    found = papers(tmp_path, today=ON, choice=Choice()).papers
    assert found is not None
    (card,) = cards_view(found).colours
    assert (card.title, card.on) == ("1 rifleman", "section")
    assert [(each.part, each.words, each.boxes) for each in card.coats] == [
        ("Tunic", "sand, 9 coats", 6),
        ("", "wash, 1 coat", 1),
    ]


def test_what_is_used_up_is_the_same_as_the_command_says(tmp_path: Path) -> None:
    answer = papers(EXAMPLES / "marenz", today=ON, choice=Choice())
    assert answer.papers is not None
    found = supplies_view(answer.papers.requisition, answer.checked.force.bench.supplies)
    assert found.paints[0] == ("Undercoat", "125", "8.1 ml", "8.9 ml", "1", "guess")
    assert found.bases[2] == ("40 x 20 mm", "28", "31", "70")
    assert found.of_bases[0].startswith("Ground to cover: 279 cm")
    (tmp_path / "force.yaml").write_text(DONE.replace("{height: 10 mm}", "{}"), encoding="utf-8")
    answer = papers(tmp_path, today=ON, choice=Choice())
    assert answer.papers is not None
    bare = supplies_view(answer.papers.requisition, answer.checked.force.bench.supplies)
    assert (bare.paints, bare.bases, bare.of_bases) == ((), (), ())
    assert bare.of_paints == ("Left out, for no size is given: 1 rifleman.",)
