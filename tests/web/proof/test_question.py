"""The fields of the sheet of the list, read and written."""

from urllib.parse import parse_qsl

from paradestate.core.support.amendment import LimitAmendment, PriceAmendment
from paradestate.core.support.offer import Offer
from paradestate.web.proof.question import question

GUN = Offer(name="gun", cost={1: 3, 2: 5})
FULL = {
    "game": "evening",
    "points": "12",
    "grade:training": "recruits",
    "set": "company=3",
    "date": "1943",
    "entry": "gun",
    "price:1": "4",
    "worth:2": "",
    "most": "any",
    "beside": "gun-new",
}


def fields(query: str) -> dict[str, str]:
    return dict(parse_qsl(query.removeprefix("?"), strict_parsing=True))


def test_an_address_asks_what_it_says() -> None:
    asked = question(FULL)
    assert (asked.choice.game, asked.choice.numbers) == ("evening", {"company": 3})
    assert (asked.points, asked.grades) == (12, {"training": "recruits"})
    assert (asked.entry, asked.beside) == ("gun", "gun-new")
    assert asked.findings == ()
    assert asked.amendments(GUN) == (
        (PriceAmendment(entry="gun", number=1, points=4), LimitAmendment(entry="gun", most=None)),
        (),
    )


def test_the_same_question_is_written_as_it_was_read() -> None:
    assert fields(question(FULL).query()) == {key: value for key, value in FULL.items() if value}


def test_another_entry_is_asked_about_as_it_is() -> None:
    assert fields(question(FULL).about("horse")) == {
        key: value for key, value in FULL.items() if key not in {"price:1", "worth:2", "most"}
    } | {"entry": "horse"}
    assert question({}).query() == ""


def test_the_terms_are_what_goes_with_every_form() -> None:
    assert dict(question(FULL).terms) == {
        key: FULL[key] for key in ("game", "points", "grade:training", "set", "date")
    }


def test_words_that_aren_t_of_this_page_and_odd_numbers_are_left_out() -> None:
    asked = question(
        {"stand": "x", "price:": "3", "price:x": "3", "worth:²": "1", "price:1234567": "1"}
    )
    assert asked.typed == {}


def test_what_can_t_be_read_is_a_stop() -> None:
    assert [each.code for each in question({"points": "many"}).findings] == ["not-a-number"]
    assert [each.code for each in question({"set": "x"}).findings] == ["not-names-and-numbers"]


def test_more_points_than_a_page_can_wait_for_are_a_stop() -> None:
    assert question({"points": "1000"}).findings == ()
    (stop,) = question({"points": "1001"}).findings
    assert stop.code == "points-too-many-here"
    assert "paradestate proof --points 1001" in stop.hint
