"""Names from outside: none leads anywhere but into the folder."""

from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from paradestate.text.error import FileError
from paradestate.text.file_name import (
    MOST_BYTES,
    file_in,
    file_name_refusal,
    folder_name,
    free_folder_name,
    leads_outside,
    name_refusal,
)

HOSTILE = [
    "",
    ".",
    "..",
    "../force.yaml",
    "..\\force.yaml",
    "/etc/passwd",
    "a/b.yaml",
    "C:force.yaml",
    ".former",
    ".hidden.yaml",
    "force.yaml\n",
    "force\x00.yaml",
    " force.yaml",
    "force.",
    "con.yaml",
    "LPT1",
    "a" * 81,
    "\U0001f6e1" * 60,
    "what?.yaml",
    "\u202eforce.yaml",
]


@pytest.mark.parametrize("name", HOSTILE)
def test_a_name_that_leads_elsewhere_or_nowhere_is_refused(tmp_path: Path, name: str) -> None:
    assert name_refusal(name) is not None
    assert file_name_refusal(name) is not None
    with pytest.raises(FileError, match="Nothing was read or written"):
        file_in(tmp_path, name)


@pytest.mark.parametrize("name", ["force.yaml", "prices 2026.csv", "Männer.xlsx", "a.b.ods"])
def test_a_usual_name_is_taken(tmp_path: Path, name: str) -> None:
    assert file_name_refusal(name) is None
    assert file_in(tmp_path, name) == tmp_path / name


@pytest.mark.parametrize("name", ["force.yml", "force", "run.py", "yaml"])
def test_only_files_that_are_read_can_be_made(name: str) -> None:
    assert name_refusal(name) is None
    refusal = file_name_refusal(name)
    assert refusal is not None
    assert ".yaml" in refusal


@given(st.text())
def test_no_name_that_is_taken_leads_out_of_the_folder(name: str) -> None:
    if name_refusal(name) is None:
        folder = Path("somewhere")
        assert (folder / name).parent == folder
        assert (folder / name).resolve().parent == folder.resolve()


def test_a_link_may_lead_to_another_file_of_the_folder_but_not_out(tmp_path: Path) -> None:
    folder = tmp_path / "force"
    folder.mkdir()
    (tmp_path / "secret.yaml").write_text("secret", encoding="utf-8")
    (folder / "own.yaml").write_text("own", encoding="utf-8")
    (folder / "in.yaml").symlink_to("own.yaml")
    (folder / "out.yaml").symlink_to(tmp_path / "secret.yaml")
    assert file_in(folder, "in.yaml") == folder / "in.yaml"
    assert leads_outside(folder / "out.yaml")
    with pytest.raises(FileError, match="leads out of the force's folder"):
        file_in(folder, "out.yaml")


def test_links_in_a_circle_lead_outside(tmp_path: Path) -> None:
    (tmp_path / "one.yaml").symlink_to("other.yaml")
    (tmp_path / "other.yaml").symlink_to("one.yaml")
    assert leads_outside(tmp_path / "one.yaml")


def test_the_folder_itself_may_be_a_link(tmp_path: Path) -> None:
    (tmp_path / "real").mkdir()
    (tmp_path / "real" / "force.yaml").touch()
    (tmp_path / "shown").symlink_to("real")
    assert file_in(tmp_path / "shown", "force.yaml").is_file()


@pytest.mark.parametrize(
    ("title", "name"),
    [
        ("Republic of Marenz, Field Battalion", "republic-of-marenz-field-battalion"),
        ("My first force", "my-first-force"),
        ("../../etc", "etc"),
        ("Żółw!", "żółw"),
        ("???", "force"),
        ("Con", "force"),
        ("x" * 200, "x" * 80),
        ("字" * 80, "字" * (MOST_BYTES // 3)),
    ],
)
def test_a_folder_is_called_after_the_title(title: str, name: str) -> None:
    assert folder_name(title) == name


@given(st.text())
def test_every_title_gives_a_name_that_a_folder_may_have(title: str) -> None:
    assert name_refusal(folder_name(title)) is None


def test_a_name_that_is_taken_gets_a_number() -> None:
    assert free_folder_name("Watch", taken=frozenset()) == "watch"
    assert free_folder_name("Watch", taken=frozenset({"watch", "watch-2"})) == "watch-3"
