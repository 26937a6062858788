"""Where a file breaks off, the former version that is whole."""

from pathlib import Path

import pytest

from paradestate.text.folder import read_folder
from paradestate.text.former import FORMER

WHOLE = "format: 1\ntitle: T\nformations: {top: {men: 3}}\nraise: {formation: top}\n"
OLD, NEW = "2026-03-05T21-14-09Z", "2026-03-06T08-00-00Z"


def folder_with(folder: Path, text: str, **copies: bytes) -> Path:
    (folder / "force.yaml").write_text(text, encoding="utf-8")
    (folder / FORMER).mkdir()
    for time, data in copies.items():
        (folder / FORMER / f"force.yaml.{time}").write_bytes(data)
    return folder


def hint_of(folder: Path, code: str) -> str:
    (found,) = (found for found in read_folder(folder).findings if found.code == code)
    return found.hint


@pytest.mark.parametrize(
    ("text", "code"),
    [(WHOLE[:-2], "half-written"), (WHOLE + "title", "half-written"), ("", "empty-file")],
)
def test_the_newest_copy_that_is_whole_is_named(tmp_path: Path, text: str, code: str) -> None:
    folder = folder_with(tmp_path, text, **{OLD: WHOLE.encode(), NEW: b"a: [1\n"})
    assert hint_of(folder, code) == (
        "The copy kept on 2026-03-05 at 21:14 UTC is whole; what was written since is only here. "
        f"To go back to it: cp {folder}/.former/force.yaml.{OLD} {folder}/force.yaml"
    )


@pytest.mark.parametrize("copy", [b"a: [1\n", b"", b"\x89PNG"])
def test_a_copy_that_is_not_whole_is_not_named(tmp_path: Path, copy: bytes) -> None:
    folder = folder_with(tmp_path, WHOLE[:-2], **{OLD: copy})
    assert hint_of(folder, "half-written").startswith("Close the quote or bracket")


def test_the_command_can_be_pasted_whatever_the_folder_is_called(tmp_path: Path) -> None:
    odd = tmp_path / "it's mine"
    odd.mkdir()
    folder_with(odd, WHOLE[:-2], **{OLD: WHOLE.encode()})
    command = hint_of(odd, "half-written").partition("To go back to it: ")[2]
    assert command.count("'\"'\"'") == 2


def test_a_copy_is_never_used_by_itself(tmp_path: Path) -> None:
    folder = folder_with(tmp_path, "", **{OLD: WHOLE.encode()})
    assert {found.code for found in read_folder(folder).findings} == {"no-force", "empty-file"}


def test_what_is_wrong_otherwise_offers_no_copy(tmp_path: Path) -> None:
    folder = folder_with(tmp_path, WHOLE + "odd: 1\n", **{OLD: WHOLE.encode()})
    assert "cp" not in hint_of(folder, "unknown-word")
