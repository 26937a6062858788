"""The command `trays`."""

from pathlib import Path

from tests.cli.calling import call
from tests.journeys.conftest import FERRY_GUARD, written

BOX = "trays: {box: {inside: 40 x 20 mm, height: 30 mm}}\n"


def test_for_people(folder: Path) -> None:
    answer = call("trays", folder)
    assert answer.status == 0
    assert answer.out.startswith(
        "45 stands in 1 tray. Exact: fewer trays don't hold them.\n"
        "\n"
        "Case 1, 300 x 200 mm inside: 200 mm of 200 taken in 6 rows\n"
    )
    assert answer.out.endswith(
        "The trays hold exactly the packing list.\nNot needed: Case 2, 300 x 200 mm inside.\n"
    )
    assert "Row 6, staggered by 30 mm" in " ".join(answer.out.split())


def test_for_programs(folder: Path) -> None:
    found = call("trays", folder, "--json").document
    (tray,) = found["trays"]
    assert (tray["tray"], tray["depth_taken_mm"], tray["stands"]) == ("case 1", "200", 45)
    last = tray["rows"][-1]
    assert (last["staggered"], last["from_mm"], last["to_mm"]) == (True, "130", "200")
    assert last["stands"][1] == {
        "stand": "No 1 Company / 2 Hidden-movement Marker",
        "pattern": "hidden-movement marker",
        "size": "40 mm disc",
        "across_mm": "29.4",
        "deep_mm": "160",
        "turned": False,
    }
    assert (found["certainty"], found["bound"], found["empty"]) == ("exact", 1, ["case 2"])
    assert (found["no_place"], found["torn"], found["by_hand"]) == ([], [], False)
    assert found["holds_packing_list"] is True


def test_what_has_no_place_is_named_with_the_trays_that_would_do(tmp_path: Path) -> None:
    folder = written(tmp_path / "guard", FERRY_GUARD + BOX)
    answer = call("trays", folder, "--json")
    assert answer.status == 0
    assert answer.document["no_place"] == [
        {"stand": "2 Rifle Section", "why": "no room", "too_low": [], "would_do": ["box"]},
        {"stand": "Boat", "why": "too large", "too_low": [], "would_do": []},
    ]
    people = call("trays", folder)
    assert "The trays hold" not in people.out
    assert "2 stands have no place; the area alone needs 2 trays." in people.out


def test_a_stop_ends_with_status_1(tmp_path: Path) -> None:
    bare = written(tmp_path / "bare", FERRY_GUARD)
    assert (call("trays", bare).status, "[no-trays]" in call("trays", bare).err) == (1, True)
    high = FERRY_GUARD.replace("20 x 60 mm, f", "20 x 60 mm, height: 44 mm, f") + BOX
    answer = call("trays", written(tmp_path / "high", high))
    assert answer.status == 1
    assert "Boat is 44 mm; Box has 30 clear. [tray-too-low]" in answer.err
    assert call("trays", bare, "--set", "company=x").status == 1
