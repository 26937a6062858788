"""The command `sweep`."""

import json
import signal
import subprocess
import sys
import time
from collections.abc import Iterator
from pathlib import Path

import pytest

from paradestate.cli import main
from tests.cli.calling import Called, call
from tests.workers.running import running_cluster

GAME = ("--game", "whole-day attack")
GUNS = ("--price", "anti-tank guns(1)=3-5")
pytestmark = pytest.mark.slow


def sweep(*words: object) -> Called:
    return call("sweep", *words, *GAME)


@pytest.fixture(scope="module")
def address(tmp_path_factory: pytest.TempPathFactory) -> Iterator[str]:
    with running_cluster(tmp_path_factory.mktemp("cluster")) as running:
        yield running.address


def test_each_combination_has_a_row(folder: Path) -> None:
    answer = sweep(folder, *GUNS, "--limit", "light tanks=1-2", "--workers", "1")
    assert answer.status == 0
    rows = [line.split() for line in answer.out.splitlines()]
    for row in (
        ["3", "1", "4,119", "0", "310"],
        ["4", "1", "3,809", "0", "0"],
        ["5", "2", "3,578", "232", "1"],
    ):
        assert row in [each[:5] for each in rows]
    assert "All 6 changes were looked at. Exact." in answer.out


def test_a_row_is_what_compare_says(folder: Path) -> None:
    alone = call("compare", folder, *GAME, "--price", "anti-tank guns(1)=5", "--json")
    level = next(
        each for each in json.loads(alone.out)["games"][0]["by_points"] if each["points"] == 18
    )
    row = json.loads(sweep(folder, *GUNS, "--workers", "1", "--json").out)["rows"][2]
    assert row["changes"] == [{"entry": "anti-tank guns", "number": 1, "price": 5}]
    assert (row["legal_old"], row["legal_new"]) == (level["legal_old"], level["legal_new"])
    assert (row["lost"], row["gained"]) == (level["lost"], level["gained"])
    assert row["best"] == level["best_new"]


def test_a_cluster_gives_the_same_answers(folder: Path, address: str) -> None:
    asked = (folder, *GUNS, "--worth", "light tanks(2)=8-11", "--json")
    assert sweep(*asked, "--on", address).out == sweep(*asked, "--workers", "2").out


def test_where_no_cluster_answers_the_world_has_failed(
    folder: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    monkeypatch.setattr("paradestate.workers.cluster.REACH_SECONDS", 0.5)
    words = ["paradestate", "sweep", str(folder), *GAME, *GUNS, "--on", "nowhere:1"]
    monkeypatch.setattr(sys, "argv", words)
    with pytest.raises(SystemExit) as ended:
        main()
    assert ended.value.code == 3
    assert "paradestate: no cluster answers at nowhere:1" in capsys.readouterr().err


@pytest.mark.parametrize("price", ["lances=1-2", "anti-tank guns(7)=4"])
def test_what_fits_no_game_is_a_stop(folder: Path, price: str) -> None:
    answer = sweep(folder, "--price", price)
    assert answer.status == 1
    assert "[amendment-unfitting]" in answer.err


def test_several_lists_are_swept_at_once(folder: Path) -> None:
    answer = sweep(folder, folder, "--price", "anti-tank guns(1)=5", "--workers", "1", "--json")
    rows = json.loads(answer.out)["rows"]
    assert len(rows) == 2
    assert rows[0] == rows[1]


@pytest.mark.parametrize(
    ("words", "said"),
    [
        (("--price", "anti-tank guns=x"), "'x' isn't a whole number."),
        (("--limit", "light tanks=5-2"), "5-2 runs backwards."),
        (("--limit", "light tanks=0-5000"), "0-5000 has 5,001 values; at most 1,000 are taken."),
        (("--worth", "light tanks=some"), "'some' isn't a worth."),
        (("--worth", "light tanks=0-999", "--price", "pioneers=1-400"), "400,000 combinations"),
    ],
)
def test_slips_are_stops(folder: Path, words: tuple[str, ...], said: str) -> None:
    answer = sweep(folder, *words)
    assert answer.status == 1
    assert said in answer.err
    assert answer.out == ""


def test_something_has_to_be_varied(folder: Path) -> None:
    answer = sweep(folder)
    assert answer.status == 2
    assert "Say what is varied" in answer.err


def test_what_does_not_fit_a_game_is_said_in_its_row(folder: Path) -> None:
    words = (folder, "--price", "field works for a company=3", "--points", "5", "--workers", "1")
    answer = call("sweep", *words)
    assert answer.status == 0
    assert "Not computed: 3: field works for a company: it isn't on offer" in answer.out
    rows = json.loads(call("sweep", *words, "--json").out)["rows"]
    assert [row["certainty"] for row in rows] == ["not computed", "exact"] * 2
    change = {"entry": "field works for a company", "number": None, "price": 3}
    assert rows[0]["changes"] == [change]


def test_long_tables_are_shortened(folder: Path) -> None:
    answer = sweep(
        folder, "--limit", "light tanks=any", "--worth", "light tanks=0-79", "--points", "5"
    )
    assert "20 rows between these aren't shown; --json gives all." in answer.out


def test_values_typed_apart_are_taken_one_after_the_other(folder: Path) -> None:
    typed = ("--worth", "light tanks=1.5", "--worth", "light tanks=9", "--worth", "light tanks=9")
    rows = json.loads(sweep(folder, *typed, "--workers", "1", "--json").out)["rows"]
    assert [each["changes"][0]["worth"] for each in rows] == ["3/2", "9"]


def test_ctrl_c_keeps_the_answers_so_far(folder: Path) -> None:
    command = [sys.executable, "-m", "paradestate", "sweep", str(folder), *GAME, "--json"]
    many = ("--worth", "light tanks=0-999", "--price", "pioneers=1-90", "--workers", "2")
    with subprocess.Popen(
        [*command, *many], stdout=subprocess.PIPE, stderr=subprocess.PIPE, text=True
    ) as process:
        time.sleep(6)
        process.send_signal(signal.SIGINT)
        out, err = process.communicate(timeout=20)
    document = json.loads(out)
    assert "Stopping with the best so far" in err
    assert 0 < document["answered"] < document["questions"] == 90_000
