"""The bundled examples: one for each family of rules, and none needs a word by hand.

What each says is read back beside it, in `read_back`; a person has read those pages as English.
"""

from pathlib import Path

import pytest

from paradestate.journeys.new import examples
from tests.cli.calling import call
from tests.forces import EXAMPLES

READ_BACK = Path(__file__).parent / "read_back"

FEET = {"kelmar": 3, "marenz": 123, "ommerath": 0, "sillen": 78, "vellmark": 108}
"""Example to the foot figures that must be there, counted by hand from its files."""


def test_every_example_has_its_page_and_its_count() -> None:
    assert sorted(FEET) == sorted(examples())
    assert sorted(path.stem for path in READ_BACK.glob("*.txt")) == sorted(examples())


@pytest.mark.parametrize("name", examples())
def test_an_example_says_nothing_by_hand(name: str) -> None:
    texts = [path.read_text(encoding="utf-8") for path in (EXAMPLES / name).iterdir()]
    assert not [text for text in texts if "by hand" in text]


@pytest.mark.parametrize("name", sorted({*examples()} - {"marenz"}))
def test_an_example_has_nothing_doubtful(name: str) -> None:
    """The first one has a pair of stands that look alike, to show what `check` says."""
    assert call("check", "--strict", EXAMPLES / name).status == 0


@pytest.mark.parametrize("name", examples())
def test_an_example_is_counted(name: str) -> None:
    answer = call("count", EXAMPLES / name, "--json")
    assert answer.status == 0
    assert answer.document["must"]["foot"] == FEET[name]


@pytest.mark.parametrize("name", examples())
def test_an_example_is_read_back_word_for_word(name: str) -> None:
    said = (READ_BACK / f"{name}.txt").read_text(encoding="utf-8")
    assert call("read-back", EXAMPLES / name).out == said


@pytest.mark.parametrize("name", examples())
def test_an_example_can_be_started_and_is_listed(name: str, tmp_path: Path) -> None:
    assert call("new", tmp_path / "mine", "--example", name).status == 0
    assert sorted(path.name for path in (tmp_path / "mine").iterdir()) == sorted(
        path.name for path in (EXAMPLES / name).iterdir()
    )
    assert f"--example {name} " in call("new", "--help").out
