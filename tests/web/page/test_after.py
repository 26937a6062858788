"""After a game, as a browser without JavaScript sees it."""

import re
import shutil
from pathlib import Path

import pytest
from httpx2 import Response

from paradestate.core.journal_entry import EntryKind
from paradestate.core.play.event import Noted, Subject, Told
from paradestate.web.application import PAGES
from tests.journeys.logging_to import logged
from tests.journeys.played_losses import CAMPAIGN, SECTIONS, out, play, with_campaign
from tests.web.server import marenz
from tests.web.visitor import NOW, Visitor, words_of

DAY = NOW.date()
TANK = "light tanks / 1 light tank"
FIRST, SECOND, THIRD = (
    f"roll/{name.replace(' ', '%20').replace('/', '%2F')}" for name in SECTIONS[:3]
)
SEEN = {"roller": "Ann", "witness": "Bert"}


@pytest.fixture(scope="module")
def played(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A force with three sections and a tank out of action."""
    folder = with_campaign(marenz(tmp_path_factory.mktemp("after")))
    play(folder, *map(out, SECTIONS[:3]), out(TANK), on=DAY)
    return folder


@pytest.fixture
def folder(played: Path, tmp_path: Path) -> Path:
    return shutil.copytree(played, tmp_path / "marenz")


@pytest.fixture
def visitor(folder: Path) -> Visitor:
    return Visitor(folder)


def said(visitor: Visitor, **query: str) -> str:
    return words_of(visitor.get("after", **query))


def rolled(visitor: Visitor, **faces: str) -> Response:
    seen = visitor.get("after")
    fields = {
        name: faces.get(word, "") for word, name in (("a", FIRST), ("b", SECOND), ("c", THIRD))
    }
    return visitor.fill(seen, "after/roll#written", filled={**fields, **SEEN})


def test_the_answer_comes_first_then_the_odds_and_the_dice(visitor: Visitor) -> None:
    """Three sections at 2/3 each, one of which may be sent up."""
    text = said(visitor)
    assert "complete if all come back; short of 3 rifle sections if none comes back." in text
    assert (
        "legal with nobody sent up in 8/27, 30 in 100 cases. 3 stands to roll for; 2 expected"
        in text
    )
    assert "Complete with all that may be sent up: 20/27, 74 in 100." in text
    assert "2 4/9, 44 in 100 20/27, 74 in 100 19/27, 70 in 100" in text
    assert "1 Platoon, 1 Section 1d6: back on 3 or more, 2/3, 67 in 100" in text
    assert "Supporting troops out of action: light tanks, 1 light tank (out of action)." in text
    assert "rifle section 24 3 3 0 0 0 0 21 24 0 to 3" in text


def test_dice_of_a_form_are_written_with_who_saw_them(visitor: Visitor) -> None:
    text = words_of(rolled(visitor, a="6", b="1"))
    assert "1 Platoon, 1 Section: 6 on 1d6 rolled by Ann, seen by Bert" in text
    assert "1 Section: recovered No 1 Company, 1 Platoon, 1 Section: promoted" in text
    assert "1 Platoon, 2 Section: 1 on 1d6" in text
    assert "short of 1 rifle section for sure; short of 2 rifle sections if none comes back" in text
    assert "promoted once" in text


def test_a_form_that_is_sent_twice_is_written_once_and_a_wrong_one_not_at_all(
    visitor: Visitor,
) -> None:
    wrong = rolled(visitor, a="6", b="seven")
    assert wrong.status_code == 422
    assert "'seven' isn't what dice show." in words_of(wrong)
    assert 'value="6"' in wrong.text
    seen = visitor.get("after")
    assert "9 on 1d6" in words_of(rolled(visitor, a="9"))
    texts = {
        words_of(visitor.fill(seen, "after/roll#written", filled={FIRST: "2", **SEEN}))
        for _ in range(2)
    }
    assert len(texts) == 1
    assert texts.pop().count("seen by Bert") == 1


def test_what_no_dice_decide_is_told(visitor: Visitor) -> None:
    seen = visitor.get("after")
    lost = visitor.fill(seen, "after/tell#who", filled={"word": "lost"})
    assert "rifle section out of action lost" in words_of(lost)
    assert "short of 1 rifle section for sure" in words_of(lost)
    replaced = visitor.fill(lost, "after/tell#who", filled={"word": "replaced"})
    assert "May still be sent up" not in words_of(replaced)
    refused = visitor.post("after/tell", {"entry": NEW, "stand": SECTIONS[5], "word": "lost"})
    assert (refused.status_code, "it wasn't out of action" in words_of(refused)) == (422, True)


NEW = "10000000-0000-4000-8000-000000000009"


def test_what_was_ticked_on_paper_is_typed_in(visitor: Visitor) -> None:
    seen = visitor.get("after")
    fields: dict[str, str | list[str]] = {
        "entry": NEW,
        "stand": list(SECTIONS[3:5]),
        "word": "captured",
    }
    text = words_of(visitor.post("after/tell", fields, seen=seen))
    assert text.count("captured lost") == 2
    assert "short of 2 rifle sections for sure" in text


def test_a_slip_is_struck_out_with_its_reason_and_what_followed(visitor: Visitor) -> None:
    answer = rolled(visitor, a="6")
    struck = visitor.fill(answer, "after/strike#written", filled={"because": "read upside down"})
    text = words_of(struck)
    assert "Struck out: read upside down" in text
    assert "3 stands to roll for" in text
    assert len(re.findall(r"<s>", struck.text)) == 3
    silent = visitor.fill(struck, "after/strike#written", filled={"because": ""})
    assert (silent.status_code, "struck out with its reason" in words_of(silent)) == (422, True)


def test_stands_are_told_by_company_and_of_another_game(visitor: Visitor, folder: Path) -> None:
    assert "No 1 Company 8 3 3 0 0 0 0 5 8 0 to 3" in said(visitor, by="company")
    play(folder, start=1000, on=DAY)
    text = said(visitor)
    assert "Nothing is told of anybody in this game." in text
    assert "Missing since games before" in text
    first = re.search(r'<option value="([0-9a-f-]{36})"', visitor.get("after").text)
    assert first is not None
    text = said(visitor, of=first[1], next="whole-day attack")
    assert "Whole-day attack: complete if all come back" in text
    told = visitor.post(
        "after/tell", {"entry": NEW, "game": first[1], "stand": SECTIONS[0], "word": "lost"}
    )
    assert told.url.params["of"] == first[1]
    unknown = visitor.get("after", of="ffff")
    assert (unknown.status_code, "No game's id begins with" in words_of(unknown)) == (422, True)
    assert "tournament" in said(visitor, next="tournament")


def test_without_a_campaign_it_says_what_to_write_and_where(visitor: Visitor, folder: Path) -> None:
    (folder / "campaign.yaml").unlink()
    text = said(visitor)
    assert "campaign: recovery: rifle section: {roll: 1d6, on: 3 or more, promoted on: 6}" in text
    assert "such as campaign.yaml" in text
    assert "complete, if those taken as back are back." in text
    assert 'class="slip unsaid noprint"' in visitor.get("after").text
    assert "Nobody waits for a roll." in text
    with_campaign(folder, CAMPAIGN.replace("    rifle section", "    observer"))
    text = said(visitor)
    assert "no line under `recovery` is about rifle section, so 3 rifle sections" in text


def test_before_any_game_and_with_a_stop_nothing_is_told(tmp_path: Path) -> None:
    visitor = Visitor(marenz(tmp_path))
    assert "No game of this force was written down yet" in said(visitor)
    assert "campaign: recovery:" in said(visitor)
    refused = visitor.post("after/roll", {"entry": NEW, "roll/x": "3"}, seen=visitor.get("files"))
    assert refused.status_code == 422
    with_campaign(tmp_path / "marenz", "campaign: {replacements: {nobody: 1}}\n")
    assert "Nothing can be counted until this is put right." in said(visitor)


def test_it_stands_after_the_papers_in_the_index() -> None:
    paths = [page.path for page in PAGES]
    assert paths.index("papers") < paths.index("after")


def to_repair(name: str, what: str) -> Told:
    return Told(subject=Subject("to repair", name), value=what)


@pytest.fixture
def broken(folder: Path) -> Visitor:
    """A game that left two sections to be repaired, one of which the journal knows."""
    logged(folder, EntryKind.RECEIVED, stand=SECTIONS[0], on=DAY)
    two = (to_repair(SECTIONS[0], "bayonet snapped"), to_repair(SECTIONS[1], "base bent"))
    play(folder, *two, Noted(text="rain all day"), start=3000, on=DAY)
    return Visitor(folder)


def test_what_is_to_be_repaired_goes_to_the_bench_once_and_is_struck_out_again(
    broken: Visitor,
) -> None:
    seen = broken.get("after")
    assert "to repair No 1 Company, 1 Platoon, 1 Section bayonet snapped" in words_of(seen)
    assert "Noted to be remembered of this game rain all day" in words_of(seen)
    fields = {"stand": SECTIONS[0], "wanted": "2026-03-19", "to": "painted"}
    done = [broken.fill(seen, "after/bench#repairs", filled=fields) for _ in range(2)]
    assert [each.status_code for each in done] == [200, 200]
    text = words_of(done[1])
    assert "1 Section Wanted on 19 March 2026: bayonet snapped Strike out" in text
    assert "2 Section base bent" in text
    struck = broken.fill(done[1], "after/strike#repairs", filled={"because": "it was another"})
    assert "1 Section bayonet snapped" in words_of(struck)
    assert "Wanted on 19 March" not in words_of(struck)


def test_a_form_for_repairs_that_is_refused_keeps_what_was_typed(broken: Visitor) -> None:
    seen = broken.get("after")
    stands = list(SECTIONS[:2])
    both: dict[str, str | list[str]] = {"entry": NEW, "stand": stands, "wanted": ""}
    both["note"] = "glue first"
    undated = broken.post("after/bench", both, seen=seen)
    assert undated.status_code == 422
    assert "Nothing says by when the repairs are wanted." in words_of(undated)
    assert undated.text.count(" checked") == 2
    assert 'value="glue first"' in undated.text
    nobody = broken.post("after/bench", {"entry": NEW, "wanted": "2026-03-19"}, seen=seen)
    assert "No stand is ticked." in words_of(nobody)
    wrong = broken.post("after/bench", {**both, "wanted": "tomorrow"}, seen=seen)
    assert wrong.status_code == 422
    assert "Write the day, such as" in words_of(wrong)
    # the second isn't known to the journal; it hinders the first not
    half = broken.post("after/bench", {**both, "wanted": "2026-03-19"}, seen=seen)
    assert half.status_code == 422
    assert "Wanted on 19 March 2026: glue first" in words_of(half)
    assert "By the journal No 1 Company, 1 Platoon, 2 Section isn't based." in words_of(half)
    assert half.text.count(" checked") == 1
