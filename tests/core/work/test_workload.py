"""The workload of a force: milestones, works, and what is wrong with them."""

import datetime
from fractions import Fraction

from paradestate.core.finding import Level
from tests.core.work.works import MINUTES, in_repair, load_of, sound_load, stands_of

FEW = "bench: {minutes: {gun: {painted: 30}}}\n"


def test_what_is_owned_goes_first_to_what_most_milestones_wait_for() -> None:
    """Two officers: by the order of the files the second would be in the second company."""
    officers = "stock: {officer: {painted: 2}, rifleman: {painted: 9}}\n"
    organisation = """\
figures: {rifleman: {}, officer: {}}
stands:
  section: {base: 40 x 20 mm, figures: {officer: 1}}
  observer: {base: 30 mm disc, figures: {officer: 1}}
formations:
  company: {parts: {section: 1}}
  top: {parts: [{of: company, number: 1-3, usual: 3}, {of: observer, number: 1}]}
"""
    load = sound_load(MINUTES, officers, organisation=organisation)
    finished = [name for name, work in load.works.items() if work.is_finished]
    assert finished == ["1 Company / Section", "Observer"]
    assert list(load.works) == [
        "1 Company / Section",
        "2 Company / Section",
        "3 Company / Section",
        "Observer",
    ]


def test_without_any_minutes_there_is_no_order_of_work() -> None:
    load, (found,) = load_of()
    assert load is None
    assert (found.code, found.level) == ("bench-minutes-missing", Level.STOP)
    assert found.message == (
        "No minutes are given for officer and rifleman: 4 commands and 6 sections."
    )
    assert found.hint == (
        "Add minutes for foot to 'bench', such as minutes: {foot: {based: 20}}, "
        "or 'minutes per stand'."
    )
    assert found.place.path == ("raise",)


def test_minutes_that_are_missing_for_some_stands_make_a_doubtful_order() -> None:
    load, (found,) = load_of("bench: {minutes per stand: {section: 20}}\n")
    assert load is not None
    assert (found.code, found.level) == ("bench-minutes-missing", Level.WARN)
    assert found.message == "No minutes are given for officer and rifleman: 4 commands."
    assert found.effect.startswith("Their work counts as nothing")
    assert found.place.path == ("bench",)
    assert load.works["Command"].unknown == ("officer", "rifleman")


def test_nothing_is_missing_for_what_is_finished() -> None:
    stock = "stock stands: {command: {based: 4}, section: {based: 6}}\n"
    assert sound_load(FEW, stock).works["Command"].is_finished


def test_numbers_out_of_range_are_stops_with_the_place_where_they_stand() -> None:
    load, findings = load_of(
        "bench:\n"
        "  minutes: {foot: {painted: 5}}\n"
        "  playable: [{name: big, numbers: {company: 6, section: 9}}]\n"
    )
    assert load is None
    assert [(found.code, found.message) for found in findings] == [
        ("milestone-number", "'big' has 6 x company; the organisation has 4 at most."),
        ("milestone-number", "'big' has 9 x section; the organisation has 2 at most."),
    ]
    assert findings[0].place.line == 3


def test_a_part_that_nothing_has_is_a_stop() -> None:
    _, (found,) = load_of(
        MINUTES + "  playable: [{name: guns, numbers: {platoon: 1}}]\n",
        "formations: {platoon: {parts: {section: 1}}}\n",
    )
    assert found.message == "'guns' has 1 x platoon; the organisation has no such part."
    assert found.hint == "Name a part, or take this out."


def test_a_must_have_that_is_left_out_is_named_with_its_minutes() -> None:
    """A command takes ten minutes, and there is one in each of two companies and one above them."""
    load, (found,) = load_of(
        MINUTES + "  playable: [{name: small force, numbers: {company: 2, command: 0}}]\n"
    )
    assert load is not None
    assert (found.code, found.level) == ("must-have-left-out", Level.WARN)
    assert found.message == (
        "'small force' leaves out 3 commands, which the list needs. Add 30 min?"
    )
    assert "1 Company / Command" not in stands_of(load, "small force")


def test_one_must_have_is_named_with_its_article() -> None:
    _, (found,) = load_of(
        MINUTES + "  playable: [{name: two, numbers: {company: 2, gun team: 0}}]\n",
        organisation="""\
figures: {rifleman: {}, gun: {sort: gun}}
stands:
  section: {base: 40 x 20 mm, figures: {rifleman: 4}}
  gun team: {base: 40 x 40 mm, figures: {gun: 1}}
formations:
  company: {parts: {section: 1}}
  top: {parts: [{of: company, number: 2-4, usual: 3}, {of: gun team, number: 1}]}
""",
    )
    assert found.message == "'two' leaves out the gun team, which the list needs. Add 30 min?"


def test_a_stop_of_the_organisation_stands_in_the_way_of_milestones() -> None:
    """The numbers of a game lead to a second part with a range of its own."""
    load, findings = load_of(
        MINUTES,
        "games: {raid: {posture: attack, numbers: {section: 3}}}\n",
        organisation="""\
figures: {rifleman: {}}
stands: {section: {base: 40 x 20 mm, figures: {rifleman: 4}}}
formations:
  company: {parts: [{of: section, number: 1-2, usual: 1}]}
  guard: {parts: [{of: section, number: 3-4, usual: 3}]}
  top: {parts: {company: 1, guard: 1}}
""",
    )
    assert load is None
    assert {found.code for found in findings} >= {"number-outside-range"}


def test_what_is_in_repair_is_wanted_by_its_day_while_it_is_unfinished() -> None:
    day = datetime.date(2026, 12, 10)
    later = day + datetime.timedelta(days=7)
    repairs = (
        in_repair("2 Company / 1 Section", wanted=later),
        in_repair("2 Company / 2 Section", wanted=day),
        in_repair("1 Company / 1 Section", wanted=day, note="bayonet snapped"),
        in_repair("1 Company / Command", wanted=day),
        in_repair("9 Company / Command", wanted=day),
    )
    whole = "stock: {officer: {painted: 2}, rifleman: {painted: 2}}\n"
    load = sound_load(MINUTES, whole, repairs=repairs)
    names = [(each.name, each.stands, each.weight) for each in load.repairs]
    assert names == [
        (
            "repairs for 10 December 2026",
            ("2 Company / 2 Section", "1 Company / 1 Section"),
            Fraction(2),
        ),
        ("repairs for 17 December 2026", ("2 Company / 1 Section",), Fraction(1)),
    ]
    assert load.works["1 Company / 1 Section"].repair == repairs[2]
    assert load.works["1 Company / Command"].repair is None
