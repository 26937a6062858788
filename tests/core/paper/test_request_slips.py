"""Slips to ask for supporting troops by."""

from dataclasses import replace

from paradestate.core.game import Purchase
from paradestate.core.paper.ground import Ground
from paradestate.core.paper.request_slips import RequestSlip, request_slips
from paradestate.core.support.terms import terms_of
from tests.core.paper.games import secrets
from tests.core.paper.grounds import battalion, small, with_plan


def faces(ground: Ground) -> list[RequestSlip]:
    made = request_slips(ground).shown
    assert made is not None
    return [piece.face for page in made.pages for piece in page.pieces]


def test_each_entry_that_is_to_be_had_has_one() -> None:
    names = [each.name for each in faces(battalion())]
    assert len(names) == 12
    assert "Anti-tank rifles" not in names  # until 1942


def test_in_a_game_only_those_of_its_posture() -> None:
    names = [each.name for each in faces(replace(battalion(), game="whole-day attack"))]
    assert "Field works for a company" not in names
    assert len(names) == 11


def test_what_is_planned_comes_first_with_its_number() -> None:
    ground = with_plan(("light tanks", 2), ("bicycle troop", 2), ("light tanks", 3))
    first, second, third = faces(ground)[:3]
    assert (first.name, first.planned) == ("Bicycle troop", 2)
    assert (second.name, second.planned) == ("Light tanks", 5)
    assert third.planned == 0


def test_prices_limits_and_rolls_are_in_words_and_by_hand_is_said() -> None:
    tanks = next(each for each in faces(battalion()) if each.name == "Light tanks")
    assert tanks.terms == (
        "Two cost 9 points, three 13.",
        "Each puts down 1 light tank.",
        "One in the force.",
        "Roll one 12-sided die: on 1 to 4 none; on 5 to 12 all.",
        "Refused points are kept.",
    )
    assert tanks.is_rolled
    assert tanks.held_at == "division"
    guns = next(each for each in faces(secrets()) if each.name == "ZzGuns")
    assert guns.by_hand == "zzEntryByHand"
    assert not guns.is_rolled


def test_a_force_without_supporting_troops_has_none() -> None:
    plan = (Purchase(entry="nobody", number=1),)
    assert request_slips(replace(small(), plan=plan)).shown is None


def test_at_chosen_grades_the_price_is_that_of_the_grade() -> None:
    """The first scale with prices of its own decides; the list's words for the others fall away."""
    plain = with_plan(("light tanks", 2))
    force = plain.force
    dearer = replace(
        force.supporting_troops["light tanks"],
        cost_by_grade={"training": {"recruits": {2: 6, 3: 8}}},
    )
    entries = {**force.supporting_troops, "light tanks": dearer}
    ground = replace(
        plain, force=replace(force, supporting_troops=entries), game="whole-day attack"
    )
    assert faces(ground)[0].terms[:2] == (
        "Two cost 9 points, three 13.",
        "Where training is recruits, two cost 6 points, three 8.",
    )
    terms, _ = terms_of(
        ground.force, ground.made, game=ground.game, grades={"training": "recruits"}
    )
    chosen = faces(replace(ground, terms=terms))
    assert chosen[0].terms[:2] == ("Two cost 6 points, three 8.", "Each puts down 1 light tank.")
    assert [each.name for each in chosen] == [each.name for each in faces(ground)]


def test_what_is_on_no_offer_keeps_the_words_of_the_list() -> None:
    ground = replace(battalion(), game="whole-day attack")
    terms, _ = terms_of(ground.force, ground.made, game=ground.game, grades={})
    assert terms is not None
    bare = replace(ground, terms=replace(terms, offers={}))
    assert faces(bare) == faces(ground)
