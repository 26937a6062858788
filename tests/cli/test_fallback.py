"""The command `fallback`."""

from pathlib import Path

from tests.cli.calling import call

GAME = ("--game", "whole-day attack")


def test_the_chart_for_people_fits_half_a_page(folder: Path) -> None:
    answer = call("fallback", folder, *GAME, "--points", 18)
    assert answer.status == 0
    for line in (
        "Ask for 2 x light tanks: 17.11 to come on average.",
        "  allowed: take all, worth 10 (2/3, 67 in 100); 9 points left: ask for 2 x anti-tank guns",
        ", 8.83 to\n      come\n",
        "    2 or 1 allowed: take only 1, worth 4 (5/6, 83 in 100): buy 2 x machine-gun platoon",
        "worth 5 (9\n        together; taking all 2 only 8)\n",
        "points left: ask for\n        2 x armoured cars, 9 to come\n",
        "  refused (1/3, 33 in 100); 18 points left: ask for 2 x anti-tank guns, 13.67 to come",
        "ask for 2 x anti-tank guns       16.96   0.15",
        "ask for nothing                      8   9.11",
        "  2 x light tanks, worth 10: down to 8",
        "Exact: no other play has a greater mean worth, by your own worths.",
    ):
        assert line in answer.out
    assert answer.out.count("\n") < 35


def test_the_whole_allowance_for_people(folder: Path) -> None:
    answer = call("fallback", folder, *GAME)
    assert "before the allowance is rolled: 16.6 on average by the best play." in answer.out
    assert "    18      17       17.11  ask for 2 x light tanks" in answer.out


def test_for_programs(folder: Path) -> None:
    document = call("fallback", folder, *GAME, "--points", 18, "--json").document
    tanks = {"entry": "light tanks", "number": 2, "choice": ""}
    assert (document["value"], document["first"]) == ("154/9", tanks)
    assert document["certainty"] == "exact"
    chart = document["chart"]
    assert (chart["ask"], chart["value"], chart["buy_first"]) == (tanks, "154/9", [])
    granted = chart["outcomes"][0]
    assert (granted["chance"], granted["takes"], granted["value"]) == ("2/3", tanks, "113/6")
    assert granted["then"]["outcomes"][2]["then"]["buy"][0]["entry"] == "machine-gun platoon"
    assert document["by_points"] == {"18": {"chance": "1", "value": "154/9", "first": tanks}}
    assert document["first_choices"][0] == {"purchase": tanks, "value": "154/9"}
    assert document["first_choices"][-1] == {"purchase": None, "value": "8"}
    assert document["tippings"][-1] == {
        "entry": "light tanks",
        "choice": "",
        "number": 2,
        "worth": "10",
        "down_to": "8",
        "up_to": None,
    }


def test_the_whole_allowance_for_programs(folder: Path) -> None:
    document = call("fallback", folder, *GAME, "--json").document
    assert document["value"] == "32261/1944"
    assert (document["first"], document["chart"], document["points"]) == (None, None, None)
    assert document["by_points"]["13"]["chance"] == "1/36"


def test_equal_first_choices_and_what_was_refused(folder: Path) -> None:
    answer = call("fallback", folder, *GAME, "--points", 18, "--refused", "light tanks=2")
    assert "Ask for 2 x anti-tank guns: 13.67 to come on average." in answer.out
    assert "As good first: armoured cars." in answer.out


def test_where_all_is_named_first(folder: Path) -> None:
    troops = folder / "supporting-troops.yaml"
    troops.write_text(f"{troops.read_text()}\nasking: all declared first\n")
    answer = call("fallback", folder, *GAME, "--points", 18)
    assert "Name at once 2 x anti-tank guns and 2 x light tanks; then all is rolled" in answer.out
    named = call("fallback", folder, *GAME, "--points", 5).out
    assert "Buy 2 x machine-gun platoon" in named or "Name at once" in named
    document = call("fallback", folder, *GAME, "--points", 18, "--json").document
    assert [each["entry"] for each in document["declared"]] == ["anti-tank guns", "light tanks"]
    begun = call("fallback", folder, *GAME, "--points", 18, "--refused", "light tanks=2")
    assert "not computed. Everything is named before the first roll" in begun.out
    document = call(
        "fallback", folder, *GAME, "--points", 18, "--refused", "light tanks=2", "--json"
    ).document
    assert (document["certainty"], document["value"]) == ("not computed", None)


def test_leasts_are_said_to_play_no_part(folder: Path) -> None:
    troops = folder / "supporting-troops.yaml"
    text = troops.read_text().replace(
        "    each: {cycle section: 1}\n",
        "    each: {cycle section: 1}\n    limit: {most: 1, least: 1}\n",
    )
    troops.write_text(text)
    answer = call("fallback", folder, *GAME, "--points", 5)
    assert "What has to be taken at the least isn't looked at here" in answer.out


def test_slips_are_stops(folder: Path) -> None:
    for words in (("--points", "many"), ("--grade", "training"), ("--refused", "mules=1")):
        answer = call("fallback", folder, *GAME, *words)
        assert answer.status == 1
        assert answer.out == ""


def test_points_that_are_not_rolled_are_known(tmp_path: Path) -> None:
    call("new", tmp_path / "kelmar", "--example", "kelmar")
    answer = call("fallback", tmp_path / "kelmar", "--game", "club evening")
    assert "Club evening, 120 points left: what to buy; no roll is needed." in answer.out
    assert "Buy twice 4 x rifle company" in answer.out


def test_a_game_that_offers_nothing_is_said_so(tmp_path: Path) -> None:
    folder = tmp_path / "sillen"
    call("new", folder, "--example", "sillen")
    answer = call("fallback", folder)
    assert (answer.status, answer.out) == (1, "")
    said = "Dawn at the bridge offers no supporting troops: the force has none. [nothing-on-offer]"
    assert f"stop: {said}" in answer.err
    assert "worths" not in answer.err
    for command in ("judge", "odds", "forces"):
        other = call(command, folder)
        assert other.status == 0
        assert f"warn: {said}" in other.err
        assert "plan-unsaid" not in other.err
