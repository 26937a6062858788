"""The command `count`."""

from pathlib import Path

import pytest

from paradestate.cli.parade_state import bar
from tests.cli.calling import call
from tests.journeys.conftest import FERRY_GUARD, written


def test_the_parade_state_of_the_example(folder: Path) -> None:
    answer = call("count", folder)
    assert answer.status == 0
    for line in (
        "123 foot figures and 2 vehicles on 37 stands must be there; nothing of it is owned yet",
        "rifle section                         24  4 company x 3 platoon x 2",
        "Three totals agree: 123 foot figures by level, 123 by kind, 123 by company.",
        "Figures cover 8% (battalion command) to 14% (light mortar section) of their stands.",
        "A platoon of 2 in line covers 100 mm, which shows 100 m; 15 of them fit abreast.",
    ):
        assert line in answer.out


def test_counts_for_programs(folder: Path) -> None:
    document = call("count", folder, "--json").document
    must = document["must"]
    assert (must["foot"], must["vehicles"], must["men"]) == (123, 2, 304)
    assert (must["mounted"], must["guns"]) == (0, 0)
    assert must["stands"]["rifle section"] == 24
    assert must["printed"] == {"hidden-movement marker": 8}
    assert document["wished"]["foot"] == 22
    assert document["deficiency"]["rifleman"] == 101
    assert document["surplus"] == {}
    assert document["stand_ins"] == []
    assert document["ratio"] == "304/123"
    assert document["chains"]["rifle section"] == "4 company x 3 platoon x 2"
    assert document["three_totals"] == {"by_level": 123, "by_kind": 123, "by_company": 123}
    assert document["ceiling"]["stands"]["machine-gun team"] == 6
    assert document["crowding"]["rifle section"] == "0.1414"
    assert document["stands"][0]["name"] == "Battalion Command"
    assert document["changes"] == []


@pytest.mark.parametrize(
    ("options", "foot"),
    [
        (("--set", "company=3"), 94),
        (("--date", "1941"), 159),
        (("--set", "company=2", "--date", "1941"), 83),
        (("--wished", "all"), 123),
    ],
)
def test_choices_for_one_sum(folder: Path, options: tuple[str, ...], foot: int) -> None:
    assert call("count", folder, *options, "--json").document["must"]["foot"] == foot


def test_wished_items_are_wanted_when_asked_for(folder: Path) -> None:
    scene = call("count", folder, "--wished", "headquarters scene", "--json").document
    assert sum(scene["wanted"].values()) == 132


def test_what_a_choice_changes_against_the_folder(folder: Path) -> None:
    document = call("count", folder, "--set", "company=3", "--changes", "--json").document
    assert document["must"]["foot"] == 94
    foot = next(change for change in document["changes"] if change["what"] == "foot figures")
    assert (foot["from"], foot["to"], foot["difference"]) == (123, 94, -29)
    text = call("count", folder, "--set", "company=3", "--changes").out
    assert "limit: machine-gun platoon                2    1      -1" in text


@pytest.mark.parametrize(
    ("against", "foot"),
    [("date=1941", 159), ("company=3", 94), ("theatre=islands", None), ("wished=all", None)],
)
def test_what_another_choice_would_change(folder: Path, against: str, foot: int | None) -> None:
    document = call("count", folder, "--against", against, "--json").document
    found = {change["what"]: change["to"] for change in document["changes"]}
    assert found.get("foot figures") == foot


def test_nothing_changes_against_itself(folder: Path) -> None:
    assert "Nothing changes." in call("count", folder, "--against", "date=1943").out


def test_the_ceiling_is_printed_where_there_are_supporting_troops(folder: Path) -> None:
    text = call("count", folder).out
    assert "Supporting troops could call for at most" in text
    assert "field work (printed)        12" in text
    (folder / "supporting-troops.yaml").unlink()
    assert "Supporting troops" not in call("count", folder).out


def test_a_game_rules_the_ceiling(folder: Path) -> None:
    with_game = call("count", folder, "--game", "whole-day defence", "--json").document
    assert with_game["ceiling"]["stands"]["field work"] == 12
    attack = call("count", folder, "--game", "whole-day attack", "--json").document
    assert "field work" not in attack["ceiling"]["stands"]
    against = call("count", folder, "--against", "game=whole-day attack", "--json").document
    assert against["changes"] == []


@pytest.mark.parametrize(
    ("options", "code"),
    [
        (("--date", "03/04/1943"), "date-ambiguous"),
        (("--date", "1942"), "date-holds-a-change"),
        (("--set", "company=9"), "number-outside-range"),
        (("--set", "company"), "not-names-and-numbers"),
        (("--set", "compny=3"), "unknown-choice"),
        (
            (
                "--wished",
                "=",
            ),
            "not-names-and-numbers",
        ),
        (("--game", "evning attack"), "unknown-choice"),
        (("--against", "date=x"), "not-a-date"),
        (("--against", "company=9"), "number-outside-range"),
        (("--against", "game=none"), "unknown-choice"),
    ],
)
def test_choices_that_can_not_be(folder: Path, options: tuple[str, ...], code: str) -> None:
    answer = call("count", folder, *options)
    assert answer.status == 1
    assert f"[{code}]" in answer.err
    assert not answer.out


def test_a_stop_prevents_the_count(folder: Path) -> None:
    (folder / "more.yaml").write_text("figures: {x: {sort: y}}\n", encoding="utf-8")
    answer = call("count", folder, "--json")
    assert (answer.status, answer.out) == (1, "")


def test_what_is_owned(folder: Path) -> None:
    (folder / "stock.csv").write_text(
        "figure,painted,assembled\nrifleman,60,100\nofficer,7,\n", encoding="utf-8"
    )
    text = " ".join(call("count", folder).out.split())
    assert "108 of 125 figures are owned, and 17 are lacking." in text
    assert "59 over" in text
    assert "28 of 37 stands have all their figures" in text
    by_stage = call("count", folder, "--json").document["stands_by_stage"]
    assert sum(by_stage.values()) == 28


def test_everything_owned(tmp_path: Path) -> None:
    (tmp_path / "f.yaml").write_text(
        "format: 1\ntitle: T\nfigures: {m: {}}\nstands: {s: {base: none, figures: {m: 1}}}\n"
        "formations: {top: {parts: {s: 2}}}\nraise: {formation: top}\nstock: {m: {painted: 2}}\n",
        encoding="utf-8",
    )
    text = call("count", tmp_path).out
    assert "2 foot figures on 2 stands must be there; all 2 figures are owned." in text
    assert "Next: paradestate read-back" in text


def test_where_nobody_sells_what_is_lacking_the_sources_are_to_be_written(tmp_path: Path) -> None:
    folder = written(tmp_path / "guard", FERRY_GUARD)
    wanted = f"Next: write your sources and their packs into {folder}, to order what is lacking."
    assert call("count", folder).out.splitlines()[-1] == wanted


def test_an_organisation_on_paper(tmp_path: Path) -> None:
    text = "format: 1\ntitle: T\nformations: {top: {men: 300}}\nraise: {formation: top}\n"
    (tmp_path / "f.yaml").write_text(text, encoding="utf-8")
    assert "No figures are wanted; 300 men stand on paper." in call("count", tmp_path).out
    assert call("count", tmp_path, "--json").document["ratio"] is None


def test_men_as_a_range(tmp_path: Path) -> None:
    (tmp_path / "f.yaml").write_text(
        "format: 1\ntitle: T\nfigures: {m: {}}\n"
        "stands: {s: {base: none, men: 8-12, figures: {m: 3}}}\n"
        "formations: {top: {parts: {s: 1}}}\nraise: {formation: top}\n",
        encoding="utf-8",
    )
    document = call("count", tmp_path, "--json").document
    assert document["must"]["men"] == {"least": 8, "most": 12}
    assert document["ratio"] == {"least": "8/3", "most": "4"}


def test_bars_keep_one_length_for_a_figure() -> None:
    assert bar(0, 101, longest=101).count("░") == 24
    assert bar(50, 0, longest=100).count("█") == 12
    assert bar(100, 1, longest=101)[-1] == "░"
