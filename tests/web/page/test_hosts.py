"""Hosts through its page: the best attachment, sections moved, worths put in, why it can't be."""

import json
import re
from html import unescape
from pathlib import Path

import pytest
from httpx2 import Response

from paradestate.journeys.new import new_from_example
from paradestate.web.hosts import place_worth, view
from tests.journeys.conftest import written
from tests.web.visitor import Visitor, words_of

HOSTS = "/forces/marenz/hosts"
GAME = "whole-day attack"
PLAN = "machine-gun platoon=3, pioneers(flame)=2"
FIRST = "No 1 Company / 1 Platoon"
LAST = "No 4 Company / 3 Platoon"
OWN = """\
format: 1
title: Test
stands: {a: {base: none}}
formations: {top: {parts: {platoon: 3}}, platoon: {parts: {a: 1}}}
raise: {formation: top}
games: {evening: {allowance: 12, posture: attack, plan: [guns=4]}}
supporting troops: {guns: {cost: {1: 1, 4: 2}, attach: {to: platoon, most per host: 1}}}
"""


@pytest.fixture(scope="module")
def shared(tmp_path_factory: pytest.TempPathFactory) -> Visitor:
    """Looks at one folder, which nothing here writes into."""
    place = tmp_path_factory.mktemp("hosts")
    new_from_example(place / "marenz", name="marenz")
    return Visitor(place / "marenz")


def seen(visitor: Visitor, **query: str) -> Response:
    return visitor.get(HOSTS, **{"game": GAME, "plan": PLAN, **query})


def compartments(page: Response) -> dict[str, str]:
    """The words of each place of the board."""
    board = page.text.partition('<ol class="ranks">')[2].partition("</ol>")[0]
    found = re.findall(
        r'<li class="spot[^>]*data-place="([^"]*)">(.*?)(?=<li class="spot|</ul></li>\n)',
        board,
        re.DOTALL,
    )
    return {
        unescape(place): " ".join(
            unescape(re.sub(r"<svg.*?</svg>|<[^>]+>", " ", inner, flags=re.DOTALL)).split()
        )
        for place, inner in found
    }


def link(page: Response, *, id_: str) -> str:
    """The address that the element of an id leads to."""
    (found,) = re.findall(rf'id="{id_}" href="([^"#]*)', page.text)
    return unescape(found)


def test_the_sheet_opens_with_the_best_attachment(shared: Visitor) -> None:
    page = seen(shared)
    assert page.status_code == 200
    said = words_of(page)
    assert "Game whole-day attack Sections 5 Worth 5" in said
    assert "Worth 5. Exact: no other attachment is worth more." in said
    assert "The plan: 3 x machine-gun platoon and 2 x pioneers with flame." in said
    assert "No 2 Company, 1 Platoon: pioneers with flame 1 under command." in said
    assert compartments(page)[FIRST] == "1 Platoon Move: machine-gun platoon 1"
    assert compartments(page)[LAST] == "3 Platoon no section"
    assert "Back to the best" not in said


def test_a_section_taken_up_shows_what_each_place_brings_or_the_rule_that_forbids_it(
    shared: Visitor,
) -> None:
    page = shared.get(link(seen(shared), id_="section-4"))
    said = words_of(page)
    assert "Pioneers with flame 1 , with No 2 Company, 1 Platoon now. Where is it to go?" in said
    held = compartments(page)
    assert held[FIRST].endswith(
        "Not here: it has room for 1 section, and machine-gun platoon 1 is there."
    )
    assert held[LAST] == "3 Platoon Here: worth as much (No 4 Company, 3 Platoon)"
    assert held["independent"] == "Independent Here: worth 1 less (independent)"
    left = shared.get(link(page, id_="leave"))
    assert "Take a section up" in words_of(left)


def test_a_section_is_moved_and_moved_back(shared: Visitor) -> None:
    page = shared.get(link(seen(shared), id_="section-4"))
    moved = shared.get(link(page, id_="way-13"))
    said = words_of(moved)
    assert "Worth 4, 1 less than the best. The best is worth 5; exact." in said
    assert "Pioneers with flame 1 is independent now." in said
    assert "Independent: pioneers with flame 1." in said
    assert "moved" in compartments(moved)["independent"]
    (best,) = re.findall(r'href="([^"#]*)[^"]*">Back to the best', moved.text)
    assert "Worth 5. Exact" in words_of(shared.get(unescape(best)))
    again = shared.get(link(moved, id_="section-4"))
    home = shared.get(link(again, id_="way-4"))
    assert "at%3A" not in link(home, id_="section-1")
    assert "Worth 5. Exact" in words_of(home)


def test_what_a_drag_would_show_comes_with_the_page(shared: Visitor) -> None:
    page = seen(shared)
    (told,) = re.findall(r'data-section="machine-gun platoon 1" data-told="([^"]*)"', page.text)
    brings = json.loads(unescape(told))
    assert brings[0] is None
    assert brings[1] == ["it has room for 1 section, and machine-gun platoon 2 is there", False]
    assert brings[-2:] == [["worth as much", True], ["worth 1 less", True]]


def test_a_place_where_a_section_may_not_be_is_said(shared: Visitor) -> None:
    page = seen(shared, **{"at:pioneers(flame) 1": FIRST})
    said = words_of(page)
    assert "It may not stand so. Worth 5, as much as the best." in said
    assert "No 1 Company, 1 Platoon has room for 1 section, and pioneers with flame 1" in said


def test_names_that_are_not_on_the_board_move_nobody(shared: Visitor) -> None:
    page = seen(shared, **{"at:guns": FIRST, "at:pioneers(flame) 1": "the moon"})
    said = words_of(page)
    assert page.status_code == 200
    assert "'guns' isn't on the board. That move isn't made; all others are." in said
    assert "'the moon' isn't on the board." in said
    assert "Worth 5. Exact" in said


def test_worths_put_in_change_the_best_and_stand_in_the_address(shared: Visitor) -> None:
    page = seen(shared, **{"at:pioneers(flame) 1": LAST})
    after = shared.fill(page, "hosts/worths", filled={"worth:4:12": "4.5", "worth:1:13": "2"})
    assert "worths=" in str(after.url)
    said = words_of(after)
    assert "Worth 9.5. Exact" in said
    assert compartments(after)[LAST] == "3 Platoon Move: pioneers with flame 1 worth 4.5"
    assert "machine-gun platoon 1 worth 2" in compartments(after)["independent"]
    assert 'name="worth:4:12" value="4.5"' in after.text
    assert "What places are worth to you 2 put in" in said
    empty = shared.fill(after, "hosts/worths", filled={"worth:4:12": "", "worth:1:13": ""})
    assert "Worth 5. Exact" in words_of(empty)
    assert "worths=" not in str(empty.url)


def test_a_slip_in_a_box_is_shown_and_what_was_typed_stays(shared: Visitor) -> None:
    page = shared.fill(seen(shared), "hosts/worths", filled={"worth:4:12": "4,5"})
    assert page.status_code == 422
    said = words_of(page)
    assert "pioneers with flame 1 with No 4 Company, 3 Platoon: '4,5' has a comma" in said
    assert 'name="worth:4:12" value="4,5"' in page.text
    assert "Worth 5. Exact" in said


def test_worths_go_out_as_a_sheet_and_come_back_from_one(shared: Visitor) -> None:
    page = seen(shared)
    sheet = shared.get(HOSTS + "/worths.csv", game=GAME, plan=PLAN)
    assert sheet.headers["content-type"].startswith("text/csv")
    text = sheet.content.decode("utf-8-sig")
    line = f"pioneers(flame) 2,{LAST},"
    assert f"{line}1\r\n" in text
    changed = text.replace(f"{line}1\r\n", f"{line}7\r\n").encode()
    after = shared.fill(page, "hosts/worths", file=("worths.csv", changed), which=1)
    assert "Worth 11. Exact" in words_of(after)
    again = shared.get(f"{HOSTS}/worths.csv?{after.url.query.decode()}")
    assert f"{line}7\r\n" in again.content.decode("utf-8-sig")


def test_slips_and_remarks_of_a_sheet_are_shown(shared: Visitor) -> None:
    page = seen(shared)
    sheet = b"section,host,worth\nlancers 1,independent,3\n"
    bad = shared.fill(page, "hosts/worths", file=("worths.csv", sheet), which=1)
    assert bad.status_code == 422
    assert "no section of this plan is called 'lancers 1'" in words_of(bad)
    sheet += b"pioneers(flame) 1,independent,3\n"
    sheet = sheet.replace(b"lancers 1", b"machine-gun platoon 8")
    part = shared.fill(page, "hosts/worths", file=("worths.csv", sheet), which=1)
    assert part.status_code == 200
    said = words_of(part)
    assert "'machine-gun platoon 8' isn't in this plan." in said
    assert "Worth 7. Exact" in said


def test_worths_of_another_plan_are_not_used(shared: Visitor) -> None:
    said = words_of(seen(shared, worths="9", of="00000000"))
    assert "The worths in the address are of other sections or hosts than there are now." in said
    assert "Worth 5. Exact" in said


def test_where_too_few_have_room_it_is_said_who_shares_the_places(shared: Visitor) -> None:
    """Worked by hand: 7 sections, of two companies the 6 platoons."""
    page = shared.get(
        HOSTS,
        **{
            "game": GAME,
            "date": "1941",
            "set": "company=2",
            "plan": f"{PLAN}, pioneers(charges)=2",
            "must:pioneers": "yes",
            "must:machine-gun platoon": "yes",
        },
    )
    assert page.status_code == 422
    said = words_of(page)
    assert "Seven sections share six places; at least one has no host." in said
    assert "Not all that must be attached find a host. At least one of them stays" in said
    assert "Pioneers with charges 2 must be attached." in said
    assert "pioneers with charges 2" in compartments(page)["independent"]
    assert "pioneers: taken twice; the limit is one in the force." in said


def test_an_entry_whose_sections_must_be_attached_is_ticked(shared: Visitor) -> None:
    page = shared.get(link(seen(shared, **{"must:pioneers": "yes"}), id_="section-4"))
    assert 'name="must:pioneers" value="yes" checked' in page.text
    assert "Not here: pioneers with flame 1 must be attached." in compartments(page)["independent"]


def test_without_a_plan_it_is_offered_what_can_be_attached(shared: Visitor) -> None:
    page = shared.get(HOSTS, game=GAME)
    said = words_of(page)
    assert "Nothing is planned yet." in said
    (address,) = re.findall(r'href="([^"]*)">1 x pioneers with flame for 3 points<', page.text)
    assert "pioneers with flame under command" in words_of(shared.get(unescape(address)))
    said = words_of(shared.get(HOSTS, game=GAME, plan="light tanks=2"))
    assert "Nothing of this plan is attached to a host." in said
    assert "Sections none" in said


def test_what_cannot_be_planned_is_a_stop(shared: Visitor) -> None:
    for plan, said in (("guns", "'guns' isn't entries"), ("guns=2", "guns")):
        page = seen(shared, plan=plan)
        assert page.status_code == 422
        assert said in words_of(page)
    page = shared.get(HOSTS, game="moonlight")
    assert page.status_code == 422
    assert "No game is called 'moonlight'." in words_of(page)
    assert seen(shared, rolled="many").status_code == 422
    page = shared.get(HOSTS + "/worths.csv", game="moonlight")
    assert page.status_code == 422


def test_the_plan_of_the_game_is_taken_unless_there_is_to_be_none(tmp_path: Path) -> None:
    visitor = Visitor(written(tmp_path / "own", OWN))
    said = words_of(visitor.get("hosts"))
    assert "Worth 3. Exact" in said
    assert "Independent: guns 4." in said
    said = words_of(visitor.get("hosts", plan="none"))
    assert "Nothing is planned yet." in said
    assert "1 x guns for 1 point" in said


def test_choosing_leads_to_the_hosts_of_its_plan_and_back(shared: Visitor) -> None:
    page = shared.get("/forces/marenz/choosing", game=GAME, plan=PLAN)
    (address,) = re.findall(r'href="([^"]*/hosts\?[^"]*)"', page.text)
    hosts = shared.get(unescape(address))
    assert "Worth 5. Exact" in words_of(hosts)
    (back,) = re.findall(r'href="([^"#]*)[^"]*">Change it on the sheet', hosts.text)
    assert "3 x machine-gun platoon" in words_of(shared.get(unescape(back)))
    page = shared.get("/forces/marenz/choosing", game=GAME, plan="light tanks=2")
    assert "/hosts?" not in page.text


def test_more_places_than_a_page_goes_through_are_refused(
    shared: Visitor, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(view, "MOST_PLACES", 59)
    page = seen(shared)
    assert page.status_code == 422
    assert "5 sections with 12 hosts are 60 places; 59 is the most on this sheet." in words_of(page)


def test_many_boxes_or_a_long_address_leave_the_sheet_and_the_command(
    shared: Visitor, monkeypatch: pytest.MonkeyPatch
) -> None:
    page = seen(shared)
    monkeypatch.setattr(place_worth, "LONGEST", 2)
    long = shared.fill(page, "hosts/worths", filled={"worth:4:12": "4.5"})
    assert long.status_code == 422
    assert "So many worths don't fit into the address of this sheet" in words_of(long)
    monkeypatch.setattr(view, "MOST_BOXES", 64)
    assert "too many places for boxes on this page" in words_of(seen(shared))


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("games: {evening: {allowance: 12, posture: attack}}\n", "Nothing that this force may"),
        ("", "This force plays no game yet"),
        ("colour: red\n", "A stop prevents the answer."),
    ],
)
def test_a_force_without_anything_to_attach_says_so(tmp_path: Path, text: str, said: str) -> None:
    head = OWN[: OWN.index("games:")]
    visitor = Visitor(written(tmp_path / "own", f"{head}{text}"))
    page = visitor.get("hosts")
    assert page.status_code == 200
    assert said in words_of(page)
    visitor.get("files")
    assert said in words_of(visitor.post("hosts/worths", {"worth:1:1": "2"}))
