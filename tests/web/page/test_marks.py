"""Marks through their page: who is who, five viewers, colours chosen, written and put back."""

from pathlib import Path

import pytest
from httpx2 import Response

from paradestate.core.certainty import Within
from paradestate.core.mark import colour_choice
from paradestate.journeys.new import new_from_example
from paradestate.text.error import EditError
from paradestate.web.marks import view
from paradestate.web.page import marks as page
from tests.web.visitor import Visitor, words_of

MARKS = "/forces/marenz/marks"
HAND = {f"hand:{name}": "yes" for name in ("sky blue", "orange", "black")}


@pytest.fixture(scope="module")
def shared(tmp_path_factory: pytest.TempPathFactory) -> Visitor:
    """Looks at one folder, which nothing here writes into."""
    place = tmp_path_factory.mktemp("marks")
    new_from_example(place / "marenz", name="marenz")
    return Visitor(place / "marenz")


@pytest.fixture
def own(tmp_path: Path) -> Visitor:
    """Looks at a folder of its own."""
    new_from_example(tmp_path / "marenz", name="marenz")
    return Visitor(tmp_path / "marenz")


def text_of(place: Path) -> str:
    """The file that says the marks."""
    return (place / "marenz" / "force.yaml").read_text(encoding="utf-8")


def pictures(seen: Response) -> int:
    return seen.text.count('class="mark-sheet"')


def test_it_opens_with_the_least_difference_and_who_is_who(shared: Visitor) -> None:
    seen = shared.get(MARKS)
    said = words_of(seen)
    assert "Least difference 34.0 : royal blue and sky blue to a blue-weak viewer." in said
    assert "royal blue and brown (0.0)" in said
    assert "3 Platoon mid yellow, three bars, cross" in said
    assert "Battalion troops own troops plain, no bars" in said
    assert pictures(seen) == 5


def test_every_pair_and_every_stand_stand_in_a_table(shared: Visitor) -> None:
    said = words_of(shared.get(MARKS))
    assert "royal blue and brown 39.1 41.7 44.5 46.1 0.0 too alike" in said
    assert "No 2 Company, 3 Platoon, 2 Section mid yellow, three bars, cross" in said
    assert "royal blue, no bars, cross underside alone" in said


def test_yellow_with_three_bars_is_answered_large(shared: Visitor) -> None:
    """Story of the design: who is who."""
    seen = shared.get(MARKS, read="yellow, three bars")
    assert '<p class="said sure">No 2 Company, 3 Platoon</p>' in seen.text


def test_a_misread_mark_shows_those_that_it_may_be(shared: Visitor) -> None:
    seen = shared.get(MARKS, read="yellow, three bars, ring")
    assert '<p class="said">Nobody bears' in seen.text
    assert "one of these 3" in words_of(seen)


def test_a_proposal_is_shown_and_not_written(shared: Visitor) -> None:
    seen = shared.get(MARKS, choose="3", **HAND)
    said = words_of(seen)
    assert "Proposed, not written yet." in said
    assert "Exact: no other choice from these is further apart." in said
    assert "Company: orange, black, sky blue." in said
    assert "colours-alike" not in said
    assert seen.status_code == 200
    assert "1 Platoon royal blue, one bar, ring" in words_of(shared.get(MARKS))


def test_colours_that_are_alike_all_the_same_are_told_to_be(shared: Visitor) -> None:
    hand = {f"hand:{name}": "yes" for name in ("brick red", "leaf green", "orange", "brown")}
    said = words_of(shared.get(MARKS, choose="4", **hand))
    assert "less than 20.0 apart all the same: go by sign and bars, or add paints." in said
    assert "Company 1 (brick red) and 2 (leaf green)" in said


def test_a_proposal_is_written_down_and_put_back(own: Visitor, tmp_path: Path) -> None:
    before = text_of(tmp_path)
    seen = own.get(MARKS, choose="3", **HAND)
    done = own.fill(seen, "write")
    assert "The colours are written into force.yaml" in words_of(done)
    assert "company: {colours: [orange, black, sky blue]}" in text_of(tmp_path)
    undone = own.fill(done, "put-back")
    assert "The colours of before stand again in force.yaml." in words_of(undone)
    assert text_of(tmp_path) == before


def test_what_is_there_already_is_not_written_again(own: Visitor) -> None:
    done = own.fill(own.get(MARKS, choose="4"), "write")
    assert done.status_code == 200
    assert "written" not in done.url.query.decode()


def test_a_version_that_isnt_the_last_any_more_is_not_put_back(own: Visitor) -> None:
    own.get(MARKS, choose="3")
    answer = own.post("marks/put-back", {"former": "force.yaml.old"})
    assert answer.status_code == 409
    assert "nothing was put back" in words_of(answer)


def test_a_comment_that_goes_is_told(own: Visitor, tmp_path: Path) -> None:
    file = tmp_path / "marenz" / "force.yaml"
    text = file.read_text(encoding="utf-8").replace("[royal blue,", "[royal blue,  # varnish\n   ")
    file.write_text(text, encoding="utf-8")
    done = own.fill(own.get(MARKS, choose="3", **HAND), "write")
    assert "A comment that stood within what was replaced went with it" in words_of(done)


def test_nothing_is_written_where_nothing_can_be_chosen(own: Visitor) -> None:
    own.get(MARKS, choose="3")
    answer = own.post("marks/write", {"choose": "3", "more": "puce"})
    assert answer.status_code == 422
    assert "Nothing says how 'puce' looks." in words_of(answer)
    assert own.post("marks/write", {"choose": "x"}).status_code == 422


def test_a_file_that_cant_be_changed_is_told(own: Visitor, monkeypatch: pytest.MonkeyPatch) -> None:
    def refused(*_: object, **__: object) -> None:
        raise EditError("force.yaml: not by a program.")

    seen = own.get(MARKS, choose="3")
    monkeypatch.setattr(page, "colour_anew", refused)
    answer = own.fill(seen, "write")
    assert (answer.status_code, "not by a program" in words_of(answer)) == (409, True)


def test_a_number_that_isnt_one_is_told_at_its_field(shared: Visitor) -> None:
    answer = shared.get(MARKS, choose="some")
    assert answer.status_code == 422
    assert "A whole number from 1 to 60, please." in words_of(answer)
    assert 'aria-invalid="true"' in answer.text


def test_a_force_without_colours_is_shown_what_it_could_have(tmp_path: Path) -> None:
    new_from_example(tmp_path / "sillen", name="sillen")
    visitor = Visitor(tmp_path / "sillen")
    bare = visitor.get("marks")
    assert "No colours are given" in words_of(bare)
    assert "own troops no mark" in words_of(bare)
    assert pictures(bare) == 0
    proposed = visitor.get("marks", choose="3")
    assert "own troops sky blue, no bars, cross" in words_of(proposed)
    assert pictures(proposed) == 5


def test_a_force_of_one_body_has_nothing_to_tell_apart(tmp_path: Path) -> None:
    new_from_example(tmp_path / "kelmar", name="kelmar")
    visitor = Visitor(tmp_path / "kelmar")
    assert pictures(visitor.get("marks")) == 0
    said = words_of(visitor.get("marks", choose="2"))
    assert "Exact: no other choice" in said
    assert "There is nothing to tell apart." in words_of(visitor.get("marks", choose="1"))


def test_a_bound_is_said_where_it_is_not_proved(
    shared: Visitor, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(colour_choice, "Exact", lambda: Within(bound=4_100))
    said = words_of(shared.get(MARKS, choose="4"))
    assert "Within: no other choice from these is further apart than 41.0." in said


def test_of_very_many_stands_not_all_are_listed(
    shared: Visitor, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(view, "MOST_STANDS", 40)
    assert "5 more stands: the command lists them all." in words_of(shared.get(MARKS))


def test_a_folder_with_a_stop_says_so(own: Visitor, tmp_path: Path) -> None:
    (tmp_path / "marenz" / "more.yaml").write_text("nonsense: {}\n", encoding="utf-8")
    assert "nonsense" in words_of(own.get(MARKS))


def test_a_stop_that_comes_before_the_version_of_before_is_shown(
    own: Visitor, tmp_path: Path
) -> None:
    done = own.fill(own.get(MARKS, choose="3", **HAND), "write")
    former = own.hidden("former")
    kept = tmp_path / "marenz" / ".former" / former
    kept.write_text("nonsense: {}\n", encoding="utf-8")
    answer = own.fill(done, "put-back")
    assert (answer.status_code, "nonsense" in words_of(answer)) == (422, True)
