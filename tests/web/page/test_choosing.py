"""Choosing through its page: what may be asked for, a plan put together, the dice, the files."""

import re
from html import unescape
from pathlib import Path

import pytest
from httpx2 import Response

from paradestate.chance.force import diagram
from paradestate.journeys.check import checked
from paradestate.journeys.new import new_from_example
from tests.web.visitor import NOW, Visitor, forms_of, words_of

CHOOSING = "/forces/marenz/choosing"
GAME = "whole-day attack"
PLAN = "light tanks=2, tank squadron commander=1, machine-gun platoon=2"
FILE = "supporting-troops.yaml"


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    new_from_example(tmp_path / "marenz", name="marenz")
    return tmp_path / "marenz"


@pytest.fixture
def player(folder: Path) -> Visitor:
    return Visitor(folder)


def links(seen: Response) -> list[tuple[str, str]]:
    """The words and the address of each link, marks and drawings left out."""
    found = re.findall(r'<a [^>]*?href="([^"]*)"([^>]*)>(.*?)</a>', seen.text, re.DOTALL)
    return [
        (
            " ".join(
                unescape(
                    re.sub(r"<[^>]+>", " ", f"{label(rest)} {inner}"),
                ).split()
            ),
            unescape(address),
        )
        for address, rest, inner in found
    ]


def label(attributes: str) -> str:
    found = re.search(r'aria-label="([^"]*)"', attributes)
    return found[1] if found else ""


def follow(player: Visitor, seen: Response, *, words: str) -> Response:
    """The page behind the only link with these words."""
    (address,) = {address for said, address in links(seen) if said == words}
    return player.get(address.partition("#")[0])


def test_the_sheet_opens_on_the_first_game_of_the_files(player: Visitor) -> None:
    page = player.get(CHOOSING)
    assert page.status_code == 200
    said = words_of(page)
    assert "Game evening attack" in said
    assert "Points left 5 to 15" in said
    assert "10 + 2d6 points, 7 points taken off" in said
    assert "No supporting troops. 0 points of at the most 15" in said


def test_an_entry_is_said_in_words_with_its_odds(player: Visitor) -> None:
    said = words_of(player.get(CHOOSING, game=GAME))
    assert "Machine-gun platoon one costs 3 points, two 5, three 7" in said
    assert "one for every two companies: two" in said
    assert "comes 2/3, 67 in 100 roll one 12-sided die: on 1 to 4 none; on 5 to 12 all" in said
    assert "one or more 5/6, 83 in 100; two or more 1/3, 33 in 100" in said
    assert "Not in this game: anti-tank rifles (not to be had in 1943); field works" in said


def test_a_plan_says_its_odds_and_reads_as_an_order(player: Visitor) -> None:
    """Check values 3.10: 13/18 of the rolls pay, 2/3 of the dice allow, 13/27 together."""
    said = words_of(player.get(CHOOSING, game=GAME, plan=PLAN))
    assert "The plan comes off 13/27, 48 in 100: the points suffice 13/18" in said
    assert "Under command: 2 x machine-gun platoon (attached to a platoon" in said
    assert "In support: 2 x light tanks and 1 x tank squadron commander." in said
    assert "17 points of at the most 23: 6 to spare. Worth 15 to you. Legal." in said
    assert "2 x machine-gun platoon; 12 points free again 13/54, 24 in 100" in said


def test_a_plan_is_put_together_by_links_and_stands_in_the_address(player: Visitor) -> None:
    page = player.get(CHOOSING, game=GAME)
    page = follow(player, page, words="Light tanks: two for 9 points")
    page = follow(player, page, words="More: 2 x light tanks")
    assert "13 points of at the most 23" in words_of(page)
    page = follow(player, page, words="Pioneers: flame: one for 3 points")
    assert "In support: 3 x light tanks." in words_of(page)
    assert "1 x pioneers with flame" in words_of(page)
    page = follow(player, page, words="Less: 3 x light tanks")
    page = follow(player, page, words="Less: 2 x light tanks")
    page = follow(player, page, words="Less: 1 x pioneers with flame")
    assert "No supporting troops. 0 points" in words_of(page)


def test_beyond_a_limit_nothing_more_is_offered(player: Visitor) -> None:
    page = player.get(CHOOSING, game=GAME, plan="machine-gun platoon=1, machine-gun platoon=1")
    offered = [said for said, _ in links(page) if said.startswith("Machine-gun platoon")]
    assert offered == []


def test_a_plan_that_is_not_legal_says_why_and_each_way_out_does_it(player: Visitor) -> None:
    page = player.get(CHOOSING, game=GAME, rolled="20", plan="light tanks=2, armoured cars=2")
    said = words_of(page)
    assert "15 points of 13: 2 too many" in said
    assert "Not legal." in said
    ways = [address for words, address in links(page) if words.startswith(("Dropping", "Going"))]
    assert ways
    for address in ways:
        assert "Legal." in words_of(player.get(address.partition("#")[0]))


def test_what_the_game_does_not_have_is_said_and_nothing_else_lost(player: Visitor) -> None:
    page = player.get(CHOOSING, game=GAME, plan="field works for a company=1, elephants=2")
    said = words_of(page)
    assert "it isn't legal as it is" in said
    assert "Not legal." in said
    assert "elephants" in said


def test_after_the_roll_the_points_are_known(player: Visitor) -> None:
    said = words_of(player.get(CHOOSING, game=GAME, rolled="25", plan=PLAN))
    assert "Points left 18" in said
    assert "17 points of 18: 1 to spare" in said
    assert "The plan comes off 2/3, 67 in 100; the points always suffice." in said


def test_a_roll_that_cannot_be_is_a_stop_with_the_way_out(player: Visitor) -> None:
    page = player.get(CHOOSING, game=GAME, rolled="40")
    assert page.status_code == 422
    said = words_of(page)
    assert "40 can't be rolled: it is 20 to 30." in said
    assert "Points left 13 to 23" in said


def test_what_the_dice_refuse_takes_what_needs_it_with_it(player: Visitor) -> None:
    """Check value 3.10: 12 of the 17 points come free."""
    page = player.get(CHOOSING, game=GAME, rolled="25", plan=PLAN)
    page = follow(player, page, words="light tanks: refused")
    said = words_of(page)
    assert "Light tanks: refused. Tank squadron commander: gone with it." in said
    assert "12 points to spend again." in said
    assert "17 points of 18" in words_of(follow(player, page, words="light tanks: not rolled"))
    rest = words_of(follow(player, page, words="Go on with what is left of it"))
    assert "5 points of 18: 13 to spare" in rest


def test_a_purchase_is_moved_to_the_reserve_and_out_of_it(player: Visitor) -> None:
    page = player.get(CHOOSING, game=GAME, plan="field battery=2, light tanks=2")
    assert "2 x field battery: to the reserve" not in words_of(page)
    page = player.get(CHOOSING, game=GAME, plan=PLAN)
    page = follow(player, page, words="2 x light tanks: to the reserve")
    said = words_of(page)
    assert "In support: 1 x tank squadron commander. In reserve: 2 x light tanks." in said
    assert "17 points of at the most 23: 6 to spare. Worth 15 to you. Legal." in said
    assert "The plan comes off 13/27" in said
    assert "Nothing says how much of the supporting troops may be kept back." in said
    page = follow(player, page, words="Less: 2 x machine-gun platoon")
    assert "In reserve: 2 x light tanks." in words_of(page)
    back = follow(player, page, words="2 x light tanks: out of the reserve")
    assert "In reserve" not in words_of(back)
    page = follow(player, page, words="Less: 2 x light tanks")
    assert "In reserve" not in words_of(page)
    assert "named as reserve" not in words_of(page)


def test_platoons_are_kept_back_as_far_as_the_rule_goes(player: Visitor) -> None:
    """Check value 3.26: 12 platoons times 0.34 are 4.08, so at most 4."""
    page = player.get(CHOOSING, game=GAME, plan=PLAN, reserve="light tanks=1")
    (form,) = [each for each in forms_of(page) if "reserve:platoon" in each.fields]
    assert '<option value="4">4</option></select>' in page.text
    page = player.get(CHOOSING, **{**form.fields, "reserve:platoon": "4"})
    assert "In reserve, named: 4 platoons. In reserve too: 1 x light tanks." in words_of(page)
    page = player.get(CHOOSING, **{**form.fields, "reserve:platoon": "5"})
    said = words_of(page)
    assert "Not legal. 5 platoons named as reserve; 4 of 12 is the most." in said
    assert "Legal." in words_of(follow(player, page, words="Keeping nothing back"))


def test_a_reserve_that_cannot_be_read_is_a_stop(player: Visitor) -> None:
    for field in ("reserve", "reserve:platoon"):
        page = player.get(CHOOSING, **{"game": GAME, field: "many"})
        assert page.status_code == 422
        assert "many" in words_of(page)


def test_grades_numbers_and_date_are_of_the_question(player: Visitor) -> None:
    page = player.get(
        CHOOSING, **{"game": GAME, "grade:training": "recruits", "set": "company=3", "date": "1941"}
    )
    said = words_of(page)
    assert "Points left 19 to 29" in said
    assert "Anti-tank rifles" in said
    assert "Machine-gun platoon one costs 3 points, two 5, three 7 each puts down" in said
    assert "one for every two companies: one" in said


def test_a_game_that_is_not_there_leaves_the_form(player: Visitor) -> None:
    page = player.get(CHOOSING, game="moonlight")
    assert page.status_code == 422
    assert "No game is called 'moonlight'." in words_of(page)
    assert any(form.action.endswith("choosing") for form in forms_of(page))


def test_what_cannot_be_read_is_a_stop(player: Visitor) -> None:
    page = player.get(CHOOSING, game=GAME, plan="tanks", rolled="many")
    assert page.status_code == 422
    assert "'many' isn't a whole number" in words_of(page) or "many" in words_of(page)
    page = player.get(CHOOSING, game=GAME, plan="tanks")
    assert page.status_code == 422
    assert "'tanks' isn't entries and numbers." in words_of(page)


def test_a_plan_is_written_into_the_files_and_is_that_of_its_game(
    player: Visitor, folder: Path
) -> None:
    before = (folder / FILE).read_text()
    page = player.get(CHOOSING, game=GAME, rolled="25", plan="light tanks=2")
    page = player.fill(page, "choosing/plan")
    said = words_of(page)
    assert f"The plan is written into {FILE}." in said
    assert "as written Whole-day attack In support: 2 x light tanks." in said
    assert "Points left 18" in said
    (purchase,) = checked(folder, today=NOW.date()).force.games[GAME].plan
    assert (purchase.entry, purchase.number) == ("light tanks", 2)
    page = player.get(CHOOSING, game=GAME, plan="none")
    player.fill(page, "choosing/plan")
    assert (folder / FILE).read_text() == before


def test_a_plan_that_would_stop_the_force_is_not_written(player: Visitor, folder: Path) -> None:
    before = (folder / FILE).read_text()
    page = player.get(CHOOSING, game=GAME, plan="elephants=2")
    page = player.fill(page, "choosing/plan")
    assert page.status_code == 422
    assert (folder / FILE).read_text() == before
    page = player.post(CHOOSING + "/plan", {"game": GAME, "plan": "elephants"})
    assert page.status_code == 422
    assert (folder / FILE).read_text() == before


def test_only_a_file_of_the_force_is_named_as_written(player: Visitor) -> None:
    assert "is written into" not in words_of(player.get(CHOOSING, written="secret.txt"))


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("", "This force has no supporting troops yet"),
        ("supporting troops: {guns: {cost: 3}}\n", "This force plays no game yet"),
        ("colour: red\n", "A stop prevents the answer."),
    ],
)
def test_a_force_without_anything_to_choose_says_so(tmp_path: Path, text: str, said: str) -> None:
    (tmp_path / "guard").mkdir()
    (tmp_path / "guard" / "force.yaml").write_text(
        "format: 1\ntitle: Guard\nstands: {a: {base: none}}\nformations: {top: {parts: {a: 1}}}\n"
        f"raise: {{formation: top}}\n{text}"
    )
    page = Visitor(tmp_path / "guard").get("choosing")
    assert page.status_code == 200
    assert said in words_of(page)


def test_a_page_that_was_seen_is_there_again_at_once(player: Visitor) -> None:
    """What was worked out is kept in mind: no second answer is made of the same question."""
    first = player.get(CHOOSING, game=GAME, plan=PLAN)
    tokens = re.compile(r'name="token" value="[0-9a-f]+"')
    again = player.get(CHOOSING, game=GAME, plan=PLAN)
    assert tokens.sub("", first.text) == tokens.sub("", again.text)


def test_legal_forces_are_counted_and_the_best_can_be_made_the_plan(player: Visitor) -> None:
    """Check values 3.12: 3,809 at 18 points, of which 977 spend all."""
    page = player.get(CHOOSING, game=GAME, rolled="25")
    said = words_of(page)
    assert "3,809 legal forces with 18 points; 977 of them spend all. Exact." in said
    assert "can be fielded with what is owned" in said
    best = "2 x machine-gun platoon, 1 x anti-tank guns and 2 x light tanks"
    page = follow(player, page, words=best)
    assert "18 points of 18: 0 to spare. Worth 19 to you. Legal." in words_of(page)


def test_the_best_is_there_where_all_are_too_many(
    player: Visitor, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(diagram, "MOST_NODES", 1)
    page = player.get(CHOOSING, game=GAME, rolled="25")
    said = words_of(page)
    assert "How many there are with 18 points wasn't computed: with so many points and" in said
    assert "Exact: no legal force is worth more, and none worth as much costs less." in said
    assert "Exact: no legal force that can be fielded is worth more" in said
    best = re.search(r"Worth most to you Worth Points (.*?) 19 18", said)
    assert best
    page = follow(player, page, words=best[1])
    assert "18 points of 18: 0 to spare. Worth 19 to you. Legal." in words_of(page)


def test_few_forces_are_all_there(player: Visitor) -> None:
    """Check value 3.12: 19 at 5 points."""
    page = player.get(CHOOSING, game="evening attack", rolled="12")
    assert "All 19 of them" in words_of(page)


def test_a_game_without_dice_asks_for_no_roll(tmp_path: Path) -> None:
    new_from_example(tmp_path / "kelmar", name="kelmar")
    page = Visitor(tmp_path / "kelmar").get("choosing", game="club evening")
    said = words_of(page)
    assert "Points left 120" in said
    assert "Allowance rolled" not in said
    assert "0 points of 120: 120 to spare. Not legal." in said
    assert "rifle company: not taken; it must be taken at least once." in said


def test_before_the_roll_every_number_of_points_says_what_to_ask_for_first(
    player: Visitor,
) -> None:
    """Check value 3.11: 16.60 on average over the roll."""
    page = player.get(CHOOSING, game=GAME)
    said = words_of(page)
    assert "It depends on the roll. Worth 16.6 on average" in said
    assert "18 2 x light tanks 17.11" in said
    assert "Ask for 2 x light tanks" in words_of(follow(player, page, words="18"))


def test_after_the_roll_each_answer_of_the_dice_leads_to_what_to_do_now(player: Visitor) -> None:
    """Check values 3.11: 154/9, then 53/6; of two guns only one is taken."""
    page = player.get(CHOOSING, game=GAME, rolled="25")
    assert "Ask for 2 x light tanks. 17.11 to come on average" in words_of(page)
    page = follow(player, page, words="Allowed")
    said = words_of(page)
    assert "2 x light tanks: allowed not so" in said
    assert "Ask for 2 x anti-tank guns. 8.83 to come on average" in said
    page = follow(player, page, words="Allowed")
    said = words_of(page)
    assert "2 x anti-tank guns: allowed, 1 taken" in said
    assert "Buy 2 x machine-gun platoon" in said
    made = words_of(follow(player, page, words="Make this the plan"))
    assert "18 points of 18: 0 to spare. Worth 19 to you. Legal." in made
    back = follow(player, page, words="not so : 2 x anti-tank guns")
    assert "Ask for 2 x anti-tank guns. 8.83 to come" in words_of(back)


def test_the_chart_has_its_table_and_what_else_could_be_asked_first(player: Visitor) -> None:
    said = words_of(player.get(CHOOSING, game=GAME, rolled="25"))
    assert "with 18 points left at first" in said
    assert "refused 1/3, 33 in 100 Ask for 2 x anti-tank guns 13.67" in said
    assert "2 x light tanks 17.11 best" in said
    assert "2 x light tanks, worth 10: down to 8" in said


def test_an_answer_that_cannot_be_followed_is_said(player: Visitor) -> None:
    page = player.get(CHOOSING, **{"game": GAME, "rolled": "25", "allowed:armoured cars": "2"})
    assert "It isn't known what was asked of armoured cars" in words_of(page)


def test_without_worths_it_says_what_would_help(player: Visitor, folder: Path) -> None:
    text = (folder / FILE).read_text()
    (folder / FILE).write_text(text[: text.index("worths:")])
    said = words_of(player.get(CHOOSING, game=GAME))
    assert "Nothing that is on offer in this game has a worth. Add 'worths:'" in said
    assert "3,809 legal forces" in said
