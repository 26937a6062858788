"""Holdings on the page: looked at, written down, counted, received, and taken back."""

import shutil
from pathlib import Path

import pytest

from paradestate.core.journal_entry import EntryKind
from paradestate.journeys.holdings import holdings
from paradestate.web.log_form import field
from tests.forces import EXAMPLES
from tests.journeys.logging_to import TODAY, logged
from tests.web.visitor import Visitor, forms_of, words_of

SECTION = "No 1 Company / 1 Platoon / 1 Section"


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    return Path(shutil.copytree(EXAMPLES / "marenz", tmp_path / "marenz"))


@pytest.fixture
def visitor(folder: Path) -> Visitor:
    return Visitor(folder)


def held(folder: Path) -> dict[str, dict[str, int]]:
    known = holdings(folder, today=TODAY)
    assert known.state is not None
    return {kind: dict(stages) for kind, stages in known.state.held.figures.items()}


class TestLookedAt:
    def test_a_force_that_owns_nothing_says_so(self, visitor: Visitor) -> None:
        seen = visitor.get("holdings")
        assert seen.status_code == 200
        assert "Nothing is held yet." in words_of(seen)

    def test_numbers_are_told_in_a_sentence_a_picture_and_a_table(
        self, visitor: Visitor, folder: Path
    ) -> None:
        logged(folder, EntryKind.RECEIVED, figures={"rifleman": 12, "officer": 10})
        logged(folder, EntryKind.MOVED, figures={"rifleman": 4}, to_stage="assembled")
        logged(folder, EntryKind.LENT, figures={"rifleman": 2}, from_stage="assembled")
        seen = visitor.get("holdings")
        words = words_of(seen)
        assert "20 figures held: 20 serve. Standing in: 3 officers as riflemen." in words
        assert "10 used = 7 as officer + 3 as rifleman" in words
        assert "8 in packet + 2 assembled" in words
        assert "4 company x 3 platoon x 2" in words
        assert 'aria-label="rifleman: 2 assembled, 8 in packet, 2 lent.' in seen.text

    def test_finished_stands_and_promises_are_listed(self, visitor: Visitor, folder: Path) -> None:
        logged(folder, EntryKind.RECEIVED, figures={"rifleman": 4}, to_stage="painted")
        logged(folder, EntryKind.MOVED, stand=SECTION, from_stage="painted", to_stage="based")
        logged(folder, EntryKind.PROMISED, figures={"rifleman": 3}, on=TODAY)
        words = words_of(visitor.get("holdings"))
        assert "4 held = 1 rifle section x 4" in words
        assert "rifle section 1 based" in words
        assert "5 March 2026: 3 riflemen" in words

    def test_kinds_of_another_force_of_the_collection_are_listed_as_serving_nothing(
        self, club: Path
    ) -> None:
        logged(club, EntryKind.RECEIVED, figures={"boat": 2})
        words = words_of(Visitor(club, force="watch").get("holdings"))
        assert "boat 2 0 0 0 0 0 2 0 2 0 0" in words

    def test_what_can_not_be_counted_is_a_page_that_says_why(
        self, visitor: Visitor, folder: Path
    ) -> None:
        (folder / "force.yaml").write_text("figures: {", encoding="utf-8")
        for page in ("holdings", "holdings/log?kind=moved", "holdings/stock-take"):
            seen = visitor.get(page)
            assert seen.status_code == 200
            assert "Nothing can be counted until this is put right." in words_of(seen)


class TestWrittenDown:
    def test_what_happened_is_chosen_first(self, visitor: Visitor) -> None:
        words = words_of(visitor.get("holdings/log"))
        for kind in ("moved", "session", "counted", "lent", "returned", "lost", "sold", "noted"):
            assert kind in words

    def test_a_form_asks_only_for_what_its_kind_calls_for(
        self, visitor: Visitor, folder: Path
    ) -> None:
        assert "Nothing is lent." in words_of(visitor.get("holdings/log?kind=returned"))
        assert "Nothing is held that could be moved." in words_of(
            visitor.get("holdings/log?kind=moved")
        )
        logged(folder, EntryKind.RECEIVED, figures={"officer": 2})
        form = next(
            each
            for each in forms_of(visitor.get("holdings/log?kind=lost"))
            if each.action.endswith("holdings/log")
        )
        assert set(form.fields) == {
            *("token", "entry", "kind", "from", "on", field("figures", "officer")),
            *("stand", "note"),
        }

    def test_an_entry_is_written_shown_and_taken_back(self, visitor: Visitor, folder: Path) -> None:
        seen = visitor.get("holdings/log?kind=received")
        number = {field("figures", "rifleman"): "12", "note": "from a friend"}
        after = visitor.fill(seen, "holdings/log", filled=number)
        assert "received 12 riflemen in packet: from a friend, 5 March 2026." in words_of(after)
        assert held(folder) == {"rifleman": {"in packet": 12}}
        back = visitor.fill(after, "journal/strike-out")
        assert back.url.path.endswith("/holdings")
        assert held(folder) == {}

    def test_a_form_sent_twice_writes_once(self, visitor: Visitor, folder: Path) -> None:
        seen = visitor.get("holdings/log?kind=received")
        for _ in range(2):
            visitor.fill(seen, "holdings/log", filled={field("figures", "rifleman"): "12"})
        assert held(folder) == {"rifleman": {"in packet": 12}}

    def test_the_same_form_with_another_number_is_refused_and_both_are_shown(
        self, visitor: Visitor, folder: Path
    ) -> None:
        seen = visitor.get("holdings/log?kind=received")
        visitor.fill(seen, "holdings/log", filled={field("figures", "rifleman"): "12"})
        after = visitor.fill(seen, "holdings/log", filled={field("figures", "rifleman"): "13"})
        assert after.status_code == 422
        words = words_of(after)
        assert "says 'received 12 riflemen in packet, 5 March 2026'" in words
        assert "what is sent says 'received 13 riflemen, 5 March 2026'" in words
        assert held(folder) == {"rifleman": {"in packet": 12}}

    def test_a_session_brings_figures_on_and_counts_its_minutes(
        self, visitor: Visitor, folder: Path
    ) -> None:
        logged(folder, EntryKind.RECEIVED, figures={"rifleman": 12})
        seen = visitor.get("holdings/log?kind=session")
        said = {field("figures", "rifleman"): "6", "to": "assembled", "minutes": "90"}
        after = visitor.fill(seen, "holdings/log", filled=said)
        assert "session of 90 minutes, 6 riflemen from in packet to assembled" in words_of(after)
        assert held(folder) == {"rifleman": {"in packet": 6, "assembled": 6}}

    def test_a_named_stand_is_brought_on(self, visitor: Visitor, folder: Path) -> None:
        logged(folder, EntryKind.RECEIVED, figures={"rifleman": 4}, to_stage="painted")
        seen = visitor.get("holdings/log?kind=moved")
        visitor.fill(seen, "holdings/log", filled={"stand": SECTION, "to": "based"})
        assert "1 rifle section" in words_of(visitor.get("holdings"))

    def test_a_count_of_none_is_a_count(self, visitor: Visitor, folder: Path) -> None:
        logged(folder, EntryKind.RECEIVED, figures={"rifleman": 4})
        seen = visitor.get("holdings/log?kind=counted")
        visitor.fill(seen, "holdings/log", filled={field("figures", "rifleman"): "0"})
        assert held(folder) == {}

    def test_what_is_doubtful_is_told_and_written(self, visitor: Visitor, folder: Path) -> None:
        logged(folder, EntryKind.RECEIVED, figures={"rifleman": 4}, to_stage="painted")
        seen = visitor.get("holdings/log?kind=moved")
        said = {field("figures", "rifleman"): "4", "from": "painted", "to": "assembled"}
        after = visitor.fill(seen, "holdings/log", filled=said)
        assert after.status_code == 200
        assert "moves from painted" not in words_of(after)
        assert "4 riflemen move from painted back to assembled." in words_of(after)
        assert held(folder) == {"rifleman": {"assembled": 4}}

    @pytest.mark.parametrize(
        ("number", "words"),
        [
            ("-1", "rifleman: -1 isn't a whole number from 0 up."),
            ("2.5", "rifleman: 2.5 isn't a whole number from 0 up."),
            ("six", "rifleman: 'six' isn't a whole number."),
            ("9" * 30, "has 30 digits in a row; at most 15 are read."),
            ("5000000000", "greatest number read"),
        ],
    )
    def test_a_bad_number_is_named_and_what_was_typed_stays(
        self, *, visitor: Visitor, folder: Path, number: str, words: str
    ) -> None:
        seen = visitor.get("holdings/log?kind=received")
        said = {field("figures", "rifleman"): number, "note": "kept here"}
        after = visitor.fill(seen, "holdings/log", filled=said)
        assert after.status_code == 422
        assert words in words_of(after)
        form = next(each for each in forms_of(after) if each.action.endswith("holdings/log"))
        assert form.fields["note"] == "kept here"
        assert form.fields[field("figures", "rifleman")] == number
        assert not (folder / "journal.sqlite").exists()

    def test_a_day_that_is_none_or_to_come_is_refused(self, visitor: Visitor) -> None:
        seen = visitor.get("holdings/log?kind=received")
        number = {field("figures", "rifleman"): "1"}
        for day, words in (
            ("yesterday", "isn't a date"),
            ("2026-04-01", "hasn't happened yet"),
            ("2026-04-01", "in the field “On”."),
        ):
            after = visitor.fill(seen, "holdings/log", filled={**number, "on": day})
            assert after.status_code == 422
            assert words in words_of(after)

    def test_a_form_that_is_not_whole_is_refused(self, visitor: Visitor) -> None:
        seen = visitor.get("holdings/log?kind=noted")
        for broken in ({"entry": "7"}, {"kind": "struck-out"}, {"kind": ""}):
            after = visitor.fill(seen, "holdings/log", filled={**broken, "note": "x"})
            assert after.status_code == 400


class TestCounted:
    def test_the_sheet_has_a_box_for_every_kind_and_stage(self, visitor: Visitor) -> None:
        seen = visitor.get("holdings/stock-take")
        form = next(each for each in forms_of(seen) if each.action.endswith("stock-take"))
        boxes = [name for name in form.fields if name.startswith("counted/")]
        assert len(boxes) == 13 * 5

    def test_only_boxes_that_are_filled_in_are_written_as_one_entry(
        self, visitor: Visitor, folder: Path
    ) -> None:
        logged(folder, EntryKind.RECEIVED, figures={"rifleman": 12, "officer": 3})
        seen = visitor.get("holdings/stock-take")
        said = {
            field("counted", "rifleman", "in packet"): "0",
            field("counted", "rifleman", "painted"): "11",
            field("counted", "mortar crew", "based"): "2",
        }
        after = visitor.fill(seen, "holdings/stock-take", filled=said)
        assert after.url.path.endswith("/holdings")
        assert held(folder) == {
            "rifleman": {"painted": 11},
            "officer": {"in packet": 3},
            "mortar crew": {"based": 2},
        }
        again = visitor.fill(seen, "holdings/stock-take", filled=said)
        assert again.status_code == 200
        assert "Lines 2" in words_of(visitor.get("journal"))

    def test_an_empty_sheet_and_bad_numbers_are_refused(self, visitor: Visitor) -> None:
        seen = visitor.get("holdings/stock-take")
        assert visitor.fill(seen, "holdings/stock-take", filled={}).status_code == 422
        said = {field("counted", "rifleman", "painted"): "1x"}
        after = visitor.fill(seen, "holdings/stock-take", filled=said)
        assert after.status_code == 422
        assert "rifleman, painted: '1x' isn't a whole number." in words_of(after)


class TestReceived:
    def test_a_parcel_is_booked_in_with_shorts_and_miscasts(
        self, visitor: Visitor, folder: Path
    ) -> None:
        seen = visitor.get("holdings/receive?source=South")
        said = {
            field("ordered", "S1"): "3",
            field("came", "S1"): "2",
            field("came", "S3"): "1",
            field("short", "rifleman"): "2",
            field("miscast", "officer"): "1",
        }
        after = visitor.fill(seen, "holdings/receive", filled=said)
        assert after.status_code == 200
        words = words_of(after)
        assert "To be claimed from South: 2 riflemen and 1 officer." in words
        assert "South sent 1 x S3, which was not ordered." in words
        assert "1 pack not in the parcel: 1 x S1." in words
        assert held(folder) == {
            "rifleman": {"in packet": 42},
            "mortar crew": {"in packet": 8},
            "officer": {"in packet": 3},
        }
        again = visitor.fill(seen, "holdings/receive", filled=said)
        assert "Was booked in already" in words_of(again)
        visitor.fill(after, "journal/strike-out")
        assert held(folder) == {}

    def test_what_will_not_come_is_taken_off_beside_the_parcel(
        self, visitor: Visitor, folder: Path
    ) -> None:
        assert "What won't come" not in words_of(visitor.get("holdings/receive?source=South"))
        logged(folder, EntryKind.ORDERED, figures={"rifleman": 6, "officer": 1}, source="South")
        logged(folder, EntryKind.RECEIVED, figures={"rifleman": 4}, source="South")
        seen = visitor.get("holdings/receive?source=South")
        assert "What won't come" in words_of(seen)
        refused = visitor.fill(seen, "holdings/cancel", filled={"why": " "})
        assert refused.status_code == 422
        assert "Nothing says why it won't come." in words_of(refused)
        slip = {field("cancelled", "rifleman"): "two", "why": "sold out"}
        assert visitor.fill(seen, "holdings/cancel", filled=slip).status_code == 422
        some = {field("cancelled", "rifleman"): "1", "why": "sold out"}
        after = visitor.fill(refused, "holdings/cancel", filled=some)
        assert "cancelled 1 rifleman from South: sold out" in words_of(after)
        seen = visitor.get("holdings/receive?source=South")
        assert "On order: 1 officer and 1 rifleman from South" in words_of(seen)
        after = visitor.fill(seen, "holdings/cancel", filled={"why": "refunded"})
        assert "cancelled 1 officer and 1 rifleman from South: refunded" in words_of(after)
        assert "On order" not in words_of(visitor.get("holdings/receive?source=South"))

    def test_the_form_is_filled_in_with_the_cheapest_order_when_asked(
        self, visitor: Visitor, folder: Path
    ) -> None:
        (folder / "stock.yaml").write_text(
            "stock: {rifleman: {painted: 51}, mortar crew: {painted: 3}, officer: {painted: 3}, "
            "signaller: {based: 3}, light truck: {based: 2}}\n",
            encoding="utf-8",
        )
        seen = visitor.get("holdings/receive?fill=cheapest")
        assert "(£45.50, exact): South: 3 x S1." in words_of(seen)
        form = next(each for each in forms_of(seen) if each.action.endswith("receive"))
        assert (form.fields[field("came", "S1")], form.fields[field("ordered", "S1")]) == ("3", "3")
        other = visitor.get("holdings/receive?source=North&fill=cheapest")
        assert "Nothing of it is from North." in words_of(other)

    def test_where_nothing_is_lacking_there_is_no_order_to_fill_in(self, guard: Path) -> None:
        (guard / "stock.yaml").write_text("stock: {boat: {based: 1}}\n", encoding="utf-8")
        (guard / "prices.yaml").write_text(
            "sources: {Near: {currency: GBP, carriage: {0: 1}, "
            "packs: {A: {price: 1, holds: {boat: 1}}}}}\n",
            encoding="utf-8",
        )
        words = words_of(Visitor(guard).get("holdings/receive?fill=cheapest"))
        assert "Nothing is lacking, so there is no order to fill in." in words

    def test_a_force_without_price_lists_is_told_what_to_do(self, guard: Path) -> None:
        assert "No price list stands in the files" in words_of(
            Visitor(guard).get("holdings/receive")
        )

    def test_more_can_not_be_missing_than_came(self, visitor: Visitor, folder: Path) -> None:
        seen = visitor.get("holdings/receive?source=South")
        said = {field("came", "S3"): "1", field("short", "rifleman"): "13"}
        after = visitor.fill(seen, "holdings/receive", filled=said)
        assert after.status_code == 422
        assert "13 short and 0 miscast, of 12 that the packs should hold." in words_of(after)
        bad = visitor.fill(seen, "holdings/receive", filled={field("came", "S3"): "one"})
        assert bad.status_code == 422
        assert "S3: 'one' isn't a whole number." in words_of(bad)
        assert not (folder / "journal.sqlite").exists()


class TestWorth:
    def test_the_replacement_value_says_how_sure_it_is_and_what_has_no_price(
        self, visitor: Visitor, folder: Path
    ) -> None:
        assert "Nothing is owned yet" in words_of(visitor.get("holdings/replacement"))
        logged(folder, EntryKind.RECEIVED, figures={"cyclist": 6})
        assert "no value can be given" in words_of(visitor.get("holdings/replacement"))
        logged(folder, EntryKind.RECEIVED, figures={"rifleman": 12})
        words = words_of(visitor.get("holdings/replacement"))
        assert "£11.50 for 12 riflemen; exact: no order of all this costs less." in words
        assert "cyclist 6" in words

    def test_what_could_go_is_listed_with_its_price(self, visitor: Visitor, folder: Path) -> None:
        assert "Nothing: everything that is held is used" in words_of(visitor.get("holdings/spare"))
        logged(folder, EntryKind.RECEIVED, figures={"signaller": 5, "cyclist": 3})
        words = words_of(visitor.get("holdings/spare"))
        assert "signaller 5 2 £4.00 for 4 (North N4)" in words
        assert "cyclist 3 3 no price: no pack holds them alone" in words
        assert "It is no advice on what to ask" in words

    def test_a_finished_stand_to_spare_is_told_with_its_figures(
        self, visitor: Visitor, folder: Path
    ) -> None:
        (folder / "stock.yaml").write_text("stock stands: {pioneer section: {based: 1}}\n")
        words = words_of(visitor.get("holdings/spare"))
        assert "pioneer section (finished stand) 1 1 4 pioneers: no price" in words

    def test_two_forces_are_asked_together_and_one_at_a_time(self, club: Path) -> None:
        logged(club, EntryKind.RECEIVED, figures={"rifleman": 4})
        words = words_of(Visitor(club, force="guard").get("holdings/spare"))
        assert "none of the 2 forces here uses them" in words
        assert "rifleman 15 7 11" in words

    def test_a_force_that_is_stopped_has_neither(self, visitor: Visitor, folder: Path) -> None:
        (folder / "force.yaml").write_text("figures: {", encoding="utf-8")
        assert visitor.get("holdings/replacement").status_code == 200
        assert "Nothing can be counted" in words_of(visitor.get("holdings/spare"))
