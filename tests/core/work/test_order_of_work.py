"""Which batches are done after which."""

import datetime
from fractions import Fraction

from paradestate.core.establishment import establishment
from paradestate.core.on_order import OnOrder
from paradestate.core.work.order_of_work import ladder, ladder_by_kind
from paradestate.core.work.workload import Workload, workload
from tests.core.work.works import MINUTES, in_repair, sound_load
from tests.forces import marenz

SET_UP = "  set up: 30 min\n"


def of_marenz() -> Workload:
    force = marenz()
    made, _ = establishment(force)
    assert made is not None
    load, findings = workload(force, made)
    assert load is not None
    assert not findings
    return load


def test_the_example_is_legal_at_nineteen_hours() -> None:
    """The check value of section 3.15, with set-up 0."""
    found = ladder(of_marenz())
    assert [(each.milestone.name, each.ends / 60) for each in found.reached] == [
        ("smallest legal force", 19),
        ("whole battalion", Fraction(69, 2)),
    ]
    numbers = {rung.pattern: len(rung.works) for rung in found.rungs if rung.stretch == 1}
    assert numbers == {
        "battalion command": 1,
        "company command": 2,
        "rifle section": 12,
        "light mortar section": 2,
        "observer": 2,
        "truck": 2,
    }
    assert sum(work.stand.printed for work in found.reached[0].works) == 4
    assert found.is_proved


def test_the_example_kind_by_kind_is_legal_with_its_last_stand() -> None:
    found = ladder_by_kind(of_marenz())
    assert {each.ends / 60 for each in found.reached} == {Fraction(69, 2)}
    assert [rung.pattern for rung in found.rungs] == [
        "rifle section",
        "company command",
        "light mortar section",
        "observer",
        "truck",
        "battalion command",
    ]
    assert found.rungs[-1].completes == ("smallest legal force", "whole battalion")


def test_a_milestone_is_reached_with_the_last_batch_of_its_stretch() -> None:
    found = ladder(sound_load(MINUTES))
    assert [rung.completes for rung in found.rungs if rung.completes] == [
        ("smallest legal force",),
        ("whole top",),
    ]
    assert found.minutes == found.rungs[-1].ends == 4 * 10 + 6 * 20
    assert found.rungs[0].number == found.rungs[0].stretch == 1


def test_in_a_stretch_what_is_here_comes_before_what_is_on_order() -> None:
    """Commands stand first in the files; their officers are to come, so the sections are first."""
    stock = "stock: {rifleman: {raw: 30}}\n"
    due = datetime.date(2026, 3, 20)
    coming = OnOrder(entry="1", source="North", day=due, expected=due, figures={"officer": 9})
    before = ladder(sound_load(MINUTES, stock))
    after = ladder(sound_load(MINUTES, stock, on_order=(coming,)))
    assert [rung.pattern for rung in after.rungs if rung.stretch == 1] == ["section", "command"]
    assert [each.ends for each in after.reached] == [each.ends for each in before.reached]


def test_what_can_be_played_now_comes_first_and_needs_no_rung() -> None:
    finished = "stock stands: {command: {painted: 3}, section: {painted: 4}}\n"
    found = ladder(sound_load(MINUTES, finished))
    first, second = found.reached
    assert (first.milestone.name, first.rung) == ("smallest legal force", None)
    assert first.ends == 0
    assert second.rung == 2
    assert second.ends == 10 + 40
    assert found.critical is not None
    assert found.critical.milestone == "whole top"


def test_where_all_is_finished_there_is_no_ladder() -> None:
    finished = "stock stands: {command: {painted: 4}, section: {painted: 6}}\n"
    found = ladder(sound_load(MINUTES, finished))
    assert found.rungs == ladder_by_kind(sound_load(MINUTES, finished)).rungs == ()
    assert found.critical is None
    assert found.minutes == found.share_above == 0
    assert found.is_proved


def test_equal_milestones_are_reached_together_and_weigh_together() -> None:
    playable = MINUTES + "  playable: [{name: two, numbers: {company: 2}, weight: 3}]\n"
    found = ladder(sound_load(playable))
    assert [rung.completes for rung in found.rungs if rung.completes] == [
        ("smallest legal force", "two"),
        ("whole top",),
    ]
    assert found.waiting == 4 * found.reached[0].ends + found.reached[-1].ends


def test_later_stands_are_done_early_where_that_saves_a_set_up() -> None:
    """30 minutes of set-up against 10 more for the third company's command."""
    found = ladder(sound_load(MINUTES + SET_UP))
    commands = found.rungs[0]
    assert commands.pattern == "command"
    assert commands.set_up == 30
    assert commands.ends == 30 + 40
    assert commands.early == ("3 Company / Command",)
    assert [rung.pattern for rung in found.rungs] == ["command", "section", "section"]
    assert found.rungs[1].early == ()


def test_what_takes_no_minutes_wants_no_set_up_and_comes_first() -> None:
    minutes = MINUTES.replace("  minutes:", "  minutes per stand: {section: 0}\n  minutes:")
    found = ladder(sound_load(minutes + SET_UP))
    assert [(rung.pattern, int(rung.set_up), int(rung.ends)) for rung in found.rungs] == [
        ("section", 0, 0),
        ("command", 30, 70),
        ("section", 0, 70),
    ]


def test_batches_that_dry_take_turns() -> None:
    found = ladder(sound_load(MINUTES + "  dry: {primed: 1 h}\n"))
    first, second, third, fourth = found.rungs
    assert (first.takes_turns_with, second.takes_turns_with) == (2, 1)
    assert first.waiting == 60 - 16
    assert second.waiting == 0
    assert (third.takes_turns_with, fourth.takes_turns_with) == (4, 3)


def test_batches_with_like_colours_stand_together_and_each_colour_is_mixed_once() -> None:
    organisation = """\
figures: {rifleman: {}, gun: {sort: gun}, officer: {}}
stands:
  section: {base: 40 x 20 mm, figures: {rifleman: 4}}
  gun team: {base: 40 x 40 mm, figures: {gun: 1}}
  command: {base: 30 mm disc, figures: {officer: 1}}
formations: {top: {parts: {section: 2, gun team: 1, command: 1}}}
"""
    sand, grey = "[{colour: sand}]", "[{colour: grey}]"
    colours = f"  colours: {{rifleman: {sand}, gun: {grey}, officer: {sand}}}\n"
    found = ladder(sound_load(MINUTES + colours, organisation=organisation))
    assert [rung.pattern for rung in found.rungs] == ["section", "command", "gun team"]
    assert [rung.colours for rung in found.rungs] == [("sand",), ("sand",), ("grey",)]
    assert [(each.colour, each.batches) for each in found.mixed] == [("sand", (1, 2))]


def test_what_lacks_figures_is_critical_before_what_takes_longest() -> None:
    owned = "stock: {officer: {raw: 2}, rifleman: {raw: 99}}\n"
    found = ladder(sound_load(MINUTES, owned)).critical
    assert found is not None
    assert (found.work.stand.name, found.lacking) == ("2 Company / Command", 1)
    owned = "stock: {officer: {raw: 9}, rifleman: {raw: 99}}\n"
    found = ladder(sound_load(MINUTES, owned)).critical
    assert found is not None
    assert (found.work.stand.name, found.lacking) == ("1 Company / 1 Section", 0)


def test_repairs_come_first_where_they_are_due_before_the_rest() -> None:
    """The last section, 20 minutes, is due after 20; all of its company would be after 100."""
    day = datetime.date(2026, 12, 10)
    repairs = (in_repair("3 Company / 2 Section", wanted=day),)
    load = sound_load(MINUTES, repairs=repairs)
    found = ladder(load, {day: Fraction(20)})
    (repair,) = found.repairs
    assert (repair.ends, repair.due, repair.late) == tuple(map(Fraction, (20, 20, 0)))
    assert repair.rung == 1
    assert [work.stand.name for work in found.rungs[0].works] == ["3 Company / 2 Section"]
    assert found.is_proved
    at_once = ladder(load)
    assert (at_once.repairs[0].due, at_once.repairs[0].late) == (Fraction(0), Fraction(20))
    without = ladder(sound_load(MINUTES))
    assert found.minutes == without.minutes
    assert found.waiting > without.waiting
    assert [each.milestone.name for each in found.reached] == [
        each.milestone.name for each in without.reached
    ]
