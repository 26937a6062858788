"""The ceiling of wants."""

from paradestate.core.ceiling import Ceiling, ceiling
from paradestate.core.choice import Choice, chosen
from paradestate.core.establishment import establishment
from paradestate.core.force import Force
from paradestate.core.span import year
from tests.forces import force_from, marenz

STANDS = "stands: {a: {base: none}, gun: {base: none}, tow: {base: none, printed: yes}}"
TOP = "formations: {top: {parts: {a: 4}}}"


def ceiling_of(force: Force, *, game: str = "", choice: Choice | None = None) -> Ceiling:
    picked, _ = chosen(force, choice or Choice())
    made, _ = establishment(picked)
    assert made is not None
    return ceiling(picked, made, game=picked.games[game] if game else None)


def test_marenz_of_1943_in_attack() -> None:
    answer = ceiling_of(marenz(), game="whole-day attack")
    assert answer.stands == {
        "machine-gun team": 6,
        "medium mortar": 4,
        "observer": 1,
        "anti-tank gun team": 3,
        "truck": 3,
        "armoured car": 3,
        "cycle section": 2,
        "light tank": 3,
        "tank commander": 1,
        "pioneer section": 2,
        "fire mission": 3,
        "lorry": 16,
    }
    figures = answer.figures
    assert (figures["machine-gun crew"], figures["mortar crew"], figures["gun crew"]) == (18, 12, 9)
    assert figures["light tank"] == 4
    assert "rifleman" not in figures


def test_defence_opens_field_works_and_1941_the_anti_tank_rifles() -> None:
    assert ceiling_of(marenz(), game="whole-day defence").stands["field work"] == 12
    answer = ceiling_of(marenz(), choice=Choice(date=year(1941)))
    assert answer.stands["anti-tank rifle team"] == 4
    assert answer.figures["rifleman"] == 8


def entries(text: str, *more: str) -> Force:
    return force_from(
        "figures: {crew: {}}",
        "stands: {a: {base: none}, gun: {base: none, figures: {crew: 3}}, car: {base: none}}",
        TOP,
        f"supporting troops: {text}",
        *more,
    )


def test_entries_that_bar_each_other_are_not_added_up() -> None:
    force = entries(
        "{x: {cost: 2, each: {gun: 1}, bars: [y]}, y: {cost: {2: 3}, each: {gun: 1}},"
        " z: {cost: 1, each: {gun: 1, car: 1}}}"
    )
    assert ceiling_of(force).stands == {"gun": 3, "car": 1}


def test_a_shared_limit_takes_the_best_of_the_group_first() -> None:
    force = entries(
        "{x: {cost: {3: 5}, each: {gun: 1}, group: g, limit: {most: 2}},"
        " y: {cost: 1, each: {gun: 1}, group: g, limit: {most: 5}}}",
        "limits: [{group: g, most: 3}, {group: g, most points: 33%}]",
    )
    assert ceiling_of(force).stands == {"gun": 7}


def test_any_number_is_bounded_by_the_points_of_a_game_only() -> None:
    force = entries(
        "{x: {cost: 2, each: {gun: 1}, limit: any}, y: {cost: 0, each: {car: 1}, limit: any}}",
        "games: {g: {allowance: 3 + 1d6, posture: attack}}",
        "formation cost: 2",
    )
    assert ceiling_of(force).stands == {"gun": None, "car": None}
    assert ceiling_of(force, game="g").stands == {"gun": 3, "car": None}
    assert ceiling_of(force, game="g").figures == {"crew": 9}


def test_what_is_otherwise_at_a_grade_or_in_a_posture_is_within_the_ceiling() -> None:
    force = entries(
        "{x: {cost: 2, each: {gun: 1}, cost by grade: {drill: {raw: {1: 1, 3: 3}}},"
        " in posture: {defence: {limit: {most: 2}}}},"
        " y: {cost: 4, each: {car: 1}, limit: any, choice: [old], choice costs: {old: -1}}}",
        "grades: {drill: {usual: raw, points: {raw: -2, fair: 0}}}",
        "games: {d: {allowance: 7, posture: defence}, a: {allowance: 7, posture: attack}}",
    )
    assert ceiling_of(force).stands == {"gun": 6, "car": None}
    assert ceiling_of(force, game="d").stands == {"gun": 6, "car": 3}
    assert ceiling_of(force, game="a").stands == {"gun": 3, "car": 3}


def test_what_replaces_stands_is_wanted_too() -> None:
    force = entries(
        "{x: {cost: 2, replaces: {of: a, number: 2, with: gun}, not in: "
        "{posture: defence}, theatre: home}}"
    )
    assert ceiling_of(force).stands == {}
    assert ceiling_of(force, choice=Choice(theatre="home")).stands == {"gun": 2}


def test_an_entry_barred_by_posture_is_left_out() -> None:
    force = entries(
        "{x: {cost: 2, each: {gun: 1}, not in: {posture: defence}}}",
        "games: {d: {allowance: 9, posture: defence}, a: {allowance: 9, posture: attack}}",
    )
    assert ceiling_of(force, game="d").stands == {}
    assert ceiling_of(force, game="a").stands == {"gun": 1}


def test_with_very_many_entries_for_one_thing_bars_are_not_weighed() -> None:
    many = ", ".join(
        f"x{n}: {{cost: 1, each: {{gun: 1}}, bars: [x{(n + 1) % 14}]}}" for n in range(14)
    )
    assert ceiling_of(entries(f"{{{many}}}")).stands == {"gun": 14}
