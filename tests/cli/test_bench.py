"""The command `bench`."""

from pathlib import Path

import pytest

from tests.cli.calling import call
from tests.core.work.works import MINUTES, TROOP
from tests.forces import EXAMPLES, HEAD

MARENZ = EXAMPLES / "marenz"


@pytest.fixture
def troop(tmp_path: Path) -> Path:
    """A small force without stock; a week at its bench has an hour."""
    (tmp_path / "force.yaml").write_text(HEAD + TROOP + MINUTES + "  week: 1 h\n", encoding="utf-8")
    return tmp_path


def test_the_ladder_for_people() -> None:
    answer = call("bench", MARENZ)
    assert answer.status == 0
    for line in (
        "Soonest: 34.5 h in 9 batches.",
        "    15 h ├─ 4. 12 rifle sections, 12 h: 6 in No 1 Company, 6 in No 2 Company",
        "         │     assembled 3 h, undercoated 3 h, painted 3 h, based 3 h",
        "    19 h ┝━━━━ smallest legal force: 19 h, week 5",
        "  34.5 h ┝━━━━ whole battalion: 34.5 h, week 9",
        "smallest legal force      21    19 h     5   34.5 h     9       67",
        "Stands still to be finished; figures that aren't owned yet. A week has 4 h.",
        "Kind by kind the smallest legal force would be playable at 34.5 h: 15.5 h later.",
        "Exact: no order of work has less weighted waiting for these milestones.",
    ):
        assert line in answer.out


def test_the_same_kind_by_kind() -> None:
    answer = call("bench", MARENZ, "--by-kind")
    assert "Kind by kind: 34.5 h in 6 batches." in answer.out
    assert "    24 h ├─ 1. 24 rifle sections, 24 h: 6 in No 1 Company," in answer.out
    assert "  34.5 h ┝━━━━ smallest legal force: 34.5 h, week 9" in answer.out
    assert "Exact" not in answer.out


def test_the_ladder_for_programs() -> None:
    document = call("bench", MARENZ, "--json").document
    first, second = document["milestones"]
    assert {key: first[key] for key in ("name", "minutes", "stands", "printed", "week")} == {
        "name": "smallest legal force",
        "minutes": "1140",
        "stands": 21,
        "printed": 4,
        "week": 5,
    }
    assert (first["minutes_by_kind"], first["week_by_kind"], second["week"]) == ("2070", 9, 9)
    assert (document["certainty"], document["bound"], document["minutes"]) == (
        "exact",
        None,
        "2070",
    )
    batches = document["batches"]
    assert [batch["ends"] for batch in batches if batch["completes"]] == ["1140", "2070"]
    assert batches[3]["stages"]["painted"] == "180"
    assert batches[1]["stands"] == ["Battalion Command"]
    assert document["critical"]["stand"] == "Battalion Command"
    assert document["by_kind"]["batches"][0]["pattern"] == "rifle section"


def test_long_lines_go_on_beside_the_rail() -> None:
    first, more, *_ = call("bench", MARENZ, "--by-kind").out.split("\n\n")[1].split("\n")
    assert first.endswith("6 in No 3 Company, 6")
    assert more == "         │     in No 4 Company"


def test_what_can_be_played_now_and_a_bench_with_nothing_to_do(troop: Path) -> None:
    stock = "stock stands: {command: {painted: 3}, section: {painted: 4}}\n"
    (troop / "stock.yaml").write_text(stock, encoding="utf-8")
    assert "Playable now: smallest legal force.\nSoonest: 50 min in 2 batches." in (
        call("bench", troop).out
    )
    (troop / "stock.yaml").write_text(
        stock.replace("3", "4").replace("4}}", "6}}"), encoding="utf-8"
    )
    answer = call("bench", troop)
    assert answer.out.endswith("Nothing is left to do at the bench.\n")
    document = call("bench", troop, "--json").document
    assert (document["batches"], document["critical"], document["certainty"]) == ([], None, "exact")


def test_without_a_week_no_week_is_said(troop: Path) -> None:
    force = (troop / "force.yaml").read_text(encoding="utf-8")
    (troop / "force.yaml").write_text(force.replace("  week: 1 h\n", ""), encoding="utf-8")
    answer = call("bench", troop)
    assert "smallest legal force: 1.83 h\n" in answer.out
    assert call("bench", troop, "--json").document["milestones"][0]["week"] is None


def test_what_is_owned_needs_no_buying(troop: Path) -> None:
    stock = "stock: {officer: {raw: 9}, rifleman: {raw: 99}}\n"
    (troop / "stock.yaml").write_text(stock, encoding="utf-8")
    assert "Not owned yet" not in call("bench", troop).out


def test_a_slip_is_a_stop(troop: Path) -> None:
    assert call("bench", troop, "--set", "company=x").status == 1
    assert call("bench", troop, "--game", "raid").status == 1
