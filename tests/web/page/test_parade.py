"""The parade through its page: what is there, a stand brought on, and that taken back."""

import re
from html import unescape
from pathlib import Path
from uuid import uuid4

import pytest

from paradestate.core.journal_entry import EntryKind
from paradestate.core.log_request import LogRequest
from paradestate.journeys.history import history
from paradestate.journeys.log import log
from paradestate.journeys.new import new_from_example
from tests.web.visitor import NOW, Visitor, words_of

PARADE = "/forces/marenz/parade"
STAND = "No 2 Company / 1 Platoon / 1 Section"
AT_STAND = f"{PARADE}?stand=No+2+Company+%2F+1+Platoon+%2F+1+Section"


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    new_from_example(tmp_path / "marenz", name="marenz")
    return tmp_path / "marenz"


@pytest.fixture
def owner(folder: Path) -> Visitor:
    """Somebody who owns some riflemen, and looks at the parade."""
    for stage, number in (("based", 26), ("painted", 8), ("in packet", 4)):
        received(folder, rifleman=number, stage=stage)
    return Visitor(folder)


def received(folder: Path, *, stage: str, **figures: int) -> None:
    request = LogRequest(
        id=str(uuid4()),
        kind=EntryKind.RECEIVED,
        written=NOW,
        on=NOW.date(),
        figures=figures,
        to_stage=stage,
    )
    assert log(folder, today=NOW.date(), request=request).entry is not None


def entries(folder: Path) -> int:
    return history(folder, today=NOW.date(), last=1).number


def bring_on_fields(owner: Visitor) -> dict[str, str | list[str]]:
    (form,) = re.findall(r"<form[^>]*parade/bring-on.*?</form>", owner.seen[-1], re.DOTALL)
    fields = re.findall(r'name="(stand|entry|from|to)" value="([^"]*)"', form)
    return {name: unescape(value) for name, value in fields}


def stage_of(owner: Visitor, name: str = STAND) -> str:
    label = re.escape(name.replace(" / ", ", "))
    found = re.search(rf'aria-label="{label}: [^,"]*, ([^"]*)"', owner.get(PARADE).text)
    assert found is not None
    return found[1]


def test_the_first_page_leads_to_the_only_force(owner: Visitor) -> None:
    assert "<h1>Parade state</h1>" in owner.get("/").text


def test_every_stand_is_a_link_with_its_name_and_stage(owner: Visitor) -> None:
    page = owner.get(PARADE).text
    labels = set(
        re.findall(
            r'class="stand[^>]*aria-label="([^"]*)"|aria-label="([^"]*)"[^>]*class="stand', page
        )
    )
    named = {one or other for one, other in labels}
    assert len(named) == 37 + 8 + 9
    assert "No 1 Company, 1 Platoon, 1 Section: rifle section, based" in named


def test_it_begins_with_its_answer_and_says_what_is_lacking(owner: Visitor) -> None:
    said = words_of(owner.get(PARADE))
    assert re.search(r"6 of 37 stands are fit to fight; 87 figures are lacking", said)
    assert "all agree" in said


def test_must_and_wished_are_never_in_one_bar(owner: Visitor) -> None:
    said = words_of(owner.get(PARADE))
    assert "37 stands and 8 printed markers" in said
    assert "8 hidden-movement markers, 1 headquarters scene: not wanted just now" in said


def test_a_stand_is_brought_on_by_one_stage_and_no_other_changes(
    owner: Visitor, folder: Path
) -> None:
    assert stage_of(owner) == "painted"
    before = {name: stage_of(owner, name) for name in OTHERS}
    owner.get(AT_STAND)
    page = owner.post(f"{PARADE}/bring-on", bring_on_fields(owner))
    assert page.status_code == 200
    assert stage_of(owner) == "based"
    assert {name: stage_of(owner, name) for name in OTHERS} == before
    assert entries(folder) == 4


OTHERS = tuple(
    f"No {company} Company / {platoon} Platoon / {section} Section"
    for company in (1, 2)
    for platoon in (1, 2, 3)
    for section in (1, 2)
    if f"No {company} Company / {platoon} Platoon / {section} Section" != STAND
)


def test_that_is_taken_back(owner: Visitor, folder: Path) -> None:
    owner.get(AT_STAND)
    owner.post(f"{PARADE}/bring-on", bring_on_fields(owner))
    (undone,) = set(re.findall(r'name="undone" value="([^"]*)"', owner.seen[-1]))
    page = owner.post(f"{PARADE}/undo", {"undone": undone, "entry": str(uuid4()), "stand": STAND})
    assert "Undone: moved 4 riflemen from painted to based" in words_of(page)
    assert stage_of(owner) == "painted"
    assert entries(folder) == 5


def test_beside_a_stand_only_what_was_written_of_it_is_undone(owner: Visitor) -> None:
    """Whoever taps once too often takes no parcel back."""
    assert 'name="undone"' not in owner.get(AT_STAND).text
    owner.post(f"{PARADE}/bring-on", bring_on_fields(owner))
    assert 'name="undone"' in owner.get(AT_STAND).text
    (undone,) = set(re.findall(r'name="undone" value="([^"]*)"', owner.seen[-1]))
    owner.post(f"{PARADE}/undo", {"undone": undone, "entry": str(uuid4()), "stand": STAND})
    assert 'name="undone"' not in owner.get(AT_STAND).text
    assert 'name="undone"' in owner.get(PARADE).text


def test_a_form_sent_twice_writes_once(owner: Visitor, folder: Path) -> None:
    owner.get(AT_STAND)
    fields = bring_on_fields(owner)
    owner.post(f"{PARADE}/bring-on", fields)
    again = owner.post(f"{PARADE}/bring-on", fields)
    assert again.status_code == 409
    assert "look again" in words_of(again)
    assert entries(folder) == 4


def test_a_stand_that_lacks_figures_is_brought_on_in_part(owner: Visitor, folder: Path) -> None:
    name = "No 2 Company / 2 Platoon / 1 Section"
    assert stage_of(owner, name) == "in part"
    page = owner.get(f"{PARADE}?stand={name.replace(' ', '+').replace('/', '%2F')}")
    assert "That moves 3 riflemen from in packet" in words_of(page)
    owner.post(f"{PARADE}/bring-on", bring_on_fields(owner))
    page = owner.get(f"{PARADE}?stand={name.replace(' ', '+').replace('/', '%2F')}")
    assert "3 riflemen, assembled" in words_of(page)
    assert entries(folder) == 4


def test_an_unknown_stand_is_no_stand_and_no_failure(owner: Visitor) -> None:
    page = owner.get(f"{PARADE}?stand=Nobody")
    assert page.status_code == 200
    owner.get(AT_STAND)
    fields = {**bring_on_fields(owner), "stand": "Nobody"}
    assert owner.post(f"{PARADE}/bring-on", fields).status_code == 409


def test_what_can_not_be_counted_is_said_with_its_place(owner: Visitor, folder: Path) -> None:
    file = folder / "force.yaml"
    file.write_text(file.read_text().replace("rifleman: 4}", "riflemann: 4}"))
    page = words_of(owner.get(PARADE))
    assert "A stop prevents the answer" in page
    assert "riflemann" in page
    assert "force.yaml:" in page


def test_a_force_that_is_not_there_is_not_found(owner: Visitor) -> None:
    assert owner.get("/forces/nobody/parade").status_code == 404
