"""Colour cards in words."""

from paradestate.core.figure import Sort
from paradestate.core.paper.colour_cards import MOST_BOXES, colour_cards_paper
from paradestate.core.work.job_card import colour_cards
from tests.core.work.batches import MINUTES, climbed

COLOURS = f"""\
{MINUTES}  colours:
    officer: [{{colour: red, coats: 9}}]
    tunic: [{{colour: sand, coats: 2, share: 40%}}, {{colour: wash}}]
"""
OUTLINES = {sort: (f"M{place}",) for place, sort in enumerate(Sort)}


def test_a_card_has_an_outline_and_a_line_for_each_coat_with_its_boxes() -> None:
    found, force = climbed(bench=COLOURS)
    cards = colour_cards(found.rungs, force)
    shown = colour_cards_paper(cards, outlines=OUTLINES, size=(12, 18)).shown
    assert shown is not None
    assert shown.size == (12, 18)
    officer = next(card for card in shown.cards if card.title == "1 officer")
    assert officer.outline == OUTLINES[Sort.FOOT]
    lines = [(line.part, line.words, line.boxes) for line in officer.coats]
    assert ("Officer", "red, 9 coats", MOST_BOXES) in lines
    tunic = lines.index(("Tunic", "sand, 2 coats on 40%", 2))
    assert lines[tunic + 1] == ("", "wash, 1 coat", 1)


def test_without_colours_there_is_no_card() -> None:
    found, force = climbed()
    cards = colour_cards(found.rungs, force)
    assert colour_cards_paper(cards, outlines=OUTLINES, size=(12, 18)).shown is None
