"""The sheet of the organisation, through the page."""

import re
from collections.abc import Mapping
from pathlib import Path
from shutil import copytree
from urllib.parse import urlencode

import pytest
from httpx2 import Response

from paradestate.journeys.raising import NothingKeptError
from paradestate.web.page import organisation
from tests.forces import EXAMPLES
from tests.web.visitor import Visitor, forms_of, words_of

SHEET = "organisation"


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    return copytree(EXAMPLES / "marenz", tmp_path / "marenz")


@pytest.fixture
def visitor(folder: Path) -> Visitor:
    return Visitor(folder.parent, force="marenz")


def force_in(tmp_path: Path, text: str) -> Visitor:
    (tmp_path / "marenz").mkdir()
    (tmp_path / "marenz" / "force.yaml").write_text(text, encoding="utf-8")
    return Visitor(tmp_path, force="marenz")


def hidden_fields(seen: Response, action: str) -> Mapping[str, str]:
    """The fields of the form that sends there, of which all are hidden."""
    (form,) = [each for each in forms_of(seen) if each.action.endswith(f"/{action}")]
    return form.fields


def raised_in(folder: Path) -> str:
    return (folder / "force.yaml").read_text(encoding="utf-8").split("\nraise:")[1]


def rows(seen: Response) -> list[tuple[str, str, str]]:
    """What follows from an amendment: what, was, becomes."""
    return re.findall(
        r'<th scope="row">([^<]*)</th><td class="r"><s>([^<]*)</s></td>'
        r'<td class="r pen">([^<]*)</td>',
        seen.text,
    )


def test_one_number_changes_everything_it_should(visitor: Visitor) -> None:
    """Story 2."""
    seen = visitor.get(SHEET, **{"number company": "3"})
    assert seen.status_code == 200
    found = rows(seen)
    for row in (
        ("Foot figures", "123", "94"),
        ("Men", "304", "233"),
        ("Stands and labels", "37", "29"),
        ("Printed markers", "8", "6"),
        ("Formation cost, points", "7", "4"),
        ("Times allowed: machine-gun platoon", "2", "1"),
        ("Platoons in reserve at most", "4", "3"),
        ("Rifle sections", "24", "18"),
        ("Companies", "4", "3"),
    ):
        assert row in found
    limits = next(row for row in found if "lorries" in row[0])
    assert "field works" in limits[0]
    assert "assault training" in limits[0]
    assert limits[1:] == ("4", "3")
    told = words_of(seen)
    assert "Three companies instead of four" in told
    assert "Goes: No 4 Company." in told


def test_what_is_proposed_is_not_written(visitor: Visitor, folder: Path) -> None:
    before = raised_in(folder)
    told = words_of(visitor.get(SHEET, **{"number company": "3"}))
    assert "Proposed, not accepted: Battalion of 233 men on 29 stands" in told
    assert "amendment, not yet accepted" in told
    assert raised_in(folder) == before
    told = words_of(visitor.get(SHEET))
    assert "Now. As the files say it" in told
    assert "Battalion of 304 men on 37 stands" in told
    assert "Proposed" not in told


def test_an_accepted_amendment_is_written_and_can_be_taken_back(
    visitor: Visitor, folder: Path
) -> None:
    before = (folder / "force.yaml").read_bytes()
    seen = visitor.get(SHEET, **{"number company": "3", "date": "1943"})
    done = visitor.post(f"{SHEET}/accept", hidden_fields(seen, "accept"), seen=seen)
    assert done.status_code == 200
    assert done.url.path == "/forces/marenz/organisation"
    assert "numbers: {company: 3}" in raised_in(folder)
    told = words_of(done)
    assert "Written into force.yaml" in told
    assert "Numbers, company: was 4, is now 3" in told
    assert "Battalion of 233 men on 29 stands" in told
    back = visitor.post(f"{SHEET}/put-back", hidden_fields(done, "put-back"), seen=done)
    assert "force.yaml is as it was before" in words_of(back)
    assert (folder / "force.yaml").read_bytes() == before


def test_what_was_accepted_can_be_taken_back_after_the_program_was_started_again(
    visitor: Visitor, folder: Path
) -> None:
    before = (folder / "force.yaml").read_bytes()
    seen = visitor.get(SHEET, date="1942-05")
    visitor.post(f"{SHEET}/accept", hidden_fields(seen, "accept"), seen=seen)
    again = Visitor(folder.parent, force="marenz")
    seen = again.get(SHEET)
    assert "Take the last change of force.yaml back" in words_of(seen)
    again.seconds += 60
    again.post(f"{SHEET}/put-back", hidden_fields(seen, "put-back"), seen=seen)
    assert (folder / "force.yaml").read_bytes() == before


def test_an_undo_that_is_out_of_date_is_refused(visitor: Visitor, folder: Path) -> None:
    seen = visitor.get(SHEET, **{"number company": "3"})
    done = visitor.post(f"{SHEET}/accept", hidden_fields(seen, "accept"), seen=seen)
    old = hidden_fields(done, "put-back")
    visitor.post(f"{SHEET}/accept", {"amendment": "number+company=2"}, seen=done)
    refused = visitor.post(f"{SHEET}/put-back", old, seen=done)
    assert refused.status_code == 409
    assert "has been written again since" in words_of(refused)
    assert "company: 2" in raised_in(folder)


def test_an_undo_without_a_former_version_is_refused(visitor: Visitor) -> None:
    seen = visitor.get(SHEET, **{"number company": "3"})
    assert visitor.post(f"{SHEET}/put-back", {}, seen=seen).status_code == 409


def test_a_former_version_that_goes_meanwhile_is_missed(
    visitor: Visitor, monkeypatch: pytest.MonkeyPatch
) -> None:
    def gone(*_: object, **__: object) -> None:
        raise NothingKeptError("force.yaml")

    seen = visitor.get(SHEET, **{"number company": "3"})
    done = visitor.post(f"{SHEET}/accept", hidden_fields(seen, "accept"), seen=seen)
    monkeypatch.setattr(organisation, "put_former_back", gone)
    refused = visitor.post(f"{SHEET}/put-back", hidden_fields(done, "put-back"), seen=done)
    assert refused.status_code == 409
    assert "No former version of force.yaml is kept any more." in words_of(refused)


def test_an_amendment_that_changes_nothing_writes_nothing(visitor: Visitor, folder: Path) -> None:
    seen = visitor.get(SHEET, **{"number company": "4", "date": "1943"})
    assert "What if" in words_of(seen)
    assert rows(seen) == []
    seen = visitor.get(SHEET, **{"number company": "3"})
    done = visitor.post(f"{SHEET}/accept", {"amendment": "number+company=4"}, seen=seen)
    assert done.status_code == 200
    assert not (folder / ".former").exists()


@pytest.mark.parametrize("query", [{"date": "1942-05"}, {"other date": "1941", "date": "1943"}])
def test_an_older_establishment(visitor: Visitor, query: dict[str, str]) -> None:
    """Story 22."""
    seen = visitor.get(SHEET, **query)
    found = rows(seen)
    assert ("Foot figures", "123", "159") in found
    assert ("Rifle sections", "24", "36") in found
    assert ("Light mortar sections", "4", "none") in found
    assert ("Times allowed: anti-tank rifles", "none", "4") in found
    assert ("Times allowed: assault training for a platoon", "4", "none") in found


def test_the_dates_offered_are_those_between_changes(visitor: Visitor) -> None:
    told = words_of(visitor.get(SHEET))
    assert "until May 1942 June to December 1942 from January 1943 now" in told


def test_a_typed_date_is_picked_in_its_period_from_then_on(visitor: Visitor) -> None:
    seen = visitor.get(SHEET, **{"date": "1943", "date shown": "1943", "other date": "1941"})
    assert "1941 instead of 1943" in words_of(seen)
    assert 'value="1941" checked><span>until May 1942: 1941' in seen.text
    assert 'name="date shown" value="1941"' in seen.text
    assert 'name="other date" value=""' in seen.text


def test_a_new_pick_goes_before_what_was_typed_earlier(visitor: Visitor) -> None:
    typed = visitor.get(SHEET, **{"date": "1943", "date shown": "1943", "other date": "1942"})
    assert 'name="other date" value="1942"' in typed.text
    picked = visitor.get(SHEET, **{"date": "1942-05", "date shown": "", "other date": "1942"})
    assert "1942-05 instead of 1943" in words_of(picked)
    assert 'name="other date" value=""' in picked.text


def test_a_date_that_holds_a_change_is_refused_and_the_day_is_named(visitor: Visitor) -> None:
    seen = visitor.get(SHEET, **{"other date": "1942"})
    told = words_of(seen)
    assert "1942 holds a change on 1942-06-01" in told
    assert "It can't be accepted: the stops above say why." in told
    assert "Accept the amendment" not in told
    assert "Battalion of 304 men" in told
    done = visitor.post(
        f"{SHEET}/accept", {"amendment": "date=1942"}, seen=visitor.get(SHEET, date="1942-05")
    )
    assert done.status_code == 422
    assert "1942 holds a change" in words_of(done)


@pytest.mark.parametrize(
    ("field", "value", "told"),
    [
        ("number company", "many", "many"),
        ("number company", "9", "9 isn't within 2-4"),
        ("number legion", "3", "No stand or formation is called 'legion'"),
        ("other date", "yesterday", "yesterday"),
        ("theatre", "the moon", "No theatre is called 'the moon'"),
    ],
)
def test_what_cannot_be_is_said_and_not_written(
    visitor: Visitor, folder: Path, field: str, value: str, told: str
) -> None:
    before = raised_in(folder)
    seen = visitor.get(SHEET, **{field: value})
    assert told in words_of(seen)
    assert "Stop:" in words_of(seen)
    fine = visitor.get(SHEET, **{"number company": "3"})
    done = visitor.post(f"{SHEET}/accept", {"amendment": urlencode({field: value})}, seen=fine)
    assert done.status_code == 422
    assert raised_in(folder) == before


def test_the_count_explains_itself(visitor: Visitor) -> None:
    """Story 3."""
    told = words_of(visitor.get(SHEET, of="rifle section"))
    assert "How 24 rifle sections come about" in told
    assert "4 companies × 3 platoons × 2 rifle sections = 24 rifle sections" in told
    assert "by level 123 , by kind 123 , by company 123 ; they agree" in told
    assert "Platoon: rifle sections 3 until 1942-05 and 2 from 1942-06." in told


def test_every_total_adds_up_on_the_page(visitor: Visitor) -> None:
    seen = visitor.get(SHEET)
    told = words_of(seen)
    assert "24 rifle sections 10 240" in told
    assert "What each men 1 battalion command 12 12" in told
    assert "Together 123" in told


def test_stands_directly_under_the_root_have_no_multiplication(visitor: Visitor) -> None:
    told = words_of(visitor.get(SHEET, of="observer"))
    assert "How 2 observers come about" in told
    assert "2 directly under the battalion: no multiplication." in told


def test_a_body_is_opened_and_folded_by_its_address(visitor: Visitor) -> None:
    opened = visitor.get(SHEET, open="No 2 Company")
    assert (
        'aria-label="1 Platoon, infantry platoon, mid yellow, one bar, chevron, 20 men'
        in opened.text
    )
    assert "?open=No+2+Company+%2F+1+Platoon#chart" in opened.text
    folded = visitor.get(SHEET, open="")
    assert 'aria-label="1 Platoon, infantry platoon' not in folded.text
    assert 'aria-label="No 2 Company, infantry company, mid yellow' in folded.text


def test_an_amendment_stays_while_bodies_are_opened(visitor: Visitor) -> None:
    seen = visitor.get(SHEET, **{"number company": "3", "open": "No 1 Company"})
    assert "?number+company=3&amp;open=No+2+Company#chart" in seen.text
    assert 'name="open" value="No 1 Company"' in seen.text


def test_the_tree_says_the_same_as_the_chart(visitor: Visitor) -> None:
    seen = visitor.get(SHEET)
    tree = seen.text.split('<ul class="tree chart-tree">')[1].split("</section>")[0]
    told = " ".join(re.sub(r"<[^>]+>", " ", tree).split())
    assert told.count("71 men, 8 stands") == 4
    assert told.count("2 rifle sections") == 12


def test_the_table_has_a_line_for_every_body(visitor: Visitor) -> None:
    table = visitor.get(SHEET).text.split("All bodies</caption>")[1].split("</table>")[0]
    assert table.count("<tr>") == 1 + 1 + 4 + 12
    assert "<td>infantry company, royal blue, no bars, cross</td>" in table


def test_symbols_and_size_marks_are_explained(visitor: Visitor) -> None:
    told = words_of(visitor.get(SHEET))
    assert "anti-tank reconnaissance engineer signal headquarters supply" in told
    assert "squad section platoon company battalion regiment brigade" in told


def test_nothing_on_the_page_needs_a_style_or_script_of_its_own(visitor: Visitor) -> None:
    text = visitor.get(SHEET, **{"number company": "3"}).text
    assert " style=" not in text
    assert not re.search(r"<script(?! src=)", text)


WIDE = """\
format: 1
title: Wide
figures: {man: {}}
stands: {rifle: {base: none, figures: {man: 1}}}
formations:
  top:
    parts:
      - {of: company, number: 1-40}
      - {of: rifle, number: 1, theatre: islands}
  company: {echelon: company, parts: {platoon: 20}}
  platoon: {parts: {rifle: 3}}
raise: {formation: top, numbers: {company: 20}}
"""


def test_a_large_force_lists_only_what_is_opened(tmp_path: Path) -> None:
    seen = force_in(tmp_path, WIDE).get(SHEET, open="3 Company")
    told = words_of(seen)
    assert "Only what is opened is listed: the force has more than 41 bodies." in told
    assert 'class="more" href="/forces/marenz/organisation?open=4+Company#chart"' in seen.text


def test_of_very_many_bodies_those_beside_the_opened_one_are_listed(tmp_path: Path) -> None:
    text = WIDE.replace("1-40", "1-400").replace("company: 20}", "company: 300}")
    seen = force_in(tmp_path, text).get(SHEET, open="200 Company / 7 Platoon")
    assert words_of(seen).count("240 more are left out") == 1
    (drawn,) = re.findall(r"<text[^>]*>([^<]*more are left out[^<]*)</text>", seen.text)
    assert "240 more are left out" in drawn
    table = seen.text.split("All bodies</caption>")[1].split("</table>")[0]
    assert table.count("<tr>") == 1 + 1 + 60 + 20


def test_a_wide_range_is_typed(tmp_path: Path) -> None:
    visitor = force_in(tmp_path, WIDE)
    assert 'type="number" name="number company" value="20" min="1" max="40"' in (
        visitor.get(SHEET).text
    )
    seen = visitor.get(SHEET, **{"number company": "30"})
    assert ("Stands and labels", "1200", "1800") in rows(seen)
    assert "Goes" not in words_of(seen)
    assert "Comes: 21 Company; 22 Company;" in words_of(seen)
    assert "; and 2 more." in words_of(seen)


def test_a_theatre_may_be_chosen_and_left(tmp_path: Path) -> None:
    visitor = force_in(tmp_path, WIDE)
    seen = visitor.get(SHEET, theatre="islands")
    assert "Islands theatre instead of none" in words_of(seen)
    assert ("Stands and labels", "1200", "1201") in rows(seen)
    done = visitor.post(f"{SHEET}/accept", hidden_fields(seen, "accept"), seen=seen)
    assert "Theatre: was not said, is now islands" in words_of(done)
    left = visitor.get(SHEET, theatre="")
    assert "No theatre instead of islands" in words_of(left)


def test_a_number_that_nobody_chose_can_be_chosen_here(tmp_path: Path) -> None:
    text = WIDE.replace(", numbers: {company: 20}", "").replace("1-40", "1-3")
    visitor = force_in(tmp_path, text)
    seen = visitor.get(SHEET)
    assert "nobody chose" in words_of(seen)
    assert 'name="number company" value="2"' in seen.text
    seen = visitor.get(SHEET, **{"number company": "2"})
    assert "If this puts every stop right it is accepted; else nothing is written." in words_of(
        seen
    )
    done = visitor.post(f"{SHEET}/accept", hidden_fields(seen, "accept"), seen=seen)
    assert "Top of 120 stands" in words_of(done)


def test_a_force_with_nothing_left_open_says_so(tmp_path: Path) -> None:
    text = WIDE.replace("1-40", "4").replace(", numbers: {company: 20}", "")
    text = text.replace("      - {of: rifle, number: 1, theatre: islands}\n", "")
    assert "Nothing is left open in this force" in words_of(force_in(tmp_path, text).get(SHEET))


def test_a_force_without_a_raised_formation_shows_the_stop(tmp_path: Path) -> None:
    seen = force_in(tmp_path, WIDE.split("raise:", maxsplit=1)[0]).get(SHEET)
    assert seen.status_code == 200
    assert "Stop:" in words_of(seen)
    assert "<svg" in seen.text


def test_names_are_shown_as_text(tmp_path: Path) -> None:
    text = WIDE.replace("number: 1-40", "number: 2").replace("company: 20}", "}")
    text = text.replace("numbers: {}", "names: {company: ['<b>&\"x', 'B']}")
    seen = force_in(tmp_path, text).get(SHEET, open='<b>&"x')
    assert seen.status_code == 200
    assert '<b>&"' not in seen.text
    assert "<b>&lt;b&gt;&amp;&#34;x</b>" in seen.text


def test_two_bodies_of_one_name_keep_their_own_symbols(tmp_path: Path) -> None:
    text = WIDE.replace("number: 1-40", "number: 2").replace("numbers: {company: 20}", "XX")
    text = text.replace("XX", "names: {company: [Guard, Guard]}").replace(
        "platoon: 20", "platoon: 1"
    )
    stocked = (
        f"{text}stock stands: {{rifle: {{finished: 3}}}}\nbench: {{stages: [begun, finished]}}\n"
    )
    tree = force_in(tmp_path, stocked).get(SHEET).text.split('<ul class="tree chart-tree">')[1]
    first, second = tree.split("<b>Guard</b>")[:2]
    assert "stroke-dasharray" not in first[-900:]
    assert "stroke-dasharray" in second[-900:]


def test_a_part_with_quotes_in_its_name_can_be_amended(tmp_path: Path) -> None:
    """Browsers write such a field name otherwise where a form is sent in parts."""
    text = WIDE.replace("company: 20", "COMPANY").replace("of: company", "of: COMPANY")
    text = text.replace("  company:", "  COMPANY:").replace("{COMPANY}", "{COMPANY: 20}")
    visitor = force_in(tmp_path, text.replace("COMPANY", "'the \"first\" & % company'"))
    seen = visitor.get(SHEET, **{'number the "first" & % company': "3"})
    done = visitor.post(f"{SHEET}/accept", hidden_fields(seen, "accept"), seen=seen)
    assert "Written into force.yaml" in words_of(done)
    assert "Top of 180 stands" in words_of(done)
