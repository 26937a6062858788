"""Papers through their page: shown as they print, taken away, corrected, handed over."""

import io
import re
from dataclasses import replace
from pathlib import Path
from zipfile import ZipFile

import pytest
from httpx2 import Response

from paradestate.core.play.event import Subject
from paradestate.journeys.game.play import end, mark, take
from paradestate.journeys.new import new_from_example
from paradestate.journeys.paper.every_paper import EVERY_PAPER
from paradestate.journeys.paper.paper_kind import PaperKind
from paradestate.journeys.paper.paper_use import Eyes
from paradestate.web.page import papers as page
from paradestate.web.papers import question
from paradestate.web.papers.press import Setting
from paradestate.web.papers.printer import COOKIE
from paradestate.web.search import Searches, TooManySearchesError
from tests.journeys.evenings import begun, pen
from tests.web.visitor import Visitor, words_of

NOTHING_SECRET = ("marenz", "Marenz", "evening", "/forces")
"""Names of the force, its folder and its game."""


FEW = tuple(
    kind for kind in EVERY_PAPER if kind.name in {"labels", "rear marks", "templates", "markers"}
)


@pytest.fixture(autouse=True)
def few(monkeypatch: pytest.MonkeyPatch) -> None:
    """These alone are set; the list has the others too, as papers that wait for their turn."""
    monkeypatch.setattr("paradestate.web.page.papers.EVERY_PAPER", FEW)


@pytest.fixture(scope="module")
def shared(tmp_path_factory: pytest.TempPathFactory) -> Visitor:
    """Looks at one folder, which nothing here writes into."""
    place = tmp_path_factory.mktemp("papers")
    new_from_example(place / "marenz", name="marenz")
    return Visitor(place / "marenz")


@pytest.fixture
def visitor(shared: Visitor) -> Visitor:
    """The same, with nothing remembered of a printer."""
    shared.client.cookies.delete(COOKIE)
    return shared


def with_open_marks(kinds: tuple[PaperKind, ...]) -> tuple[PaperKind, ...]:
    return tuple(
        replace(kind, eyes=Eyes.ANYBODY) if kind.name == "rear marks" else kind for kind in kinds
    )


@pytest.fixture
def handed(visitor: Visitor, monkeypatch: pytest.MonkeyPatch) -> Visitor:
    """The same, where rear marks may be handed over."""
    monkeypatch.setattr("paradestate.web.page.papers.EVERY_PAPER", with_open_marks(FEW))
    monkeypatch.setattr("paradestate.web.papers.view.EVERY_PAPER", with_open_marks(EVERY_PAPER))
    visitor.get("papers", dummies="1")  # asked anew, so that they are laid on the shelf
    return visitor


def whole(visitor: Visitor, **query: str) -> Response:
    """The list once every paper is set."""
    for _ in range(60):
        seen = visitor.get("papers", **query)
        if "data-setting" not in seen.text:
            return seen
    raise AssertionError("the papers are never set")


def test_every_paper_stands_below_what_it_is_for(visitor: Visitor) -> None:
    said = words_of(whole(visitor))
    assert said.index("At the bench") < said.index("Stand templates")
    assert said.index("On the stands") < said.index("A label for the underside")
    assert all(kind.title in said for kind in EVERY_PAPER)
    assert "37 labels for 37 stands to label: as it should be" in said
    assert "No line on a screen can be trusted" in said


def test_private_papers_say_so(visitor: Visitor) -> None:
    seen = whole(visitor)
    marker = seen.text[seen.text.index('id="markers"') :]
    assert '<p class="eyes secret">private</p>' in marker[:1500]


def test_one_paper_is_shown_page_by_page_at_full_size(visitor: Visitor) -> None:
    seen = visitor.get("papers/paper", name="markers")
    pictures = re.findall(r'<img src="([^"]+)" width="794" height="1123"', seen.text)
    assert len(pictures) == 2
    drawn = visitor.get(pictures[1].replace("&amp;", "&"))
    assert drawn.headers["content-type"] == "image/svg+xml"
    assert drawn.content.startswith(b"<svg ")
    assert "Measure the lines of 100 mm on paper." in words_of(seen)


def test_a_paper_is_taken_as_pdf_and_not_sent_twice(visitor: Visitor) -> None:
    first = visitor.get("papers/pdf", name="labels")
    assert first.content.startswith(b"%PDF-")
    assert first.headers["content-type"] == "application/pdf"
    assert first.headers["content-disposition"] == "inline; filename*=UTF-8''labels.pdf"
    tag = first.headers["etag"]
    again = visitor.client.get(first.url, headers={"if-none-match": f'"x", {tag}'})
    assert (again.status_code, again.content) == (304, b"")
    other = visitor.client.get(first.url, headers={"if-none-match": '"x"'})
    assert other.content == first.content


def test_all_are_taken_in_one_file_the_private_ones_apart(handed: Visitor) -> None:
    whole(handed, dummies="1")
    taken = handed.get("papers/all", dummies="1")
    disposition = taken.headers["content-disposition"]
    assert disposition == "attachment; filename*=UTF-8''marenz-papers.zip"
    names = ZipFile(io.BytesIO(taken.content)).namelist()
    assert "private/labels.pdf" in names
    assert "may be handed over/rear-marks.pdf" in names
    assert handed.get("papers/all", dummies="1").content == taken.content


def test_what_may_be_handed_over_is_taken_alone(handed: Visitor) -> None:
    whole(handed, dummies="1")
    taken = handed.get("papers/all", dummies="1", eyes="anybody")
    assert taken.headers["content-disposition"].endswith("''papers-to-hand-over.zip")
    names = ZipFile(io.BytesIO(taken.content)).namelist()
    assert all(name.startswith("may be handed over/") for name in names)


def test_a_paper_is_handed_over_on_a_page_that_names_nothing_else(handed: Visitor) -> None:
    seen = whole(handed, dummies="1")
    (address, *_) = re.findall(r'href="(/handed-over/[0-9a-f]{64})"', seen.text)
    shown = handed.get(address)
    assert "<h1>Rear marks</h1>" in shown.text
    assert not [word for word in NOTHING_SECRET if word in shown.text + address]
    links = re.findall(r'(?:href|src)="([^"]+)"', shown.text)
    assert all(link.startswith(("/static/", address)) for link in links)
    assert handed.get(f"{address}/pdf").content.startswith(b"%PDF-")
    assert handed.get(f"{address}/pages/1").content.startswith(b"<svg ")
    assert "marenz" not in str(handed.get(f"{address}/pdf").headers)
    assert handed.get(f"{address}/pages/2").status_code == 404


def test_no_private_paper_lies_on_the_shelf(visitor: Visitor) -> None:
    whole(visitor)
    for name in ("labels", "markers"):
        etag = visitor.get("papers/pdf", name=name).headers["etag"]
        digest = etag.removeprefix('W/"').removesuffix('"')
        for below in ("", "/pdf", "/pages/1"):
            assert visitor.get(f"/handed-over/{digest}{below}").status_code == 404


def test_the_printer_is_remembered_and_its_cure_said(visitor: Visitor) -> None:
    measured = {"across": "96.8", "down": "97.2"}
    visitor.post("papers/printer", measured, seen=visitor.get("papers"))
    said = words_of(whole(visitor))
    assert "Print at 103.3% across and 102.9% down or turn off fitting" in said
    assert "tick “draw the sheets so that they come out right”" in said
    assert "--correct" not in said
    assert said.count("the one down 97.2.") == 1


def test_sheets_are_drawn_so_that_they_come_out_right(visitor: Visitor) -> None:
    before = visitor.get("papers/pdf", name="rear marks").content
    visitor.post("papers/printer", {"across": "96.8", "correct": "yes"}, seen=visitor.get("papers"))
    assert "drawn larger or smaller to make that good" in words_of(whole(visitor))
    assert visitor.get("papers/pdf", name="rear marks").content != before


def test_papers_are_laid_out_for_letter(visitor: Visitor) -> None:
    visitor.post("papers/printer", {"paper": "letter"}, seen=visitor.get("papers"))
    assert 'width="816" height="1056"' in visitor.get("papers/paper", name="rear marks").text


@pytest.mark.parametrize("across", ["9", "96,8", "long"])
def test_a_measure_that_cannot_be_is_refused_and_not_remembered(
    visitor: Visitor, across: str
) -> None:
    told = visitor.post("papers/printer", {"across": across}, seen=visitor.get("papers"))
    assert told.status_code == 422
    assert f'value="{across}"' in told.text
    assert COOKIE not in visitor.client.cookies


@pytest.mark.parametrize(
    ("query", "message"),
    [
        ({"game": "nix"}, "No game is called 'nix'."),
        ({"plan": "dragons=3"}, "No entry is called 'dragons'."),
        ({"dummies": "many"}, "'many'"),
    ],
)
def test_a_question_that_cannot_be_answered_is_a_stop(
    visitor: Visitor, query: dict[str, str], message: str
) -> None:
    seen = whole(visitor, **query)
    assert seen.status_code == 422
    assert words_of(seen).count(message) == 1
    assert "<article" not in seen.text
    assert visitor.get("papers/all", **query).status_code in {200, 404, 422}


@pytest.mark.parametrize("name", ["", "nix", "../labels", "Labels"])
@pytest.mark.parametrize("below", ["paper", "pdf", "picture"])
def test_a_paper_that_is_none_is_not_there(visitor: Visitor, below: str, name: str) -> None:
    assert visitor.get(f"papers/{below}", name=name).status_code == 404


@pytest.mark.parametrize("number", ["", "0", "2", "-1", "1e3", "٣", "9" * 5_000])
def test_a_page_that_is_none_is_not_there(visitor: Visitor, number: str) -> None:
    assert visitor.get("papers/picture", name="labels", number=number).status_code == 404


def test_a_paper_with_nothing_on_it_is_said_to_be_empty(visitor: Visitor) -> None:
    """A plan that can't be read leaves nothing on any of them."""
    query = {"name": "labels", "plan": "dragons=3"}
    assert visitor.get("papers/pdf", **query).status_code == 404
    assert "There is nothing to print on it." in words_of(visitor.get("papers/paper", **query))
    assert visitor.get("papers/all", plan="dragons=3").status_code == 404


def test_too_long_a_paper_is_left_to_the_command(
    visitor: Visitor, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(question, "MOST_LETTERS", 10)
    said = words_of(whole(visitor, dummies="3"))
    assert "'Labels' is too long to be set while a page is waited for." in said


def test_while_papers_are_set_the_page_says_how_far_it_is(
    visitor: Visitor, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(page, "AT_ONCE", 0.0)
    monkeypatch.setattr(page, "FOR_ONE", 0.0)
    monkeypatch.setattr(Setting, "run", lambda *_setting, **_asked: False)
    seen = visitor.get("papers", dummies="5")
    assert f"0 of {len(FEW)} by now; “{FEW[0].title}” comes next" in words_of(seen)
    assert 'http-equiv="refresh" content="2;url=/forces/marenz/papers?dummies=5"' in seen.text
    assert "Waits for its turn." in words_of(seen)
    busy = visitor.get("papers/picture", name="labels", number="1", dummies="5")
    assert (busy.status_code, busy.headers["retry-after"]) == (503, "2")
    for below in ("paper", "pdf", "all"):
        told = visitor.get(f"papers/{below}", name="labels", dummies="5")
        assert "The papers are being set" in words_of(told)


def test_as_many_searches_as_may_run_keep_the_press_waiting(
    visitor: Visitor, monkeypatch: pytest.MonkeyPatch
) -> None:
    def refused(*_searches: object, **_asked: object) -> None:
        raise TooManySearchesError(4)

    monkeypatch.setattr(page, "AT_ONCE", 0.0)
    monkeypatch.setattr(Searches, "begun", refused)
    said = words_of(visitor.get("papers", dummies="6"))
    assert "4 searches run already, and no more at once. They begin when" in said


def test_a_force_that_cannot_be_counted_has_no_papers(tmp_path: Path) -> None:
    folder = tmp_path / "marenz"
    new_from_example(folder, name="marenz")
    text = (folder / "force.yaml").read_text(encoding="utf-8")
    (folder / "force.yaml").write_text(text + "\nunheard of: 3\n", encoding="utf-8")
    visitor = Visitor(folder)
    seen = visitor.get("papers")
    assert "unheard of" in words_of(seen)
    assert "unheard of" in words_of(visitor.get("papers/paper", name="labels"))


def ticked(text: str, field: str) -> bool:
    return re.search(rf'name="{field}" value="yes" checked', text) is not None


def test_what_is_found_out_and_kept_back_can_be_ticked(visitor: Visitor) -> None:
    seen = visitor.get("papers")
    assert 'name="revealed:medium mortars" value="yes">' in seen.text
    assert "Platoons, of 4" in words_of(seen)
    query = {"revealed:medium mortars": "yes", "reserve:platoon": "2", "dummies": "7"}
    again = visitor.get("papers", plan="machine-gun platoon=2", **query)
    assert again.status_code == 200
    assert ticked(again.text, "revealed:medium mortars")
    assert "Machine-gun platoon, of 2" in words_of(again)
    assert "<details open>" in again.text


def test_more_kept_back_than_may_be_is_a_stop(visitor: Visitor) -> None:
    seen = whole(visitor, **{"reserve:platoon": "5"})
    assert seen.status_code == 422
    assert "5 platoons named as reserve" in words_of(seen)
    assert 'name="reserve:platoon" inputmode="numeric" value="5"' in seen.text


def test_papers_of_the_game_that_goes_on_are_set_anew_when_more_is_told(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    tear_offs = tuple(kind for kind in EVERY_PAPER if kind.name == "fire missions")
    monkeypatch.setattr("paradestate.web.page.papers.EVERY_PAPER", tear_offs)
    folder = tmp_path / "marenz"
    new_from_example(folder, name="marenz")
    assert "played now" not in Visitor(folder).get("papers").text
    begun(folder)
    take(pen(folder), "field battery=3")
    visitor = Visitor(folder)
    (of,) = re.findall(
        r'<option value="(of:[^"]+)">played now: whole-day attack<', visitor.get("papers").text
    )
    query = {"game": of, "plan": "light tanks=2"}
    seen = whole(visitor, **query)
    assert "Taken: 3 x field battery." in words_of(seen)
    assert "is left out: the game says it." in words_of(seen)
    assert 'name="plan"' not in seen.text
    before = visitor.get("papers/pdf", name="fire missions", **query).content
    assert before.startswith(b"%PDF-")
    take(pen(folder), "medium mortars=2")
    mark(pen(folder), Subject("missions taken", "field battery"), value="2")
    assert "Taken: 2 x field battery" in words_of(whole(visitor, **query))
    assert visitor.get("papers/pdf", name="fire missions", **query).content != before
    end(pen(folder))
    assert f'<option value="{of}" selected>was played:' in visitor.get("papers", game=of).text


def test_a_game_that_was_never_written_down_is_a_stop(visitor: Visitor) -> None:
    seen = whole(visitor, game="of:nix")
    assert seen.status_code == 422
    assert "No game has an id that begins with 'nix'." in words_of(seen)


def test_the_other_side_is_another_force_of_the_same_page(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    umpires = tuple(kind for kind in EVERY_PAPER if kind.name == "umpires sheet")
    monkeypatch.setattr("paradestate.web.page.papers.EVERY_PAPER", umpires)
    for name in ("marenz", "kelmar"):
        new_from_example(tmp_path / name, name=name)
    visitor = Visitor(tmp_path, force="marenz")
    assert "<option>kelmar</option>" in visitor.get("papers").text
    alone = visitor.get("papers/pdf", name="umpires sheet").content
    both = visitor.get("papers/pdf", name="umpires sheet", side="kelmar").content
    assert both[:5] == b"%PDF-"
    assert both != alone
