"""An evening through its page: line by line, each once, and nothing told before its time."""

import re
from collections.abc import Mapping
from html import unescape
from pathlib import Path
from uuid import uuid4

import pytest
from httpx2 import Response

from paradestate.core.play.event import Committed, Rolled, Spoken, Subject, Told
from paradestate.core.play.game_record import GameRecord
from paradestate.journeys.game.games import games_of
from paradestate.journeys.game.pen import Line, Pen, write_lines
from paradestate.journeys.game.roll_secret import kept_secret
from paradestate.journeys.memory import Memory
from tests.journeys.conftest import written
from tests.web.grounds import NOW
from tests.web.visitor import SeenForm, Visitor, forms_of, words_of

GAME = "night attack"
BERT = {"witness": "Bert"}
MEMORY = Memory()
OWN = """\
format: 1
title: Test
stands: {a: {base: none}, cart: {base: none, carries: 2}}
formations: {top: {parts: {platoon: 3}}, platoon: {parts: {a: 2, cart: 1}}}
raise: {formation: top}
games:
  night attack: {allowance: 12 + 2d6, posture: attack}
  night defence: {allowance: 14, posture: defence}
supporting troops:
  tanks: {cost: {2: 9}, availability: {roll: 1d12, allows: {1-4: 0, 5-12: all}}}
  guns: {cost: {1: 4, 2: 7, 3: 10}, availability: {roll: 1d12, allows: {1-2: 0, 3-8: 1, 9-12: all}}}
  sections: {cost: {1: 3, 2: 5}, attach: {to: platoon, most per host: 1}, each: {cart: 1}}
  mortars: {cost: {2: 5}, place: off table}
loss limits: [{of: platoon, at: {1: shaken}}]
worths: {tanks: {2: 10}, guns: {1: 4, 2: 8}, sections: {2: 5}}
"""
DECLARED = f"{OWN}asking: all declared first\n"
UNWORTHY = OWN[: OWN.index("worths:")]


@pytest.fixture(scope="module")
def shared(tmp_path_factory: pytest.TempPathFactory) -> Visitor:
    """A small force, read once for all: every test opens a game of its own."""
    return Visitor(written(tmp_path_factory.mktemp("evening") / "own", OWN))


@pytest.fixture
def visitor(shared: Visitor, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Visitor:
    monkeypatch.setenv("XDG_STATE_HOME", str(tmp_path / "state"))
    return shared


@pytest.fixture(scope="module")
def at_first(shared: Visitor) -> Response:
    """A game whose allowance isn't rolled."""
    return begun(shared)


@pytest.fixture(scope="module")
def seen(shared: Visitor) -> Response:
    """A game of which the allowance is rolled."""
    return with_allowance(shared)


def records(visitor: Visitor) -> tuple[GameRecord, ...]:
    return games_of(visitor.folder, today=NOW.date(), memory=MEMORY).records


def pen(visitor: Visitor) -> Pen:
    """Somebody else who writes into the same game."""
    return Pen(
        folder=visitor.folder,
        today=NOW.date(),
        now=NOW,
        new_id=lambda: str(uuid4()),
        device="another phone",
    )


def form_of(seen: Response, slip: str) -> SeenForm:
    """The form of that name, as a browser would send it."""
    (form,) = [each for each in forms_of(seen) if each.fields.get("slip") == slip]
    return form


def sent(
    visitor: Visitor, seen: Response, *, slip: str, filled: Mapping[str, str] | None = None
) -> Response:
    """Fills a form in and sends it."""
    form = form_of(seen, slip)
    address = form.action.partition("#")[0]
    return visitor.post(address, {**form.fields, **(filled or {})}, seen=seen)


def resent(visitor: Visitor, seen: Response, *, slip: str, filled: Mapping[str, str]) -> str:
    """Sends the same form once more, and tells where that leads to."""
    form = form_of(seen, slip)
    (token, *_) = re.findall(r'name="token" value="([0-9a-f]+)"', seen.text)
    answer = visitor.client.post(
        form.action.partition("#")[0],
        data={"token": token, **form.fields, **filled},
        follow_redirects=False,
    )
    return f"{seen.url.join(answer.headers['location'])}"


def begun(visitor: Visitor, *, opponent: str = "Ommerath") -> Response:
    seen = visitor.get("evening", new="yes")
    return sent(visitor, seen, slip="start", filled={"game": GAME, "opponent": opponent})


def rolled(visitor: Visitor, seen: Response, *faces: int, **filled: str) -> Response:
    every = {f"face/{place}": f"{face}" for place, face in enumerate(faces, start=1)}
    return sent(visitor, seen, slip="roll", filled={**every, **filled})


def with_allowance(visitor: Visitor) -> Response:
    return rolled(visitor, begun(visitor), 6, 2, **BERT)


def asked_for(visitor: Visitor, seen: Response, *, what: str) -> Response:
    """The page with the form for a roll that isn't what is best."""
    (game,) = set(re.findall(r'name="of" value="([^"]+)"', seen.text))
    return visitor.get("evening", of=game, ask=what)


def number_of_lines(visitor: Visitor) -> int:
    return sum(len(each.lines) for each in records(visitor))


def struck(visitor: Visitor, seen: Response, *, line: str, because: str) -> Response:
    """Goes by the link of a line, and strikes it out."""
    (link,) = {
        each for each in re.findall(r'href="([^"#]*strike=[^"#]*)', seen.text) if line in each
    }
    return sent(visitor, visitor.get(unescape(link)), slip="strike", filled={"because": because})


def stops_of(seen: Response) -> list[str]:
    found = re.findall(r'<li class="stop">.*?</span> (.*?)</p>', seen.text)
    return [unescape(each) for each in found]


def test_an_evening_from_its_terms_to_its_end(visitor: Visitor) -> None:
    """Story 15 through the page, every form of it sent twice."""
    seen = visitor.get("evening", new="yes")
    assert "Fix the terms" in words_of(seen)
    for slip, filled, words in (
        ("start", {"game": GAME, "opponent": "Ommerath"}, "Now: Roll the allowance: 12 + 2d6."),
        ("roll", {"face/1": "6", "face/2": "2", **BERT}, "20 points left 20 to spend."),
        ("roll", {"face/1": "7"}, "Now: Tanks: take all of the 2"),
        ("take", {"number": "2"}, "11 points left 20 to spend, less 9 for supporting troops."),
        ("roll", {"face/1": "9"}, "How many of 2 x guns?"),
        ("take", {"number": "0"}, "Refused or declined: 2 x guns."),
        ("buy", {}, "Now: Buy nothing more"),
        ("note", {"text": "two companies looked alike"}, "two companies looked alike"),
        (
            "end",
            {"outcome": "a draw", "held": "bridge=Marenz, hill=Ommerath", "time": "22:15"},
            "a draw; Marenz held bridge and Ommerath held hill.",
        ),
    ):
        before = seen
        seen = sent(visitor, before, slip=slip, filled=filled)
        assert (seen.status_code, words in words_of(seen)) == (200, True), (slip, words_of(seen))
        lines = number_of_lines(visitor)
        assert (resent(visitor, before, slip=slip, filled=filled), lines) == (
            f"{seen.url}",
            number_of_lines(visitor),
        )
    assert "The game is over" in words_of(seen)


def test_every_form_has_an_id_of_its_own(seen: Response) -> None:
    ids = [each.fields["entry"] for each in forms_of(seen) if "slip" in each.fields]
    assert len(ids) == len(set(ids)) > 6


def test_dice_that_cant_be_are_stopped_beside_the_form_and_what_was_typed_stays(
    visitor: Visitor, at_first: Response
) -> None:
    seen = at_first
    lines = number_of_lines(visitor)
    for faces, filled, stop in (
        ((6, 9), {}, "9 on 1d6."),
        ((6,), {"face/2": ""}, "Die 2 isn't filled in."),
        ((6, 2), {"total": "20"}, "Both dice and a total are filled in."),
        ((), {"total": "40"}, "12 + 2d6 gives 14 to 24; 40 was entered."),
        ((), {}, "12 + 2d6 is 2 dice; 0 numbers were entered."),
    ):
        bad = rolled(visitor, seen, *faces, **filled, **BERT)
        assert (bad.status_code, stops_of(bad)) == (422, [stop])
        assert form_of(bad, "roll").fields["witness"] == "Bert"
        assert form_of(bad, "roll").fields["face/1"] == (f"{faces[0]}" if faces else "")
    assert (
        "Die 1: "
        in stops_of(sent(visitor, seen, slip="roll", filled={"face/1": "six", "face/2": "2"}))[0]
    )
    assert number_of_lines(visitor) == lines


def test_a_form_gone_back_to_and_changed_is_another_line_and_the_first_roll_counts(
    visitor: Visitor,
) -> None:
    """What was typed is neither lost nor taken for what was sent before."""
    before = with_allowance(visitor)
    rolled(visitor, before, 3)
    seen = rolled(visitor, before, 12)
    said = words_of(seen)
    assert "Tanks was rolled already (3, refused) at" in said
    assert "Strike one of them out with a reason, in the record below." in said
    assert "the first roll counts" in said
    again = "It was rolled for already: that roll counts"
    assert again in words_of(visitor.get("evening?ask=tanks%3D2"))
    assert again not in words_of(before)
    assert [type(each.event) for each in records(visitor)[-1].lines].count(Rolled) == 3


def test_a_line_is_struck_out_with_its_reason_and_stays(visitor: Visitor) -> None:
    seen = rolled(visitor, with_allowance(visitor), 3)
    slip = records(visitor)[-1].lines[-1].id
    assert stops_of(struck(visitor, seen, line=slip, because="")) != []
    seen = struck(visitor, seen, line=slip, because="the die was cocked")
    said = words_of(seen)
    assert "Struck out, the die was cocked: rolled 3 for 2 x tanks (1d12), 3 in all." in said
    assert "Struck out: the die was cocked" in said
    assert "Now: Ask for 2 x tanks" in said
    record = seen.text.partition('<ol class="rolls">')[2].partition("</ol>")[0]
    assert record.count('<li class="struck">') == 1
    opening = records(visitor)[-1].opening.id
    asked = visitor.get(f"evening?strike={opening}")
    assert "The whole game goes with it" in words_of(asked)
    gone = struck(visitor, seen, line=opening, because="the wrong game")
    assert gone.status_code == 200
    assert opening not in {each.opening.id for each in records(visitor)}


def test_the_secret_of_the_machine_is_on_no_page_before_it_is_told(visitor: Visitor) -> None:
    seen = sent(visitor, with_allowance(visitor), slip="bind")
    line = records(visitor)[-1].lines[-1]
    secret = kept_secret(line.id)
    assert secret is not None
    assert isinstance(line.event, Committed)
    assert line.event.digest in words_of(seen)
    looked_at = ("evening", "journal", "parade", "files", "table/entries.json", "table/force.json")

    def is_told() -> bool:
        pages = [visitor.get(each, game=records(visitor)[-1].id) for each in looked_at]
        told = {secret.hex(), secret.hex().upper()}
        return any(each in page.text for each in told for page in pages)

    assert not is_told()
    assert (
        stops_of(sent(visitor, seen, slip="word", filled={"word": " "}))[0]
        == "'' is no word to roll with."
    )
    again = sent(visitor, seen, slip="free-bind", filled={"what": "who begins", "dice": "1d6"})
    assert stops_of(again) == ["The machine is bound for tanks already."]
    assert "Let the opponent say a word, below." in words_of(again)
    seen = sent(visitor, seen, slip="word", filled={"word": "heron", "later": "yes"})
    assert "Heard the opponent's word 'heron'." in words_of(seen)
    assert "by the machine" in words_of(seen)
    assert not is_told()
    seen = sent(visitor, seen, slip="reveal")
    assert secret.hex() in seen.text
    assert "the secret is told; it agrees." in words_of(seen)
    assert is_told()


def test_a_word_whose_roll_was_cut_short_is_gone_on_with(visitor: Visitor) -> None:
    seen = sent(visitor, with_allowance(visitor), slip="bind")
    record = records(visitor)[-1]
    spoken = Spoken(commitment=record.lines[-1].id, word="heron")
    write_lines(pen(visitor), [Line(event=spoken, game=record.id)])
    seen = visitor.get("evening", of=record.id)
    assert "The word is said: heron Make the roll" in words_of(seen)
    seen = sent(visitor, seen, slip="word")
    assert "Rolled" in words_of(seen)
    assert isinstance(records(visitor)[-1].lines[-2].event, Rolled)


def test_what_is_allowed_is_arranged_and_what_cant_be_is_said_beside_its_form(
    visitor: Visitor,
) -> None:
    seen = with_allowance(visitor)
    seen = sent(visitor, seen, slip="buy-other", filled={"what": "sections=1"})
    assert "Taken: 1 x sections." in words_of(seen)
    loaded = {"subject": "1 Platoon / 1 A", "value": "sections / 1 cart"}
    seen = sent(visitor, seen, slip="arrange-2", filled=loaded)
    assert '<option value="sections / 1 cart"' in seen.text
    bad = sent(visitor, seen, slip="buy-other", filled={"what": "mortars=2, sections=2"})
    assert stops_of(bad) != []
    host = "1 Platoon"
    attached = {"subject": "sections", "value": host}
    seen = sent(visitor, seen, slip="arrange-1", filled=attached)
    said_now = f"Attached to, sections: {host}."
    assert said_now in words_of(seen)
    bad = sent(
        visitor,
        seen,
        slip="arrange-any",
        filled={"aspect": "reserve", "subject": "nobody", "value": "yes"},
    )
    assert (bad.status_code, "nobody" in stops_of(bad)[0]) == (422, True)
    assert form_of(bad, "arrange-any").fields["value"] == "yes"
    out = {"aspect": "out", "subject": "2 Platoon / 1 A", "value": "yes"}
    told = words_of(sent(visitor, seen, slip="arrange-any", filled=out))
    assert "Losses and their limits 2 Platoon: 1 of 3 out: shaken." in told
    bad = sent(visitor, seen, slip="arrange-any", filled={"aspect": "out", "turn": "soon"})
    assert stops_of(bad)[0].startswith("Turn: ")
    sent(visitor, seen, slip="arrange-any", filled={"aspect": "turn", "value": "3"})
    stands = words_of(visitor.get("evening"))
    assert "How it stands: 4 things told" in stands
    assert ", turn" not in stands


def test_what_two_devices_tell_differently_is_settled_with_one_press(visitor: Visitor) -> None:
    with_allowance(visitor)
    record = records(visitor)[-1]
    subject = Subject("ammunition", "1 Platoon")
    tellings = [
        Line(event=Told(subject=subject, value=each), game=record.id) for each in ("2", "1")
    ]
    write_lines(pen(visitor), tellings)
    seen = visitor.get("evening")
    assert "Told differently: 1 Platoon, ammunition" in words_of(seen)
    seen = sent(visitor, seen, slip="settle-1", filled={"value": "1"})
    assert "Told differently" not in words_of(seen)
    assert records(visitor)[-1].board[subject].values == ("1",)


def test_a_second_game_is_warned_of_and_both_are_reached(visitor: Visitor) -> None:
    begun(visitor)
    first = records(visitor)[-1]
    assert f"Back to the game that goes on: {GAME} against Ommerath" in words_of(
        visitor.get("evening", new="yes")
    )
    seen = begun(visitor, opponent="Kelmar")
    assert "Another game goes on:" in words_of(seen)
    assert "a link below leads to it" in words_of(seen)
    assert f"evening?of={first.id[:8]}" in seen.text
    assert records(visitor)[-1].id != first.id
    assert f"A game goes on: {GAME} against Kelmar" in words_of(visitor.get("parade"))


def test_terms_that_cant_be_agreed_are_stopped_and_kept(visitor: Visitor) -> None:
    seen = visitor.get("evening", new="yes", game="night defence", set="platoon=2")
    assert '<option value="night defence" selected>' in seen.text
    assert form_of(seen, "start").fields["set"] == "platoon=2"
    bad = sent(
        visitor, seen, slip="start", filled={"game": "duel", "opponent": "Kelmar", "date": "never"}
    )
    assert (bad.status_code, form_of(bad, "start").fields["opponent"]) == (422, "Kelmar")
    assert len(stops_of(bad)) == 1
    assert "--" not in words_of(bad)


def test_choosing_leads_to_the_evening_with_its_terms(visitor: Visitor) -> None:
    seen = visitor.get("choosing", game="night defence")
    (link,) = re.findall(r'href="([^"]*evening[?][^"]*)"', seen.text)
    opened = visitor.get(unescape(link))
    assert '<option value="night defence" selected>' in opened.text


def test_a_roll_of_one_s_own_accord_and_one_that_the_files_don_t_know(visitor: Visitor) -> None:
    seen = asked_for(visitor, with_allowance(visitor), what="guns=3")
    assert "Roll for 3 x guns 1d12 for 10 points" in words_of(seen)
    seen = rolled(visitor, seen, 10)
    assert "say how many you take" in words_of(seen)
    seen = asked_for(visitor, seen, what="dragons=3")
    seen = sent(visitor, seen, slip="take", filled={"number": "2"})
    assert "Asked for 3 x guns, 3 allowed, 2 taken." in words_of(seen)
    unknown = asked_for(visitor, seen, what="dragons=3")
    assert "dragons" in stops_of(unknown)[0]
    free = {"what": "who begins", "dice": "2d6", "faces": "5 4"}
    assert "Rolled 5 and 4 for who begins (2d6), 9 in all." in words_of(
        sent(visitor, seen, slip="free", filled=free)
    )


def test_a_game_that_isnt_there_is_said_so(visitor: Visitor) -> None:
    seen = visitor.get("evening", of="nothing")
    assert "Fix the terms of one below." in words_of(seen)
    assert stops_of(seen) == ["No game that is open has an id that begins with 'nothing'."]
    page = begun(visitor)
    sent(visitor, page, slip="end")
    late = rolled(visitor, page, 6, 2)
    assert (late.status_code, "This game is over." in stops_of(late)[0]) == (422, True)
    assert "The form held allowance, 6 and 2." in words_of(late)


def test_what_nobody_would_type_is_written_nowhere(visitor: Visitor, seen: Response) -> None:
    lines = number_of_lines(visitor)
    for slip, filled, status in (
        ("end", {"outcome": "x" * 4001}, 400),
        ("end", {"entry": "1"}, 400),
        ("free", {"what": "x", "dice": "9d999999", "faces": "1"}, 422),
    ):
        assert sent(visitor, seen, slip=slip, filled=filled).status_code == status
    assert number_of_lines(visitor) == lines


def test_where_all_is_declared_first_it_is_named_before_any_of_it_is_rolled(
    tmp_path: Path,
) -> None:
    folder = written(tmp_path / "own", DECLARED)
    own = Visitor(folder)
    seen = sent(own, own.get("evening"), slip="start", filled={"game": "night defence"})
    assert "Name all that you will ask for" in words_of(seen)
    seen = sent(own, seen, slip="declare", filled={"ask/guns": "guns=1", "ask/tanks": "tanks=2"})
    assert "Still to be rolled for: 2 x tanks and 1 x guns." in words_of(seen)
    assert "Roll for 2 x tanks 1d12" in words_of(seen)
    seen = rolled(own, seen, 7)
    assert "How many of 2 x tanks?" in words_of(seen)


def test_without_worths_it_is_chosen_by_hand(tmp_path: Path) -> None:
    folder = written(tmp_path / "own", UNWORTHY)
    own = Visitor(folder)
    seen = sent(own, own.get("evening"), slip="start", filled={"game": "night defence"})
    assert "What is best isn't worked out" in words_of(seen)
    assert "evening?of=" in seen.text
    assert "ask=guns%3D1" in seen.text


def test_a_game_that_the_folder_offers_no_more_keeps_its_record(tmp_path: Path) -> None:
    folder = written(tmp_path / "own", OWN)
    own = Visitor(folder)
    with_allowance(own)
    (folder / "force.yaml").write_text(OWN.replace(GAME, "dawn attack"), "utf-8")
    seen = own.get("evening")
    assert "Night attack against Ommerath" in words_of(seen)
    assert "points left" not in words_of(seen)
    assert "seen by Bert" in words_of(seen)
    assert stops_of(seen) != []
