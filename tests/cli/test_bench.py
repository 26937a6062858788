"""The command `bench`."""

import datetime
from fractions import Fraction
from pathlib import Path

import pytest

from tests.cli.calling import call
from tests.core.work.works import MINUTES, TROOP
from tests.forces import EXAMPLES, HEAD

MARENZ = EXAMPLES / "marenz"
ON = datetime.date(2026, 3, 5)


@pytest.fixture
def troop(tmp_path: Path) -> Path:
    """A small force without stock; a week at its bench has an hour."""
    (tmp_path / "force.yaml").write_text(HEAD + TROOP + MINUTES + "  week: 1 h\n", encoding="utf-8")
    return tmp_path


def test_the_ladder_for_people() -> None:
    answer = call("bench", MARENZ)
    assert answer.status == 0
    for line in (
        "Next to be played: smallest legal force, after 19 h. In all: 34 h 30 min in 9 batches.",
        "    15 h ├─ 4. 12 rifle sections, 12 h: 6 in No 1 Company, 6 in No 2 Company",
        "         │     assembled 3 h, undercoated 3 h, painted 3 h, based 3 h",
        "    19 h ┝━━━━ smallest legal force: 19 h, week 5",
        "34 h 30 ┝━━━━ whole battalion: 34 h 30 min, week 9",
        "smallest legal force      21         19 h     5  34 h 30 min     9       67",
        "figures that aren't owned yet. A week has 4 h, days away or not.",
        "the smallest legal force would be playable at 34 h 30 min: 15 h 30 min later.",
        "Exact: no order of work has less weighted waiting for these milestones.",
    ):
        assert line in answer.out


def test_the_same_kind_by_kind() -> None:
    answer = call("bench", MARENZ, "--by-kind")
    assert "Kind by kind: 34 h 30 min in 6 batches." in answer.out
    assert "    24 h ├─ 1. 24 rifle sections, 24 h: 6 in No 1 Company," in answer.out
    assert "34 h 30 ┝━━━━ smallest legal force: 34 h 30 min, week 9" in answer.out
    assert "Exact: no order of work" not in answer.out


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
    next_ = "Next to be played: whole top, after 50 min. In all: 50 min in 2 batches."
    assert f"Playable now: smallest legal force.\n{next_}\n" in call("bench", troop).out
    (troop / "stock.yaml").write_text(
        stock.replace("3", "4").replace("4}}", "6}}"), encoding="utf-8"
    )
    answer = call("bench", troop)
    assert "Nothing is left to do at the bench.\n" in answer.out
    assert answer.out.endswith("Nothing is left to do at the bench.\n")
    assert "rest" not in answer.out
    document = call("bench", troop, "--json").document
    assert (document["batches"], document["critical"], document["certainty"]) == ([], None, "exact")


def test_what_takes_no_minutes_is_not_reached_while_figures_are_lacking(troop: Path) -> None:
    none = "bench: {stages: [raw, painted], minutes: {foot: {painted: 0}}, week: 1 h}\n"
    (troop / "force.yaml").write_text(HEAD + TROOP + none, encoding="utf-8")
    answer = call("bench", troop, "--keep")
    lacks = "takes no more minutes, but lacks 3 officers and 19 riflemen"
    said = " ".join(answer.out.split())
    assert f"Next to be played: smallest legal force. It {lacks}." in said
    assert "smallest legal force 0 min - - -" in said
    assert "nobody says when all of that comes, so it has no date." in answer.out.replace(
        "\n    ", " "
    )
    assert "rest on" not in answer.out
    assert answer.out.endswith("There are no dates to keep; nothing is written.\n")
    first, _ = call("bench", troop, "--json").document["milestones"]
    assert (first["half_chance"], first["batch"], first["waits"]) == (None, 2, {})


def test_what_takes_no_minutes_has_the_day_of_its_parcel(troop: Path) -> None:
    none = "bench: {stages: [raw, painted], minutes: {foot: {painted: 0}}}\n"
    north = "{currency: GBP, carriage: {0: 0}, packs: {A: {price: 1, holds: {gun: 1}}}}"
    sources = f"sources: {{North: {north}}}\n"
    (troop / "force.yaml").write_text(HEAD + TROOP + none + sources, encoding="utf-8")
    day = "2126-03-20"
    named = ("--source", "North", "--expected", day)
    assert call("log", troop, "ordered", "rifleman=40, officer=9", *named).status == 0
    first, _ = call("bench", troop, "--json").document["milestones"]
    assert (first["half_chance"], first["nineteen_in_twenty"]) == (day, day)
    assert first["waits"] == {"North": "0"}
    told = " ".join(call("bench", troop).out.split())
    assert "it waits for what comes from North, and for no work." in told


def test_without_a_week_no_week_is_said(troop: Path) -> None:
    force = (troop / "force.yaml").read_text(encoding="utf-8")
    (troop / "force.yaml").write_text(force.replace("  week: 1 h\n", ""), encoding="utf-8")
    answer = call("bench", troop)
    assert "smallest legal force: 1 h 50 min\n" in answer.out
    assert "No dates: nothing says how much is done in a week.\n" in answer.out
    assert "[week-unsaid]" in answer.err
    assert call("bench", troop, "--json").document["milestones"][0]["week"] is None


def test_what_is_owned_needs_no_buying(troop: Path) -> None:
    stock = "stock: {officer: {raw: 9}, rifleman: {raw: 99}}\n"
    (troop / "stock.yaml").write_text(stock, encoding="utf-8")
    assert "Not owned yet" not in call("bench", troop).out


def test_a_slip_is_a_stop(troop: Path) -> None:
    assert call("bench", troop, "--set", "company=x").status == 1
    assert call("bench", troop, "--game", "raid").status == 1


LOGGED = (
    "received officer=9,rifleman=99",
    "session rifleman=4 --from raw --to painted --minutes 40",
)


@pytest.fixture
def at_work(troop: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """The troop on a day on which a session was logged, with game nights to come."""
    with (troop / "force.yaml").open("a", encoding="utf-8") as file:
        file.write("aim: {game nights: [every 2 weeks from 2026-03-12 until 2026-06-30]}\n")
    for module in ("bench", "log", "log_option"):
        monkeypatch.setattr(f"paradestate.cli.{module}.today", lambda: ON)
    for words in LOGGED:
        assert call("log", troop, *words.split()).status == 0
    return troop


def test_dates_beside_the_ladder(at_work: Path) -> None:
    out = call("bench", at_work).out
    assert ", four in five by 2" in out
    assert ", week " not in out
    for line in (
        "Dates by which that is done, in this order of work",
        "The dates rest on your own week of 1 h, taken as uncertain: 1 session logged,",
        "Exact: every course of the weeks to come is added up.",
        "Minutes for a figure, or a whole stand, learned from 1 stretch of work",
        "  foot: primed 2, given 1 (25 in 100), painted 5, given 4 (25 in 100)",
        "Game nights, with the chance to be ready on the evening before",
        "12 March 2026 ",
        "2 more nights within a year.",
    ):
        assert line in out
    assert "four in five by" not in call("bench", at_work, "--by-kind").out


def test_dates_for_programs(at_work: Path) -> None:
    document = call("bench", at_work, "--json").document
    for each in document["milestones"]:
        days = [each[key] for key in ("half_chance", "four_in_five", "nineteen_in_twenty")]
        assert days == sorted(days)
        assert each["between"]["half_chance"] == [days[0], days[0]]
        assert each["week"] is None
    forecast = document["forecast"]
    assert (forecast["certainty"], forecast["draws"], forecast["begins"]) == (
        "exact",
        None,
        "2026-03-06",
    )
    night = document["nights"][0]
    assert (night["day"], set(night["ready"])) == (
        "2026-03-12",
        {each["name"] for each in document["milestones"]},
    )
    assert document["learned"]["rates"][0]["logged"] == "1/4"
    assert (document["kept"], document["calendar"]) == (None, None)


def test_the_chance_by_the_deadline_is_said(at_work: Path) -> None:
    assert "by the deadline" not in call("bench", at_work).out
    assert call("bench", at_work, "--json").document["milestones"][0]["by_deadline"] is None
    text = (at_work / "force.yaml").read_text(encoding="utf-8")
    text = text.replace("aim: {", "aim: {deadline: 2026-03-20, ")
    (at_work / "force.yaml").write_text(text, encoding="utf-8")
    said = " ".join(call("bench", at_work).out.split())
    first, _ = call("bench", at_work, "--json").document["milestones"]
    chance = round(Fraction(first["by_deadline"]) * 100)
    assert 0 < chance < 100
    told = f"Ready by the deadline, 20 March 2026: the smallest legal force {chance} in 100 and the"
    assert told in said


def test_dates_that_are_drawn_say_so(at_work: Path) -> None:
    early = ("session", "--minutes", 60, "--on", "2026-02-01")
    assert call("log", at_work, *early).status == 0
    assert "Sampled: 10000 courses of the weeks to come, seed 1;" in call("bench", at_work).out
    forecast = call("bench", at_work, "--json").document["forecast"]
    assert (forecast["certainty"], forecast["draws"], forecast["weeks"]) == ("sampled", 10_000, 4)


def test_dates_are_kept_once_a_day(at_work: Path) -> None:
    kept = call("bench", at_work, "--keep")
    assert "\nKept: the dates of 2 milestones, in the journal (entry " in kept.out
    again = call("bench", at_work, "--keep")
    assert again.out.endswith("Dates of today are kept already; nothing is added.\n")
    assert "2 forecasts kept of which the date of four in five is to come" in again.out
    document = call("bench", at_work, "--keep", "--json").document
    assert document["kept"] == {"outcome": "kept already", "entry": None}
    assert document["calibration"]["to_come"] == 2
    assert "forecast" in call("log", at_work).out


def test_only_what_the_folder_raises_is_kept(at_work: Path) -> None:
    answer = call("bench", at_work, "--keep", "--set", "company=2")
    assert answer.status == 2
    assert "--keep is for the force as the folder raises it" in answer.err


def test_what_cannot_be_kept_is_told(troop: Path) -> None:
    force = (troop / "force.yaml").read_text(encoding="utf-8")
    (troop / "force.yaml").write_text(force.replace("  week: 1 h\n", ""), encoding="utf-8")
    file = troop / "bench.ics"
    answer = call("bench", troop, "--keep", "--calendar", file)
    assert answer.status == 0
    assert answer.out.endswith(
        f"{file} isn't written: there is neither a date nor a game night to mark.\n"
        "There are no dates to keep; nothing is written.\n"
    )


def test_a_calendar_is_written_and_replaced(at_work: Path, tmp_path: Path) -> None:
    file = tmp_path / "bench.ics"
    assert call("bench", at_work, "--calendar", file).out.endswith(f"Written: {file} (12 days).\n")
    assert call("bench", at_work, "--calendar", file).out.endswith(
        f"{file} says so already (12 days); nothing is written.\n"
    )
    file.write_bytes(file.read_bytes().replace(b"SUMMARY:", b"SUMMARY:My ", 1))
    assert f"Written: {file} (12 days); the one before is kept as " in (
        call("bench", at_work, "--calendar", file).out
    )
    document = call("bench", at_work, "--calendar", file, "--json").document
    assert document["calendar"] == str(file)
    file.write_text("mine", encoding="utf-8")
    refused = call("bench", at_work, "--calendar", file)
    assert (refused.status, refused.out) == (2, "")
    assert file.read_text(encoding="utf-8") == "mine"
