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


def test_what_could_not_be_read_is_named_by_findings(folder: Path) -> None:
    (folder / "more.yaml").write_text("figures: {x: {sort: y}}\n", encoding="utf-8")
    answer = call("read-back", folder)
    assert answer.status == 1
    assert "Rifleman" in answer.out
    assert "[unknown-word]" in answer.err
