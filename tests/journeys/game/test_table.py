"""What a phone is told of a force."""

import datetime
from pathlib import Path

from paradestate.journeys.game.table import table_force
from paradestate.journeys.new import new_from_example

TODAY = datetime.date(2026, 11, 27)


def test_each_company_has_its_platoons_with_their_marks_and_stands(tmp_path: Path) -> None:
    new_from_example(tmp_path / "marenz", name="marenz")
    force = table_force(tmp_path / "marenz", today=TODAY).force
    assert force is not None
    second = next(each for each in force["companies"] if each["name"] == "No 2 Company")
    third = next(each for each in second["units"] if each["within"] == "3 Platoon")
    assert third["words"] == "No 2 Company, 3 Platoon"
    assert third["mark"]["words"] == "mid yellow, three bars, cross"
    assert third["mark"]["plate"].startswith("<svg")
    assert [each["words"] for each in third["stands"]] == ["1 Section", "2 Section"]
    names = [s["name"] for c in force["companies"] for u in c["units"] for s in u["stands"]]
    assert len(names) == len(set(names))
    assert {"name", "missions", "each", "grants"} == set(force["troops"][0])


def test_troops_of_no_company_stand_under_the_raised_formation(guard: Path) -> None:
    force = table_force(guard, today=TODAY).force
    assert force is not None
    (only,) = force["companies"]
    assert only["name"] == "guard"
    assert [s["words"] for s in only["units"][0]["stands"]][:2] == [
        "1 Rifle Section",
        "2 Rifle Section",
    ]


def test_a_folder_with_stops_has_no_table(guard: Path) -> None:
    (guard / "force.yaml").write_text("format: 1\ntitle: [", encoding="utf-8")
    answer = table_force(guard, today=TODAY)
    assert answer.force is None
    assert answer.checked.is_stopped


LIMITS = """\
loss limits:
  - {of: company, at: {a third: shaken, more than half: falls back}}
  - {of: platoon, at: {all: gone}}
  - {count: leaders hit, at: {3: headless}}
"""


def test_limits_to_losses_come_with_the_unit_or_company_beside_which_they_are_shown(
    tmp_path: Path,
) -> None:
    new_from_example(tmp_path / "marenz", name="marenz")
    (tmp_path / "marenz" / "limits.yaml").write_text(LIMITS, encoding="utf-8")
    force = table_force(tmp_path / "marenz", today=TODAY).force
    assert force is not None
    limits = force["limits"]
    where = {(each["unit"], each["company"]) for each in limits}
    assert len(limits) == 4 + 12 + 1
    companies = {each["name"]: each["units"] for each in force["companies"]}
    units = {unit["name"] for each in companies.values() for unit in each}
    assert {unit for unit, _ in where if unit is not None} <= units
    assert {company for _, company in where if company is not None} <= set(companies)
    first, whole = limits[0], limits[-1]
    assert (first["name"], first["unit"], first["company"]) == (
        "No 1 Company",
        None,
        "No 1 Company",
    )
    assert (len(first["members"]), first["word"], first["aspect"]) == (8, "out", "out")
    assert first["at"] == [[1, 3, True, False, "shaken"], [1, 2, True, True, "falls back"]]
    assert first["troops"] == []
    assert (whole["name"], whole["unit"], whole["company"]) == ("The whole force", None, None)
    assert {name for name, _ in whole["members"]} == units


def test_without_limits_there_are_none(guard: Path) -> None:
    force = table_force(guard, today=TODAY).force
    assert force is not None
    assert (force["limits"], force["limits of games"]) == ([], {})


def test_a_game_with_other_numbers_has_limits_of_its_own(tmp_path: Path) -> None:
    new_from_example(tmp_path / "marenz", name="marenz")
    game = "games: {raid: {allowance: 4, posture: attack, numbers: {company: 2}}}\n"
    (tmp_path / "marenz" / "raid.yaml").write_text(game + LIMITS, encoding="utf-8")
    force = table_force(tmp_path / "marenz", today=TODAY).force
    assert force is not None
    (raid,) = force["limits of games"].items()
    assert raid[0] == "raid"
    assert [len(raid[1]), len(force["limits"])] == [2 + 6 + 1, 4 + 12 + 1]
    assert len(raid[1][-1]["members"]) == 2 + 6 + 1
