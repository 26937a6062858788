"""Cards that lie beside the work."""

from paradestate.core.work.job_card import ColourCard, JobCard, colour_cards, job_cards
from tests.core.work.batches import MINUTES, climbed

COLOURS = f"""\
{MINUTES}  dry: {{undercoated: 2 h}}
  colours:
    officer: [{{colour: red}}]
    tunic: [{{colour: sand, coats: 2, share: 40%}}, {{colour: wash}}]
    command: [{{colour: black}}]
"""


def jobs(*texts: str, bench: str = COLOURS) -> dict[str, JobCard]:
    found, force = climbed(*texts, bench=bench)
    return {card.rung.pattern: card for card in job_cards(found.rungs, force)}


def colours(*texts: str, bench: str = COLOURS) -> list[ColourCard]:
    found, force = climbed(*texts, bench=bench)
    return list(colour_cards(found.rungs, force))


def test_a_card_has_a_box_for_each_stage_still_to_come() -> None:
    card = jobs()["section"]
    assert card.stages == ("assembled", "undercoated", "painted", "based")
    assert [stand.is_done for stand in card.stands] == [(False,) * 4] * 2
    assert card.dry == {"undercoated": 120}


def test_what_a_stand_has_behind_it_is_ticked() -> None:
    card = jobs("stock: {rifleman: {undercoated: 5}}\n")["section"]
    first, second = card.stands
    assert first.is_done == (True, True, False, False)
    assert second.is_done == (False,) * 4
    assert (first.lacking, second.lacking) == ({}, {"rifleman": 4})


def test_a_stage_that_all_have_behind_them_is_not_on_the_card() -> None:
    card = jobs("stock: {rifleman: {undercoated: 9}}\n")["section"]
    assert card.stages == ("painted", "based")
    assert card.dry == {}


def test_parts_are_in_the_order_of_the_files_with_the_kinds_that_wear_them() -> None:
    card = jobs()["command"]
    found = [(each.part.name, each.kinds, each.is_for_all) for each in card.parts]
    assert found == [
        ("officer", ("officer",), False),
        ("tunic", ("officer", "rifleman"), True),
        ("command", ("officer", "rifleman"), True),
    ]


def test_what_is_painted_needs_no_colours() -> None:
    card = jobs("stock: {rifleman: {painted: 9}}\n")["section"]
    assert card.stages == ("based",)
    assert card.parts == ()


def test_a_kind_that_is_painted_otherwise_on_some_stands_has_a_card_for_each_way() -> None:
    found = {(card.kind, card.patterns): card for card in colours()}
    assert {key: card.number for key, card in found.items()} == {
        ("officer", ("command",)): 1,
        ("rifleman", ("command",)): 1,
        ("rifleman", ("section",)): 8,
    }
    assert [part.name for part in found["rifleman", ("section",)].parts] == ["tunic"]


def test_without_colours_there_are_no_colour_cards() -> None:
    assert colours(bench=MINUTES) == []


def test_no_batches_have_no_cards() -> None:
    _, force = climbed(bench=COLOURS)
    assert job_cards((), force) == ()
    assert colour_cards((), force) == ()
