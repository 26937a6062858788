"""The command `bench --cards`."""

from pathlib import Path

import pytest

from paradestate.core.sentence.caution import FIRST
from tests.cli.calling import call
from tests.cli.test_bench_supplies import DONE
from tests.forces import EXAMPLES

MARENZ = EXAMPLES / "marenz"


@pytest.fixture
def coloured(tmp_path: Path) -> Path:
    """A force of one figure with colours, of which one has more coats than boxes."""
    colours = "tunic: [{colour: sand, coats: 2, share: 40%}, {colour: glaze, coats: 9}]"
    bench = f"bench: {{colours: {{{colours}}}, dry: {{painted: 1 h}}, minutes:"
    text = DONE.replace("bench: {minutes:", bench)
    (tmp_path / "force.yaml").write_text(text, encoding="utf-8")
    return tmp_path


def test_every_batch_has_its_card_and_the_cautions_come_once() -> None:
    answer = call("bench", MARENZ, "--cards")
    assert answer.status == 0
    assert answer.out.count("\nBatch ") == 9
    assert "Batch 4: 12 rifle sections, 12 h of work" in answer.out
    assert "With it the smallest legal force can be played." in answer.out
    assert " ".join(answer.out.split()).count(FIRST) == 1


def test_as_far_as_a_milestone() -> None:
    answer = call("bench", MARENZ, "--cards", "--up-to", "smallest legal force")
    assert answer.out.count("\nBatch ") == 6


def test_stages_are_ticked_where_they_are_done(coloured: Path) -> None:
    (coloured / "stock.yaml").write_text("stock: {rifleman: {assembled: 1}}\n", encoding="utf-8")
    answer = call("bench", coloured, "--cards")
    assert "stand    undercoated  painted  based" in answer.out
    assert "Section          [ ]      [ ]    [ ]" in answer.out


def test_colour_cards_have_a_box_for_each_coat(coloured: Path) -> None:
    answer = call("bench", coloured, "--cards")
    assert "Colours of 1 rifleman\nOn: section.\n" in answer.out
    assert "[ ] [ ] Tunic: sand, 2 coats on 40%" in answer.out
    assert "[ ] [ ] [ ] [ ] [ ] [ ] Tunic: glaze, 9 coats" in answer.out
    assert "Tunic: sand, 2 coats on 40%; glaze, 9 coats." in answer.out


def test_the_same_for_programs(coloured: Path) -> None:
    document = call("bench", coloured, "--cards", "--json").document
    (card,) = document["cards"]
    assert card["stands"] == [
        {
            "name": "Section",
            "to_reach": ["assembled", "undercoated", "painted", "based"],
            "lacking": {"rifleman": 1},
        }
    ]
    (part,) = card["parts"]
    assert part["kinds"] == ["rifleman"]
    assert part["coats"][0] == {"colour": "sand", "coats": 2, "share": "2/5"}
    assert card["dry"] == {"painted": "60"}
    (colours,) = document["colours"]
    assert (colours["kind"], colours["figures"], colours["patterns"]) == (
        "rifleman",
        1,
        ["section"],
    )


def test_a_bench_with_nothing_to_do_has_no_cards(coloured: Path) -> None:
    (coloured / "stock.yaml").write_text("stock: {rifleman: {based: 1}}\n", encoding="utf-8")
    assert call("bench", coloured, "--cards").out.endswith("Nothing is left to do at the bench.\n")


def test_a_milestone_that_is_none_is_a_stop() -> None:
    assert call("bench", MARENZ, "--cards", "--up-to", "tomorrow").status == 1
