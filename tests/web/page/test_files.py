"""The page of files: listed, written, handed out, taken in, put back."""

from io import BytesIO
from pathlib import Path

import pytest
from openpyxl import load_workbook

from paradestate.journeys.collection import collection_of
from paradestate.journeys.files import read_file
from paradestate.store.opening import opened
from paradestate.text.former import former_versions
from tests.journeys.conftest import FERRY_GUARD, TOWN_WATCH, written
from tests.web.visitor import Visitor, words_of

FILES = "/forces/guard/files"
BROKEN_OFF = FERRY_GUARD + "stock stands: {boat: {based"


@pytest.fixture
def guard(tmp_path: Path) -> Path:
    return written(tmp_path / "guard", FERRY_GUARD)


@pytest.fixture
def owner(guard: Path) -> Visitor:
    """Somebody who looks at the files of the ferry guard."""
    shown = Visitor(guard)
    assert shown.get(FILES).status_code == 200
    return shown


def mark(folder: Path, name: str = "force.yaml") -> str:
    return read_file(folder, name).mark


def sent(folder: Path, text: str, **more: str) -> dict[str, str | list[str]]:
    """The fields of the editor; a form sends CR LF."""
    typed = text.replace("\n", "\r\n")
    return {"name": "force.yaml", "mark": mark(folder), "text": typed, **more}


def test_every_file_is_listed(owner: Visitor, guard: Path) -> None:
    (guard / "notes.txt").write_text("x", encoding="utf-8")
    (guard / "<b>.csv").write_text("x", encoding="utf-8")
    page = owner.get(FILES)
    for name in ("force.yaml", "notes.txt", "<b>.csv"):
        assert name in words_of(page)
    assert "<b>.csv" not in page.text
    assert "not read" in words_of(page)


def test_a_file_is_shown_with_what_each_entry_means(owner: Visitor) -> None:
    page = words_of(owner.get(f"{FILES}/text?name=force.yaml"))
    assert "Reads" in page
    assert "Rifle section: on 40 x 20 mm; holds 4 riflemen." in page


def test_what_was_saved_is_written_in_the_manner_of_the_file(owner: Visitor, guard: Path) -> None:
    new = FERRY_GUARD.replace("Ferry", "River")
    answer = owner.post(f"{FILES}/save", sent(guard, new))
    assert (guard / "force.yaml").read_bytes() == new.encode()
    (former,) = former_versions(guard / "force.yaml")
    assert former.path.read_text(encoding="utf-8") == FERRY_GUARD
    assert "Written: force.yaml" in words_of(answer)


def test_what_was_written_is_undone(owner: Visitor, guard: Path) -> None:
    owner.post(f"{FILES}/save", sent(guard, FERRY_GUARD.replace("Ferry", "River")))
    fields = {name: owner.hidden(name) for name in ("name", "version", "mark")}
    answer = owner.post(f"{FILES}/put-back", fields)
    assert answer.status_code == 200
    assert (guard / "force.yaml").read_text(encoding="utf-8") == FERRY_GUARD


def test_a_broken_file_is_mended_through_the_page(guard: Path) -> None:
    (guard / "force.yaml").write_text(BROKEN_OFF, encoding="utf-8")
    owner = Visitor(guard)
    page = owner.get(f"{FILES}/text?name=force.yaml")
    assert "ends in the middle" in words_of(page)
    owner.post(f"{FILES}/save", sent(guard, FERRY_GUARD))
    assert "read without a doubt" in words_of(owner.get(FILES))


def test_with_a_stop_it_is_written_only_at_the_second_time(owner: Visitor, guard: Path) -> None:
    broken = FERRY_GUARD.replace("formation: guard", "formation: gard")
    answer = owner.post(f"{FILES}/save", sent(guard, broken))
    assert answer.status_code == 422
    assert "Not written yet" in words_of(answer)
    assert "formation: gard" in answer.text
    assert (guard / "force.yaml").read_text(encoding="utf-8") == FERRY_GUARD
    answer = owner.post(f"{FILES}/save", sent(guard, broken, sure="yes"))
    assert (guard / "force.yaml").read_text(encoding="utf-8") == broken
    assert "1 stop" in words_of(answer)


def test_a_text_is_checked_without_being_saved(owner: Visitor, guard: Path) -> None:
    broken = FERRY_GUARD.replace("sort: vehicle", "sort: vehicel")
    page = owner.post(f"{FILES}/check", sent(guard, broken, line="5"))
    assert "Line 5, column 16 Stop:" in words_of(page)
    assert "not saved" in words_of(page)
    assert (guard / "force.yaml").read_text(encoding="utf-8") == FERRY_GUARD


@pytest.mark.parametrize(
    ("typed", "said"),
    [
        ("aim: {a month: 3,50}\n", "3.50"),
        ("aim: {text: M\u0430renz}\n", "has one letter from another alphabet"),
        ("aim: {text: a\u00a0b}\n", "no-break space"),
        ("aim: {text: [\n", "ends in the middle"),
        ("suporting troops: {}\n", "Did you mean 'supporting troops'?"),
    ],
)
def test_slips_of_a_file_are_found_as_they_are_typed(
    owner: Visitor, guard: Path, typed: str, said: str
) -> None:
    fields = sent(guard, FERRY_GUARD + typed, fragment="yes", line="1", column="1")
    assert said in words_of(owner.post(f"{FILES}/check", fields))


def test_an_offer_is_taken_in_the_text_and_nothing_is_saved(owner: Visitor, guard: Path) -> None:
    broken = FERRY_GUARD.replace("sort: vehicle", "sort: vehicel")
    page = owner.post(f"{FILES}/check", sent(guard, broken))
    assert 'name="mend" value="5:16"' in page.text
    mended = owner.post(f"{FILES}/check", sent(guard, broken, mend="5:16"))
    assert "sort: vehicle}" in mended.text
    assert "vehicel" not in mended.text
    assert "Reads" in words_of(mended)


def test_an_offer_that_is_gone_leaves_the_text_alone(owner: Visitor, guard: Path) -> None:
    page = owner.post(f"{FILES}/check", sent(guard, FERRY_GUARD, mend="99:1"))
    assert "Reads" in words_of(page)


def test_a_fragment_names_the_words_at_the_cursor(owner: Visitor, guard: Path) -> None:
    typed = FERRY_GUARD.replace("{sort: vehicle}", "{sort: }")
    line = typed.split("\n").index("  boat: {sort: }") + 1
    fields = sent(guard, typed, fragment="yes", line=str(line), column="16")
    answer = owner.post(f"{FILES}/check", fields)
    assert "<html" not in answer.text
    assert 'data-word="vehicle"' in answer.text


def test_without_a_cursor_the_words_for_the_end_of_a_line_are_named(
    owner: Visitor, guard: Path
) -> None:
    typed = FERRY_GUARD + "bench:\n  "
    line = str(typed.count("\n") + 1)
    page = words_of(owner.post(f"{FILES}/check", sent(guard, typed, line=line)))
    assert "May stand here" in page
    assert "stages" in page
    for strange in ("0", "-1", "x", "9" * 30):
        assert owner.post(f"{FILES}/check", sent(guard, typed, line=strange)).status_code == 200


def test_the_entry_at_the_cursor_is_marked(owner: Visitor, guard: Path) -> None:
    line = FERRY_GUARD.split("\n").index("raise: {formation: guard}") + 1
    fields = sent(guard, FERRY_GUARD, fragment="yes", line=str(line), column="3")
    answer = owner.post(f"{FILES}/check", fields)
    now = answer.text.split('aria-current="true"', 1)[1].split("</li>", 1)[0]
    assert "Raised: the guard" in now


def test_who_comes_second_sees_both_versions_and_loses_neither(owner: Visitor, guard: Path) -> None:
    mine = sent(guard, FERRY_GUARD.replace("Ferry", "Lake"))
    other = FERRY_GUARD.replace("Ferry", "River")
    (guard / "force.yaml").write_text(other, encoding="utf-8")
    answer = owner.post(f"{FILES}/save", mine)
    assert answer.status_code == 409
    assert "River guard" in words_of(answer)
    assert "Lake guard" in words_of(answer)
    assert (guard / "force.yaml").read_text(encoding="utf-8") == other
    owner.post(f"{FILES}/save", {**mine, "mark": owner.hidden("mark")})
    assert "Lake guard" in (guard / "force.yaml").read_text(encoding="utf-8")
    (former,) = former_versions(guard / "force.yaml")
    assert former.path.read_text(encoding="utf-8") == other


def test_a_file_that_was_taken_away_meanwhile_is_written_anew(owner: Visitor, guard: Path) -> None:
    (guard / "prices.yaml").write_text("states: [held up]\n", encoding="utf-8")
    mine: dict[str, str | list[str]] = {
        "name": "prices.yaml",
        "mark": mark(guard, "prices.yaml"),
        "text": "states: [lost]\n",
    }
    (guard / "prices.yaml").unlink()
    answer = owner.post(f"{FILES}/save", mine)
    assert answer.status_code == 409
    assert "the only one left" in words_of(answer)
    owner.post(f"{FILES}/save", {**mine, "mark": owner.hidden("mark")})
    assert (guard / "prices.yaml").read_text(encoding="utf-8") == "states: [lost]\n"


def test_a_new_file_is_made_when_it_is_saved(owner: Visitor, guard: Path) -> None:
    page = owner.get(f"{FILES}/text?new=yes&name=shop")
    assert "shop.yaml" in words_of(page)
    assert not (guard / "shop.yaml").exists()
    fields: dict[str, str | list[str]] = {"name": "shop.yaml", "mark": "", "text": "states: [up]"}
    assert "Written: shop.yaml" in words_of(owner.post(f"{FILES}/save", fields))
    assert (guard / "shop.yaml").read_text(encoding="utf-8") == "states: [up]"
    assert "states: [up]" in owner.get(f"{FILES}/text?new=yes&name=shop.yaml").text


@pytest.mark.parametrize(
    "name",
    ["../x.yaml", "..%2Fx.yaml", "/etc/passwd", ".x.yaml", "x.exe", "x.csv", "a%00.yaml", ""],
)
def test_no_file_is_begun_under_a_hostile_name(owner: Visitor, guard: Path, name: str) -> None:
    before = sorted(guard.parent.rglob("*"))
    answer = owner.get(f"{FILES}/text?new=yes&name={name}")
    assert answer.status_code == 422
    assert "No file was begun" in words_of(answer)
    assert sorted(guard.parent.rglob("*")) == before


@pytest.mark.parametrize("action", ["save", "check", "put-back"])
@pytest.mark.parametrize("name", ["../x.yaml", "/x.yaml", ".x.yaml", "x.exe", "a\x00.yaml", ""])
def test_nothing_is_written_under_a_hostile_name(
    owner: Visitor, guard: Path, action: str, name: str
) -> None:
    before = sorted(guard.parent.rglob("*"))
    fields: dict[str, str | list[str]] = {"name": name, "mark": "", "text": "x", "sure": "yes"}
    answer = owner.post(f"{FILES}/{action}", {**fields, "version": "../x"})
    assert answer.status_code == 422
    assert "othing was" in words_of(answer)
    assert sorted(guard.parent.rglob("*")) == before


@pytest.mark.parametrize("part", ["text", "download", "former"])
@pytest.mark.parametrize("name", ["../secret.yaml", "out.yaml", ".former", "none.yaml"])
def test_nothing_outside_the_folder_is_ever_shown(guard: Path, part: str, name: str) -> None:
    (guard.parent / "secret.yaml").write_text("secret: word", encoding="utf-8")
    (guard / "out.yaml").symlink_to(guard.parent / "secret.yaml")
    answer = Visitor(guard).get(f"{FILES}/{part}?name={name}&version=x")
    assert answer.status_code in {422, 503}
    assert "secret: word" not in answer.text


def test_hostile_contents_are_shown_as_text(owner: Visitor, guard: Path) -> None:
    evil = FERRY_GUARD.replace("Ferry guard", "</textarea><script>alert(1)</script>")
    page = owner.post(f"{FILES}/check", sent(guard, evil))
    assert "<script>alert" not in page.text
    assert "&lt;/textarea&gt;" in page.text


def test_the_first_empty_line_of_a_text_is_not_lost(owner: Visitor, guard: Path) -> None:
    """A browser drops the line break that follows the tag of a text field."""
    page = owner.post(f"{FILES}/check", sent(guard, "\n\n" + FERRY_GUARD))
    assert f">\n\n\n{FERRY_GUARD[:9]}" in page.text


def test_a_picture_is_not_shown_as_text(owner: Visitor, guard: Path) -> None:
    owner.post(f"{FILES}/save", sent(guard, FERRY_GUARD.replace("Ferry", "River")))
    (guard / "force.yaml").write_bytes(b"\x89PNG\r\n")
    page = owner.get(f"{FILES}/text?name=force.yaml")
    assert "This is a picture (PNG)" in words_of(page)
    assert "Go back to the copy" in words_of(page)


def test_a_former_version_is_shown_beside_the_present_one(owner: Visitor, guard: Path) -> None:
    owner.post(f"{FILES}/save", sent(guard, FERRY_GUARD.replace("Ferry", "River")))
    version = former_versions(guard / "force.yaml")[0].path.name
    page = owner.get(f"{FILES}/former?name=force.yaml&version={version}")
    assert "Ferry guard" in words_of(page)
    assert "River guard" in words_of(page)


def test_a_former_version_with_a_stop_is_put_back_only_when_that_is_said(
    owner: Visitor, guard: Path
) -> None:
    broken = FERRY_GUARD.replace("formation: guard", "formation: gard")
    owner.post(f"{FILES}/save", sent(guard, broken, sure="yes"))
    owner.post(f"{FILES}/save", sent(guard, FERRY_GUARD))
    version = former_versions(guard / "force.yaml")[0].path.name
    fields: dict[str, str | list[str]] = {
        "name": "force.yaml",
        "version": version,
        "mark": mark(guard),
    }
    answer = owner.post(f"{FILES}/put-back", fields)
    assert answer.status_code == 422
    assert "Not written" in words_of(answer)
    owner.post(f"{FILES}/put-back", {**fields, "sure": owner.hidden("sure")})
    assert (guard / "force.yaml").read_text(encoding="utf-8") == broken


def test_the_copy_that_is_whole_is_offered(owner: Visitor, guard: Path) -> None:
    owner.post(f"{FILES}/save", sent(guard, BROKEN_OFF, sure="yes"))
    page = owner.get(f"{FILES}/text?name=force.yaml")
    assert "The copy kept on 2026-03-05 at 21:14 UTC is whole" in words_of(page)


def test_a_newer_format_is_shown_and_not_written(guard: Path) -> None:
    newer = FERRY_GUARD.replace("format: 1", "format: 2")
    (guard / "force.yaml").write_text(newer, encoding="utf-8")
    owner = Visitor(guard)
    assert "Opened read-only" in words_of(owner.get(f"{FILES}/text?name=force.yaml"))
    answer = owner.post(f"{FILES}/save", sent(guard, newer.replace("Ferry", "River"), sure="yes"))
    assert answer.status_code == 422
    assert "newer format" in words_of(answer)
    assert (guard / "force.yaml").read_text(encoding="utf-8") == newer


def test_a_file_is_handed_out_as_it_is(owner: Visitor) -> None:
    answer = owner.get(f"{FILES}/download?name=force.yaml")
    assert answer.content == FERRY_GUARD.encode()
    assert "attachment" in answer.headers["content-disposition"]


def test_of_a_list_typed_in_from_a_book_it_is_said_wherever_it_is_handed_out(
    guard: Path,
) -> None:
    private = FERRY_GUARD.replace("figures:", "private: yes\nfigures:", 1)
    (guard / "force.yaml").write_text(private, encoding="utf-8")
    owner = Visitor(guard)
    for path in (FILES, f"{FILES}/text?name=force.yaml"):
        assert "Sharing it may not be yours to do" in words_of(owner.get(path))


def test_a_spreadsheet_is_handed_out_changed_and_put_in_its_place(
    owner: Visitor, guard: Path, tmp_path: Path
) -> None:
    sheet = "figure,painted\nboat,1\n"
    answer = owner.post(f"{FILES}/upload", {"name": "", "mark": ""}, files=one("stock.csv", sheet))
    assert "Written: stock.csv" in words_of(answer)
    again = owner.post(f"{FILES}/upload", {"name": "", "mark": ""}, files=one("stock.csv", "x"))
    assert again.status_code == 409
    fields: dict[str, str | list[str]] = {"name": "stock.csv", "mark": mark(guard, "stock.csv")}
    owner.post(f"{FILES}/upload", fields, files=one("other.csv", sheet.replace("1", "2")))
    assert (guard / "stock.csv").read_text(encoding="utf-8").endswith("boat,2\n")
    assert len(former_versions(guard / "stock.csv")) == 1
    assert tmp_path.exists()


def one(name: str, text: str) -> dict[str, tuple[str, bytes]]:
    return {"file": (name, text.encode())}


@pytest.mark.parametrize("name", ["../x.csv", "/etc/x.csv", "x.exe", ".x.csv", "x.csv\x00.yaml"])
def test_no_file_is_taken_in_under_a_hostile_name(owner: Visitor, guard: Path, name: str) -> None:
    before = sorted(guard.parent.rglob("*"))
    for fields, files in (
        ({"name": name, "mark": ""}, one("good.csv", "x")),
        ({"name": "", "mark": ""}, one(name, "x")),
    ):
        answer = owner.post(f"{FILES}/upload", dict(fields), files=files)
        assert answer.status_code == 422 or sorted(guard.parent.rglob("*")) == before
    assert [path for path in guard.parent.rglob("*") if path.suffix == ".exe"] == []
    assert not (guard.parent / "x.csv").exists()


def test_a_spreadsheet_with_stops_is_taken_in_only_when_that_is_said(
    owner: Visitor, guard: Path
) -> None:
    sheet = "figure,painted\nboot,1\n"
    fields: dict[str, str | list[str]] = {"name": "", "mark": ""}
    answer = owner.post(f"{FILES}/upload", fields, files=one("stock.csv", sheet))
    assert answer.status_code == 422
    assert "stock!A2" in answer.text or "'boot' isn't defined" in words_of(answer)
    assert not (guard / "stock.csv").exists()
    fields = {"name": owner.hidden("name"), "mark": owner.hidden("mark"), "sure": "yes"}
    owner.post(f"{FILES}/upload", fields, files=one("stock.csv", sheet))
    assert (guard / "stock.csv").exists()


@pytest.mark.parametrize("action", ["save", "check", "upload", "put-back", "copy"])
def test_who_loads_the_answer_to_a_form_anew_gets_the_list(owner: Visitor, action: str) -> None:
    answer = owner.get(f"{FILES}/{action}")
    assert answer.status_code == 200
    assert "The files themselves" in words_of(answer)


def test_without_a_file_nothing_is_taken_in(owner: Visitor) -> None:
    answer = owner.post(f"{FILES}/upload", {"name": "", "mark": ""})
    assert answer.status_code == 422
    assert "No file was chosen" in words_of(answer)


def test_a_workbook_comes_back_as_it_went(owner: Visitor, guard: Path) -> None:
    from openpyxl import Workbook  # noqa: PLC0415 - only this test makes one

    book, held = Workbook(), BytesIO()
    sheet = book.active
    assert sheet is not None
    sheet.title = "stock"
    sheet.append(["figure", "painted"])
    sheet.append(["boat", 1])
    book.save(held)
    fields: dict[str, str | list[str]] = {"name": "", "mark": ""}
    owner.post(f"{FILES}/upload", fields, files={"file": ("own.xlsx", held.getvalue())})
    back = owner.get(f"{FILES}/download?name=own.xlsx").content
    assert back == held.getvalue() == (guard / "own.xlsx").read_bytes()
    assert load_workbook(BytesIO(back)).sheetnames == ["stock"]


def test_a_lone_force_is_told_how_to_have_a_variant(owner: Visitor) -> None:
    assert "a collection of one" in words_of(owner.get(FILES))
    answer = owner.post(f"{FILES}/copy", {})
    assert answer.status_code == 409


def test_forces_without_a_journal_are_told_how_to_share_one(tmp_path: Path) -> None:
    written(tmp_path / "club" / "guard", FERRY_GUARD)
    page = words_of(Visitor(tmp_path / "club").get(FILES))
    assert "share no journal yet" in page
    assert "Copy as a variant" not in page


def test_a_force_of_a_collection_is_copied_as_a_variant(tmp_path: Path) -> None:
    written(tmp_path / "club" / "guard", FERRY_GUARD)
    written(tmp_path / "club" / "watch", TOWN_WATCH)
    with opened(collection_of(tmp_path / "club").address, writing=True):
        owner = Visitor(tmp_path / "club")
    assert "Copy as a variant" in words_of(owner.get(FILES))
    page = owner.post(f"{FILES}/copy", {})
    assert "This is the copy" in words_of(page)
    assert "Ferry guard (variant)" in words_of(page)
    assert (tmp_path / "club" / "ferry-guard-variant" / "force.yaml").is_file()


def test_an_address_cannot_have_the_page_say_that_something_was_written(owner: Visitor) -> None:
    for query in ("written=../x&former=y", "written=none.yaml&former=", "copied=<b>"):
        page = owner.get(f"{FILES}?{query}")
        assert page.status_code == 200
        assert "Written:" not in words_of(page)
        assert "<b>" not in page.text.split("<main", 1)[1].split("lead", 1)[0]


def test_of_very_many_findings_the_first_are_shown_and_the_others_counted(
    owner: Visitor, guard: Path
) -> None:
    """A file of thousands of slips, such as a list of something else, keeps nobody waiting."""
    text = "\n".join(f"k{number}: {number}" for number in range(4000))
    page = owner.post(f"{FILES}/check", {**sent(guard, text), "fragment": "yes"})
    assert page.text.count("data-mark=") == 200
    assert "more, which show once some of these are put right" in words_of(page)
