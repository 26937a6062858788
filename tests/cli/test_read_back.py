"""The command `read-back`."""

from pathlib import Path

from tests.cli.calling import call


def test_entries_are_said_under_their_section(folder: Path) -> None:
    text = call("read-back", folder).out
    assert "\nSUPPORTING TROOPS\n- Machine-gun platoon, held at battalion: one costs 3" in text
    assert text.index("FIGURES") < text.index("STANDS") < text.index("TABLE")


def test_sentences_for_programs(folder: Path) -> None:
    said = call("read-back", folder, "--json").document["sentences"]
    assert {"path": ["title"], "text": "Republic of Marenz, Field Battalion, Frontier War."} in said


def test_the_chances_of_a_scenario_stand_behind_its_sentences(folder: Path) -> None:
    arrivals = "{platoon: {roll: 1d6, on: 4 or more, from turn: 3, until turn: 4}, lorry: {}}"
    strengths = "{platoon: {roll: 1d6, gives: {1-3: 50%, 4-6: 100%}}}"
    scenario = f"{{posture: attack, arrivals: {arrivals}, strengths: {strengths}}}"
    (folder / "more.yaml").write_text(f"games: {{raid: {scenario}}}\n", encoding="utf-8")
    said = call("read-back", folder, "--json").document["sentences"]
    raid = [each["text"] for each in said if each["path"][:2] == ["games", "raid"]]
    assert raid[::2] == [
        "Raid: attack without points.",
        "Of its 2 stands take the field: 1 (1/2, 50 in 100), 2 (1/2, 50 in 100); 1.5 on average.",
        "There by turn 3 (1/2, 50 in 100), by turn 4 (3/4, 75 in 100).",
        "There by turn 1 (always).",
    ]


def test_no_chances_are_said_of_what_is_not_raised(folder: Path) -> None:
    scenario = "{posture: attack, strengths: {other: {roll: 1d6, gives: {1-6: 50%}}}}"
    text = f"formations: {{other: {{parts: {{lorry: 1}}}}}}\ngames: {{raid: {scenario}}}\n"
    (folder / "more.yaml").write_text(text, encoding="utf-8")
    assert "take the field:" not in call("read-back", folder).out


def test_what_could_not_be_read_is_named_by_findings(folder: Path) -> None:
    (folder / "more.yaml").write_text("figures: {x: {sort: y}}\n", encoding="utf-8")
    answer = call("read-back", folder)
    assert answer.status == 1
    assert "Rifleman" in answer.out
    assert "[unknown-word]" in answer.err


def test_one_section_can_be_said_alone(folder: Path) -> None:
    text = call("read-back", folder, "--only", "games").out
    assert text.startswith("\nGAMES\n- Evening attack")
    assert text.count("\n\n") == 0
    said = call("read-back", folder, "--only", "games", "--json").document["sentences"]
    assert {sentence["path"][0] for sentence in said} == {"games"}
    refused = call("read-back", folder, "--only", "gmaes")
    assert refused.status == 2
    assert "Sections: title," in refused.err
