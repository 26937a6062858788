"""The command `new`."""

from pathlib import Path

from tests.cli.calling import call
from tests.forces import EXAMPLES


def test_an_example_is_copied(tmp_path: Path) -> None:
    answer = call("new", tmp_path / "mine", "--example", "marenz")
    assert answer.status == 0
    assert f"Next: paradestate count {tmp_path / 'mine'}" in answer.out
    for path in (EXAMPLES / "marenz").iterdir():
        assert (tmp_path / "mine" / path.name).read_bytes() == path.read_bytes()


def test_files_for_programs(tmp_path: Path) -> None:
    document = call("new", tmp_path / "mine", "--example", "marenz", "--json").document
    assert [Path(path).name for path in document["files"]] == [
        "force.yaml",
        "prices.yaml",
        "supporting-troops.yaml",
    ]


def test_an_unknown_example(tmp_path: Path) -> None:
    answer = call("new", tmp_path / "mine", "--example", "atlantis")
    assert answer.status == 2
    assert "marenz" in answer.err


def test_nothing_is_overwritten(tmp_path: Path) -> None:
    (tmp_path / "kept.txt").write_text("mine", encoding="utf-8")
    answer = call("new", tmp_path, "--example", "marenz")
    assert answer.status == 2
    assert "nothing is overwritten" in answer.err
    assert [path.name for path in tmp_path.iterdir()] == ["kept.txt"]
    assert call("new", tmp_path / "kept.txt", "--example", "marenz").status == 2


def test_an_empty_folder_may_be_filled(tmp_path: Path) -> None:
    (tmp_path / "empty").mkdir()
    assert call("new", tmp_path / "empty", "--example", "marenz").status == 0


def test_six_questions_with_usual_answers(tmp_path: Path) -> None:
    answer = call("new", tmp_path / "first", typed="\n" * 6)
    assert answer.status == 0
    assert answer.out.count("?") == 6
    assert call("check", tmp_path / "first").err == ""
    assert call("count", tmp_path / "first", "--json").document["must"]["foot"] == 38


def test_a_silly_answer_is_asked_again(tmp_path: Path) -> None:
    answer = call(
        "new",
        tmp_path / "first",
        typed="Guard\n0\n28\n4\n3\n3\n10\n",
    )
    assert answer.status == 0
    assert "is not in the range" in answer.out


def test_asking_for_programs_keeps_standard_output_for_the_answer(tmp_path: Path) -> None:
    answer = call("new", tmp_path / "first", "--json", typed="\n" * 6)
    assert len(answer.document["files"]) == 1


def test_giving_up_leaves_nothing_behind(tmp_path: Path) -> None:
    assert call("new", tmp_path / "first", typed="Guard\n").status == 1
    assert not list(tmp_path.iterdir())
