"""Failures of the world, in words."""

from pathlib import Path

import pytest

from paradestate.text.error import FileChangedError, FileError


@pytest.mark.parametrize(
    ("there", "said"),
    [
        (b"", "the file has been written by another program since it was read"),
        (None, "the file has been taken away since it was read"),
    ],
)
def test_who_comes_second_is_told_what_became_of_the_file(there: bytes | None, said: str) -> None:
    error = FileChangedError(Path("force.yaml"), mine=b"a: 1\n", there=there)
    assert isinstance(error, FileError)
    assert str(error).startswith("force.yaml: ")
    assert "Nothing was written" in str(error)
    assert said in str(error)
