"""What phones told and doesn't fit is kept, and named on reading."""

from dataclasses import replace

from paradestate.core.finding import Finding, Level
from paradestate.core.play.event import Opened, Played, Subject, Told
from paradestate.core.play.game_record import game_records
from paradestate.core.play.telling_finding import MOST_NAMED, telling_findings
from tests.core.play.test_arrangement import ALL, PLATOON
from tests.core.play.test_game_record import strike, written

OPENED = Opened(game="whole-day attack")


def found(*said: tuple[str, str, str], struck: tuple[str, ...] = ()) -> list[Finding]:
    tellings = [Told(subject=Subject(aspect, name), value=value) for aspect, name, value in said]
    strikes = [strike(each, because="why") for each in struck]
    (record,) = game_records([*written(OPENED, *tellings), *strikes], force="")
    return list(telling_findings(record, ALL))


def test_what_fits_is_not_named() -> None:
    assert not found(
        ("out", f"{PLATOON} / 1 Section", "out"),
        ("out", "field battery / 1 fire mission", "out"),
        ("turn", "", "3"),
        ("arrived", PLATOON, "3"),
        ("missions used", "field battery", "2"),
        ("after the game", f"{PLATOON} / 1 Section", "lost"),
        ("no such thing", "nobody", ""),
    )


def test_unknown_things_and_states_are_named_with_what_puts_them_right() -> None:
    name, aspect = found(("out", "No 1 Company / 1 Plaatoon", "out"), ("ouut", PLATOON, "yes"))
    assert (name.level, name.code) == (Level.WARN, "told-unfit")
    assert name.message == (
        "Told (1): out, No 1 Company / 1 Plaatoon: out. No stand, body or entry is called "
        "'No 1 Company / 1 Plaatoon'."
    )
    assert name.effect.endswith("nothing is worked out from it.")
    assert name.hint == (
        f"Did you mean '{PLATOON}'? Tell it anew; or strike it out with a reason: play FOLDER "
        "strike 1 --because TEXT."
    )
    assert "No thing to be told is called 'ouut'" in aspect.message


def test_a_number_that_is_none_counts_as_nought() -> None:
    for value in ("some", "-1", "\N{SUPERSCRIPT TWO}", "9" * 5000):
        (odd,) = found(("missions used", "field battery", value))
        assert odd.effect.endswith("as a number it counts as nought.")
        assert len(odd.message) < 600


def test_more_missions_than_were_bought_are_named() -> None:
    (taken,) = found(("missions taken", "field battery", "3"))
    assert "3 missions of field battery would be there; 2 were bought." in taken.message
    (used,) = found(("missions used", "field battery", "3"))
    assert "3 missions of field battery would be used; 2 were taken." in used.message


def test_a_stand_that_is_attached_to_itself_or_loaded_on_itself_is_named() -> None:
    (attached,) = found(("attached to", PLATOON, PLATOON))
    assert f"No section to attach is called '{PLATOON}'." in attached.message
    truck = next(each.name for each in ALL.made.stands if each.pattern == "truck")
    (loaded,) = found(("loaded on", truck, truck))
    assert "would be loaded on itself" in loaded.message
    assert loaded.effect.endswith("nothing is moved because of it.")


def test_what_is_struck_out_or_replaced_is_nothing_to_be_put_right() -> None:
    assert found(("out", "nobody", "out"), struck=("1",)) == []
    nobody = Subject("out", "nobody")
    lines = (Told(subject=nobody, value="out"), Told(subject=nobody, value="", over=("1",)))
    (record,) = game_records(written(OPENED, *lines), force="")
    assert list(telling_findings(record, ALL)) == []


def test_of_thousands_the_first_are_named_and_that_there_are_more() -> None:
    many = [("out", f"nobody {number}", "out") for number in range(2000)]
    named = found(*many)
    assert len(named) == MOST_NAMED + 1
    assert named[-1].message == f"More than {MOST_NAMED} things that were told don't fit."
    assert len(found(*many[:MOST_NAMED])) == MOST_NAMED


def test_what_is_told_can_t_break_the_line_and_says_who_told_it() -> None:
    told = Told(subject=Subject("out", "a\n\N{RIGHT-TO-LEFT OVERRIDE}b" * 300), value="\x1b[2J")
    opening, line = written(OPENED, told)
    by_ben = Played(game="g", event=told, device="Ben's phone")
    (record,) = game_records((opening, replace(line, id="2f0c9b2e", played=by_ben)), force="")
    (odd,) = telling_findings(record, ALL)
    assert odd.message.startswith("Told by Ben's phone (2f0c9b2e): out, a / ")
    assert odd.message.isprintable()
    assert len(odd.message) < 600
