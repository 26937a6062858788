"""Start: at most six questions or an example, and then the parade fills."""

import re
from pathlib import Path

import pytest

from paradestate.journeys.collection import JOURNAL
from tests.journeys.conftest import FERRY_GUARD, written
from tests.web.visitor import Visitor, words_of

NEWCOMERS_WORDS = (
    "section",
    "stand",
    "platoon",
    "company",
    "allowance",
    "supporting troops",
    "observer",
    "marker",
)


@pytest.fixture
def newcomer(tmp_path: Path) -> Visitor:
    """Somebody who has the six questions before them, in a folder that isn't there yet."""
    shown = Visitor(tmp_path / "forces")
    assert shown.get("/start").status_code == 200
    return shown


def test_six_questions_are_asked_and_no_more(newcomer: Visitor) -> None:
    form = newcomer.get("/start").text.split('action="/start/make"', 1)[1].split("</form>", 1)[0]
    assert form.count("<li>") == 6


def test_the_eight_words_are_explained_where_they_first_appear(newcomer: Visitor) -> None:
    page = newcomer.get("/start").text
    assert re.findall("<dfn>(.*?)</dfn>", page) == [
        "stand",
        "section",
        "platoon",
        "company",
        "allowance",
        "supporting troops",
        "observer",
        "marker",
    ]
    assert set(NEWCOMERS_WORDS) == set(re.findall("<dfn>(.*?)</dfn>", page))
    assert "title=" not in page.split("<main", 1)[1]


def test_in_an_empty_folder_the_first_page_asks_them(tmp_path: Path) -> None:
    assert "Six questions" in words_of(Visitor(tmp_path).get("/"))


def test_who_answers_nothing_gets_a_force_and_sees_it(newcomer: Visitor, tmp_path: Path) -> None:
    page = newcomer.post("/start/make", {})
    assert (tmp_path / "forces" / "my-first-force" / "force.yaml").is_file()
    assert (tmp_path / "forces" / JOURNAL).is_file()
    assert "Nothing is owned yet: 10 stands are wanted." in words_of(page)
    assert "No prices are written down yet" in words_of(page)


def test_from_one_box_it_says_what_that_makes_and_the_one_next_pack(newcomer: Visitor) -> None:
    page = words_of(
        newcomer.post("/start/make", {"box": "one box: 32 riflemen, 4 officers", "price": "18"})
    )
    assert "What you have makes 8 of 10 stands" in page
    assert "Still wanted: 5 riflemen" in page
    assert "rifle section 7 9" in page
    assert "company command 1 1" in page
    assert "The one next pack box from My shop, £18.00" in page
    assert "With it all 10 stands can be made" in page
    assert "hour" not in page


def test_building_is_mentioned_with_its_cautions(newcomer: Visitor) -> None:
    page = words_of(newcomer.post("/start/make", {}))
    for caution in ("Cut away", "Spray", "dust", "magnets", "maker's sheet"):
        assert caution in page


def test_an_answer_that_is_not_understood_is_said_beside_it_and_kept(
    newcomer: Visitor, tmp_path: Path
) -> None:
    answer = newcomer.post("/start/make", {"title": "Watch", "box": "32 gunners", "height": "x"})
    assert answer.status_code == 422
    assert "2 answers aren't understood; nothing was made yet." in words_of(answer)
    assert "'gunners' isn't a kind of figure here yet" in words_of(answer)
    assert 'value="Watch"' in answer.text
    assert 'value="32 gunners"' in answer.text
    assert not (tmp_path / "forces").exists()


def test_a_hostile_title_stays_text_and_makes_no_path(newcomer: Visitor, tmp_path: Path) -> None:
    title = '../../<script>alert("1")</script>: \\ # {a'
    page = newcomer.post("/start/make", {"title": title})
    assert "<script>alert" not in page.text
    (folder,) = (path for path in (tmp_path / "forces").iterdir() if path.is_dir())
    assert folder.name == "script-alert-1-script-a"
    assert title in words_of(page)


def test_an_example_is_copied(newcomer: Visitor, tmp_path: Path) -> None:
    page = words_of(newcomer.post("/start/example", {"example": "marenz"}))
    assert "Republic of Marenz" in page
    assert (tmp_path / "forces" / "marenz" / "force.yaml").is_file()
    newcomer.get("/start")
    refused = newcomer.post("/start/example", {"example": "../marenz"})
    assert refused.status_code == 503


def test_forces_share_what_is_owned(newcomer: Visitor) -> None:
    newcomer.post("/start/make", {"title": "First", "box": "40 riflemen, 4 officers"})
    newcomer.get("/start")
    page = words_of(newcomer.post("/start/make", {"title": "Second"}))
    assert "What you have makes all 10 stands" in page


def test_where_nobody_sells_what_is_lacking_that_is_said(newcomer: Visitor) -> None:
    page = words_of(newcomer.post("/start/make", {"box": "4 officers", "price": "5"}))
    assert "no pack on the list" in page or "nobody" in page.lower()


def test_a_lone_force_is_told_what_to_do_for_more(tmp_path: Path) -> None:
    guard = written(tmp_path / "guard", FERRY_GUARD)
    shown = Visitor(guard)
    page = shown.get("/start")
    assert "a collection of one" in words_of(page)
    assert "/start/make" not in page.text
    shown.get("/forces/guard/files")
    for action in ("make", "example"):
        answer = shown.post(f"/start/{action}", {"example": "marenz"})
        assert answer.status_code == 422
    assert sorted(path.name for path in guard.iterdir()) == ["force.yaml"]


def test_a_force_that_is_not_there_is_not_found(newcomer: Visitor) -> None:
    assert newcomer.get("/start/made?force=../x").status_code == 404


def test_a_force_that_cannot_be_counted_says_why(tmp_path: Path) -> None:
    written(tmp_path / "forces" / "guard", FERRY_GUARD.replace("format: 1\n", ""))
    page = Visitor(tmp_path / "forces").get("/start/made?force=guard")
    assert "'format' is missing" in words_of(page)
