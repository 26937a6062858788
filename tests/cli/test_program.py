"""The command, its list of commands and its exit statuses."""

import os
import subprocess
import sys
from pathlib import Path

import pytest

from paradestate import __version__
from paradestate.cli import main
from paradestate.cli.program import COMMANDS, program
from paradestate.store.error import StoreError
from tests.cli.calling import call


def run(*words: str, cwd: Path) -> subprocess.CompletedProcess[str]:
    return subprocess.run(
        [sys.executable, "-m", "paradestate", *words],
        cwd=cwd,
        env=os.environ | {"NO_COLOR": "1"},
        capture_output=True,
        text=True,
        check=False,
        timeout=60,
    )


def test_help_lists_the_commands_in_the_order_of_the_work() -> None:
    out = call("--help").out
    places = [out.index(f"  {name} ") for name in COMMANDS]
    assert places == sorted(places)
    assert "_PARADESTATE_COMPLETE=bash_source" in out


@pytest.mark.parametrize("name", COMMANDS)
def test_every_command_has_help_with_examples(name: str) -> None:
    answer = call(name, "--help")
    assert answer.status == 0
    assert f"  paradestate {name} " in answer.out


def test_the_version() -> None:
    assert call("--version").out == f"paradestate, version {__version__}\n"


def test_wrong_usage_is_2_and_offers_the_nearest_command(tmp_path: Path) -> None:
    answer = call("cont", tmp_path)
    assert answer.status == 2
    assert "Did you mean 'count'?" in answer.err
    assert call("frobnicate").status == 2
    assert call("count", tmp_path / "gone").status == 2
    assert call("count").status == 2


def test_help_loads_no_heavy_part(tmp_path: Path) -> None:
    code = (
        "import sys\nimport paradestate.cli\nfrom paradestate.cli.program import program\n"
        "program(['--help'], standalone_mode=False)\n"
        "heavy = {'rich', 'yaml', 'highspy', 'numpy', 'openpyxl', 'sqlalchemy', 'alembic'}\n"
        "print(sorted(heavy & set(sys.modules)))\n"
    )
    done = subprocess.run(
        [sys.executable, "-c", code], capture_output=True, text=True, check=True, cwd=tmp_path
    )
    assert done.stdout.splitlines()[-1] == "[]"


def test_counting_loads_no_solver_and_no_spreadsheets(folder: Path) -> None:
    code = (
        "import sys\nfrom paradestate.cli.program import program\n"
        f"try:\n    program(['count', {str(folder)!r}])\nexcept SystemExit:\n    pass\n"
        "print(sorted({'highspy', 'numpy', 'openpyxl', 'odf'} & set(sys.modules)))\n"
    )
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    assert done.stdout.splitlines()[-1] == "[]"


def test_what_the_world_keeps_from_us_is_3_in_one_sentence(
    folder: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    def refuse(_: Path) -> bytes:
        raise PermissionError(13, "Permission denied", "force.yaml")

    monkeypatch.setattr(Path, "read_bytes", refuse)
    monkeypatch.setattr(sys, "argv", ["paradestate", "check", str(folder)])
    with pytest.raises(SystemExit) as ended:
        main()
    assert ended.value.code == 3
    assert capsys.readouterr().err == "paradestate: force.yaml: Permission denied\n"


def test_a_journal_that_fails_is_3_in_its_own_words(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    def refuse(**_: object) -> None:
        raise StoreError("journal: the disk is full. Nothing was written. Make room.")

    monkeypatch.setattr(program, "main", refuse)
    with pytest.raises(SystemExit) as ended:
        main()
    assert ended.value.code == 3
    said = "paradestate: journal: the disk is full. Nothing was written. Make room.\n"
    assert capsys.readouterr().err == said


def test_a_reader_that_goes_away_is_no_failure(folder: Path) -> None:
    command = f"{sys.executable} -m paradestate read-back {folder} | head -1"
    done = subprocess.run(  # noqa: S602 - our own command
        command, shell=True, capture_output=True, text=True, check=False, timeout=60
    )
    assert "Traceback" not in done.stderr
    assert "Broken" not in done.stderr


def test_an_output_without_the_letters_prints_others_instead(folder: Path) -> None:
    done = subprocess.run(
        [sys.executable, "-m", "paradestate", "order", str(folder)],
        env=os.environ | {"PYTHONIOENCODING": "ascii"},
        capture_output=True,
        check=True,
        timeout=60,
    )
    assert b"Total GBP 89.50." in done.stdout


def test_findings_go_to_standard_error_and_answers_to_standard_output(folder: Path) -> None:
    done = run("count", "marenz", cwd=folder.parent)
    assert done.returncode == 0
    assert done.stderr.startswith("marenz/force.yaml:44:3: warn: ")
    assert done.stdout.startswith("Republic of Marenz")
