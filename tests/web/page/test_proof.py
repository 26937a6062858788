"""The list through its page: what to look at, entry by entry, what if, and two versions."""

import shutil
import time
from collections.abc import Callable
from pathlib import Path
from threading import Event

import pytest
from httpx2 import Response

from paradestate.chance.force import diagram
from paradestate.journeys.new import new_from_example
from paradestate.web.page import proof
from paradestate.web.proof import answer
from paradestate.web.search import MOST_RUNNING
from tests.web.visitor import Visitor, forms_of, words_of

LIST = "/forces/marenz/list"
ATTACK = "whole-day attack"
GUNS = "anti-tank guns"
WITHIN = 60.0
"""Seconds in which every answer of these tests is there, however busy the machine."""


@pytest.fixture(scope="module")
def collection(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The example, one with dearer guns, one that contradicts itself, one without a price of 3."""
    place = tmp_path_factory.mktemp("lists")
    new_from_example(place / "marenz", name="marenz")
    changed(place, "dearer", before="{1: 4, 2: 7, 3: 10}", after="{1: 6, 2: 8, 3: 10}")
    changed(place, "odd", before="{1: 3, 2: 5, 3: 7}", after="{1: 3, 2: 5, 3: 9}")
    changed(place, "coarse", before="{1: 3", after="{1: 4")
    return place


def changed(place: Path, name: str, *, before: str, after: str) -> Path:
    shutil.copytree(place / "marenz", place / name)
    file = place / name / "supporting-troops.yaml"
    text = file.read_text()
    assert before in text
    file.write_text(text.replace(before, after))
    return file


@pytest.fixture(scope="module")
def author(collection: Path) -> Visitor:
    return Visitor(collection, force="marenz")


def shown(author: Visitor, page: str = LIST, **query: str) -> Response:
    """The page once everything on it is worked out."""
    until = time.monotonic() + WITHIN
    while "being proved" in (seen := author.get(page, **query)).text:
        assert time.monotonic() < until
    return seen


def test_the_sheet_opens_with_its_answer(author: Visitor) -> None:
    said = words_of(shown(author))
    assert "No price contradicts another. Never taken: anti-tank rifles." in said
    assert "All legal forces of 4 games are counted; exact." in said
    assert "Entries 13 Games 4 To look at 3" in said
    assert "Anti-tank rifles: never available; not to be had in 1943." in said
    assert "Evening attack, entry by entry with 10 points" in said


def test_prices_that_contradict_one_another_come_first_with_their_steps(author: Visitor) -> None:
    """Section 3.24 of the computations: 1:3, 2:5, 3:9 fails since 3 + 5 = 8 < 9."""
    page = shown(author, "/forces/odd/list")
    said = words_of(page)
    assert "The prices of machine-gun platoon contradict one another." in said
    assert (
        "Prices that contradict one another Machine-gun platoon: 3 cost 9, but 2 + 1 cost 8. "
        "Nobody would pay the higher price. 1 costs 3, 2 cost 5 (2 more), 3 cost 9 (4 more) What if"
    ) in said
    assert "/forces/odd/list?entry=machine-gun+platoon#what-if" in page.text


def test_entry_by_entry_shares_and_places_are_said_at_their_bars(author: Visitor) -> None:
    """The shares are those of the command: docs/do/prove-a-list.md."""
    said = words_of(shown(author, game=ATTACK))
    assert "Machine-gun platoon steps of price 3, 2, 2 54 in 100 every 31 in 100, some 11" in said
    assert "Medium mortars steps of price 5, 4 21 in 100 none" in said
    assert "Field works for a company never available; only in defence, and this is attack" in said


def test_points_given_take_the_place_of_the_dice(author: Visitor) -> None:
    said = words_of(shown(author, game=ATTACK, points="5"))
    assert "entry by entry with 5 points Entry" in said
    assert "the middle" not in said


def test_points_that_nobody_can_spend_are_drawn_where_there_are_any(author: Visitor) -> None:
    assert 'id="waste"' not in shown(author, game="evening defence").text
    page = shown(author, "/forces/coarse/list", game="evening defence")
    assert 'id="waste"' in page.text
    assert "Points left Chance Left over at the least 3 1/6, 17 in 100 1 point 4" in words_of(page)


def test_an_entry_s_slip_is_filled_in_as_it_stands(author: Visitor) -> None:
    page = shown(author, game=ATTACK, entry=GUNS)
    (slip,) = [each for each in forms_of(page) if "price:1" in each.fields]
    assert {key: slip.fields[key] for key in ("price:1", "price:2", "price:3", "most")} == {
        "price:1": "4",
        "price:2": "7",
        "price:3": "10",
        "most": "1",
    }
    assert (slip.fields["game"], slip.fields["entry"]) == (ATTACK, GUNS)
    said = words_of(page)
    assert "Change a number on the slip" in said
    assert "4 as it is" in said


def test_a_changed_price_says_what_it_does(author: Visitor) -> None:
    """The sentence and the row of the command: docs/do/prove-a-list.md."""
    asked = {"game": ATTACK, "entry": GUNS, "price:1": "5", "price:2": "7", "most": "1"}
    page = shown(author, **asked)
    said = words_of(page)
    assert (
        "Raising 1 x anti-tank guns from 4 to 5 points removes 6 in 100 of the legal forces at 18 "
        "points and leaves it in eight of the best twenty (before: nine)."
    ) in said
    assert "not written down" in said
    assert "the files: 4" in said
    assert "Other prices of one Value Legal Lost Gained Best On average Among the best" in said
    assert "5 3,577 232 0 19 19.11 8 of 20" in said
    assert (
        "before and now: 855 and now 705 at 13 points" in page.text or "before and now" in page.text
    )


def test_a_limit_and_a_worth_are_changed_alike(author: Visitor) -> None:
    asked = {"game": ATTACK, "points": "12", "entry": "bicycle troop"}
    said = words_of(shown(author, **asked, most="any"))
    assert "Changing the limit of bicycle troop from 1 purchase to any number" in said
    assert "Other limits Value" in said
    said = words_of(shown(author, **asked, **{"worth:2": "9"}))
    assert "Holding 2 x bicycle troop worth 9 and not" in said
    assert "Other worths of two Value" in said


def test_what_else_is_changed_is_said_beside_the_values(author: Visitor) -> None:
    asked = {"game": ATTACK, "points": "5", "entry": GUNS, "price:1": "5", "most": "2"}
    said = words_of(shown(author, **asked))
    assert "Meanwhile also changing the limit of anti-tank guns from 1 purchase to 2" in said


def test_a_box_with_a_slip_is_a_stop_and_keeps_what_was_typed(author: Visitor) -> None:
    page = shown(author, game=ATTACK, entry=GUNS, **{"price:2": "dear"})
    assert page.status_code == 422
    said = words_of(page)
    assert "Price of 2: 'dear' isn't a whole number" in said
    assert 'value="dear"' in page.text


def test_a_change_that_doesn_t_fit_is_a_stop(author: Visitor) -> None:
    asked = {"game": ATTACK, "points": "5", "entry": GUNS, "price:1": "0", "most": "any"}
    page = shown(author, **asked)
    assert page.status_code == 422
    assert "any number of it might be taken for nothing" in words_of(page)


def test_an_entry_that_isn_t_on_offer_says_why(author: Visitor) -> None:
    said = words_of(shown(author, game=ATTACK, entry="field works for a company"))
    assert (
        "Field works for a company isn't on offer in whole-day attack: only in defence, and this "
        "is attack."
    ) in said
    said = words_of(shown(author, game=ATTACK, entry="elephants"))
    assert "the files know no entry of that name" in said


def test_two_versions_are_compared_in_every_game(author: Visitor) -> None:
    """Lost and gained are those of the command: docs/do/prove-a-list.md."""
    said = words_of(shown(author, game="evening attack", beside="dearer"))
    assert "this one before, dearer now" in said
    assert (
        "At 10 points 234 legal forces become 206: 28 of them lost (12 in 100), none new." in said
    )
    assert "supporting troops, anti-tank guns, cost: was: one costs 4 points" in said
    assert "Whole-day attack At 18 points" in said


def test_a_version_that_isn_t_there_or_can_t_be_read_is_said(
    author: Visitor, collection: Path
) -> None:
    assert "There is no force “nothing” beside this one." in words_of(
        shown(author, beside="nothing")
    )
    (collection / "broken").mkdir(exist_ok=True)
    (collection / "broken" / "force.yaml").write_text("format: 1\ntitle: T\n")
    said = words_of(shown(author, points="5", beside="broken"))
    assert "this one before, broken now" in said
    assert "Compare Stop: 'raise' is missing." in said
    shutil.rmtree(collection / "broken")


def test_a_lone_force_says_how_two_versions_are_served(tmp_path: Path) -> None:
    new_from_example(tmp_path / "kelmar", name="kelmar")
    said = words_of(shown(Visitor(tmp_path / "kelmar"), "list", game="club evening"))
    assert "Copy the folder of this force beside it" in said
    assert "Club evening, entry by entry with 120 points Entry" in said


def test_a_game_that_isn_t_there_is_a_stop_and_so_is_what_can_t_be_read(author: Visitor) -> None:
    assert shown(author, game="tea party").status_code == 422
    page = shown(author, points="many")
    assert page.status_code == 422
    assert "Points left: 'many' isn't a whole number." in words_of(page)
    assert shown(author, points="9999").status_code == 422


def test_a_game_that_stops_the_others_leaves_the_chosen_one(
    author: Visitor, collection: Path
) -> None:
    text = (collection / "marenz" / "supporting-troops.yaml").read_text()
    (collection / "half").mkdir()
    for file in (collection / "marenz").glob("*.yaml"):
        shutil.copy(file, collection / "half")
    (collection / "half" / "supporting-troops.yaml").write_text(
        text.replace(
            "games:",
            "games:\n  raid: {allowance: 5, posture: attack, numbers: {company: 90000000}}",
        )
    )
    page = shown(author, "/forces/half/list", game=ATTACK, points="5")
    said = words_of(page)
    assert "Whole-day attack, entry by entry with 5 points" in said
    assert "Not every game could be looked at. Stop: 90000000 isn't within 2-4 for company" in said
    assert shown(author, "/forces/half/list", game="raid", points="5").status_code == 422
    shutil.rmtree(collection / "half")


def test_what_is_too_large_isn_t_computed(author: Visitor, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(diagram, "MOST_STEPS", 0)
    said = words_of(shown(author, points="7"))
    assert "Nothing could be proved." in said
    assert "Evening attack: not computed: with so many points and entries" in said


def held(monkeypatch: pytest.MonkeyPatch) -> Callable[[], None]:
    """Has every answer wait until it is let go."""
    go = Event()
    whole = answer.answered

    def waiting(*given: object, **asked: object) -> object:
        go.wait(WITHIN)
        return whole(*given, **asked)  # type: ignore[arg-type] # handed on as they are

    monkeypatch.setattr(proof, "answered", waiting)
    monkeypatch.setattr(proof, "AT_ONCE", 0.01)
    return go.set


def test_what_takes_long_says_so_and_is_there_when_it_is_asked_for_again(
    collection: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    author = Visitor(collection, force="marenz")
    let_go = held(monkeypatch)
    page = author.get(LIST, points="6")
    assert page.status_code == 200
    assert "The list is being proved" in words_of(page)
    assert 'http-equiv="refresh"' in page.text
    assert 'hx-trigger="load delay:1s"' in page.text
    let_go()
    assert "entry by entry with 6 points" in words_of(shown(author, points="6"))


def test_more_than_may_be_worked_out_at_once_wait_their_turn(
    collection: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    author = Visitor(collection, force="marenz")
    let_go = held(monkeypatch)
    for number in range(MOST_RUNNING):
        author.get(LIST, points=f"{number}")
    page = author.get(LIST, points="9")
    assert page.status_code == 503
    assert "4 searches run already" in words_of(page)
    let_go()
    assert author.client.get("/").status_code in {200, 303}


def test_a_change_of_the_files_is_seen(tmp_path: Path) -> None:
    new_from_example(tmp_path / "marenz", name="marenz")
    author = Visitor(tmp_path / "marenz")
    assert "contradict one another." not in words_of(shown(author, points="5"))
    file = tmp_path / "marenz" / "supporting-troops.yaml"
    file.write_text(file.read_text().replace("{1: 3, 2: 5, 3: 7}", "{1: 3, 2: 5, 3: 9}"))
    assert "machine-gun platoon contradict one another." in words_of(shown(author, points="5"))


BARE = (
    "format: 1\ntitle: T\nformations: {top: {parts: {a: 1}}}\nstands: {a: {base: none}}\n"
    "raise: {formation: top}\n"
)


@pytest.mark.parametrize(
    ("more", "words"),
    [
        ("", "there is no list to prove"),
        ("supporting troops: {gun: {cost: {1: 2}}}\n", "it isn’t known what there is to spend"),
    ],
)
def test_without_troops_or_games_the_way_to_begin_is_shown(
    tmp_path: Path, more: str, words: str
) -> None:
    (tmp_path / "force.yaml").write_text(BARE + more)
    page = Visitor(tmp_path).get("list")
    assert page.status_code == 200
    assert words in words_of(page)


def test_what_the_files_stop_is_said(tmp_path: Path) -> None:
    (tmp_path / "force.yaml").write_text("format: 1\ntitle: T\n")
    assert "Stop" in words_of(Visitor(tmp_path).get("list"))
