"""What a phone is told of a force."""

import datetime
from pathlib import Path

from paradestate.journeys.new import new_from_example
from paradestate.journeys.table import table_force

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
