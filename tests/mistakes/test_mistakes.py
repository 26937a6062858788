"""Every sort of slip in the smallest file that has it: what is said, where, and the way out.

Each folder holds the input, `expected.txt` with what is printed, and the same input `mended` as the
finding tells, which has to bring nothing to say. What only an order can show is found by ordering,
what only months can show by spreading the order over them, with the bench or without, what a plan
of supporting troops does by judging it, what an order of work needs by making one, how marks are
told apart by comparing them, and what trays are too small for by packing them.
"""

import datetime
import os
from dataclasses import replace
from pathlib import Path

import openpyxl
import pytest

from paradestate.core.certainty import Within
from paradestate.core.choice import Choice
from paradestate.core.finding import Finding, Level
from paradestate.core.order import OrderProblem
from paradestate.core.order_outcome import OrderAnswer, Outcome
from paradestate.journeys.bench.bench import order_of_work
from paradestate.journeys.bench.bench_months import months_at_bench
from paradestate.journeys.check import checked
from paradestate.journeys.judge import Asked, judge
from paradestate.journeys.marks import AskedMarks, marks
from paradestate.journeys.months import Terms, months_of_order
from paradestate.journeys.order import Request, Search, order
from paradestate.journeys.trays import AskedToPack, trays
from paradestate.solve.order import cheapest_order

FOLDER = Path(__file__).parent
CASES = sorted(path.name for path in FOLDER.iterdir() if any(path.glob("*.yaml")))
ON = datetime.date(2026, 3, 5)
FOUND_BY_ORDERING = {"27-nobody-sells", "33-much-left-over", "84-stopped-by-the-clock"}
FOUND_BY_JUDGING = {
    "40-over-the-points",
    "41-over-the-limit",
    "43-need-missing",
    "45-exclusive-pair",
    "58-worst-roll-short",
    "59-points-unspendable",
    "60-hosts-short",
    "61-transport-short",
    "63-not-finished",
}
FOUND_BY_SPREADING = {"32-bought-too-late"}
FOUND_BY_SPREADING_FOR_THE_BENCH = {"32-limit-moves-the-date", "34-parcel-after-deadline"}
FOUND_BY_PACKING = {"14-larger-than-the-tray", "72-tray-too-low"}
FOUND_AT_THE_BENCH = {"39-must-have-left-out"}
FOUND_BY_MARKING = {
    "68-colours-alike",
    "69-mark-twice",
    "70-enemy-alike",
    "71-marks-too-few",
}
OF_DATES = {"week-unsaid"}
"""What is said of every force of which no session is logged."""
SECONDS = 60

SMALL = """\
format: 1
title: Slips
figures: {rifleman: {footprint: 6 mm}}
stands: {rifle section: {base: 40 x 20 mm, figures: {rifleman: 4}}}
formations: {platoon: {parts: {rifle section: 2}}}
raise: {formation: platoon}
"""


def printed(found: Finding) -> str:
    place = found.place
    at = f"{Path(place.file).name}:{place.line}:{place.column}"
    return (
        f"{at}: {found.level}: {found.message} [{found.code}]\n"
        f"    {found.effect}\n    {found.hint}\n"
    )


def findings_in(folder: Path) -> tuple[Finding, ...]:
    search = Search(seconds=SECONDS)
    if FOUND_BY_SPREADING & set(folder.parts):
        plan = months_of_order(
            folder,
            today=ON,
            choice=Choice(),
            request=Request(),
            search=search,
            terms=Terms(begins=ON),
        )
        return plan.checked.findings
    if FOUND_BY_SPREADING_FOR_THE_BENCH & set(folder.parts):
        timely = months_at_bench(
            folder,
            today=ON,
            choice=Choice(),
            request=Request(),
            search=search,
            terms=Terms(begins=ON),
        )
        return timely.checked.findings
    if FOUND_AT_THE_BENCH & set(folder.parts):
        found = order_of_work(folder, today=ON, choice=Choice()).checked.findings
        return tuple(each for each in found if each.code not in OF_DATES)
    if FOUND_BY_MARKING & set(folder.parts):
        return marks(folder, today=ON, choice=Choice(), asked=AskedMarks()).checked.findings
    if FOUND_BY_PACKING & set(folder.parts):
        return trays(folder, today=ON, asked=AskedToPack()).checked.findings
    if FOUND_BY_JUDGING & set(folder.parts):
        return judge(folder, today=ON, choice=Choice(), grades={}, asked=Asked()).checked.findings
    if not FOUND_BY_ORDERING & set(folder.parts):
        return checked(folder, today=ON).findings
    answer = order(folder, today=ON, choice=Choice(), request=Request(), search=search)
    return answer.checked.findings


def stopped(problem: OrderProblem, *, seconds: float, **_: object) -> Outcome:
    """The order that the search finds, as if the clock had ended it 60 pence short of a proof."""
    outcome = cheapest_order(problem, seconds=seconds)
    assert isinstance(outcome, OrderAnswer)
    bound = Within(bound=outcome.order.total - 60)
    return replace(outcome, certainty=bound, out_of_time=True)


@pytest.mark.parametrize("case", CASES)
def test_a_slip_is_said_at_its_place_with_a_way_out(
    case: str, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Set NEW_EXPECTATIONS to write what is printed now; then read every line of the difference."""
    monkeypatch.chdir(FOLDER)
    if case == "84-stopped-by-the-clock":
        monkeypatch.setattr("paradestate.journeys.order.cheapest_order", stopped)
    text = "".join(printed(found) for found in findings_in(Path(case)))
    if "NEW_EXPECTATIONS" in os.environ:
        (FOLDER / case / "expected.txt").write_text(text, encoding="utf-8")
    assert text == (FOLDER / case / "expected.txt").read_text(encoding="utf-8")


@pytest.mark.parametrize("case", [case for case in CASES if (FOLDER / case / "mended").is_dir()])
def test_the_way_out_leaves_nothing_to_say(case: str) -> None:
    assert findings_in(FOLDER / case / "mended") == ()


@pytest.mark.parametrize("case", CASES)
def test_a_place_is_where_something_stands(case: str) -> None:
    for found in findings_in(FOLDER / case):
        line = Path(found.place.file).read_text(encoding="utf-8").split("\n")[found.place.line - 1]
        assert line[found.place.column - 1].strip(), found


def test_many_slips_in_several_files_are_all_found_in_one_run() -> None:
    found = findings_in(FOLDER / "all-at-once")
    assert len(found) >= 40
    assert len({finding.place.file for finding in found}) == 3
    assert {finding.level for finding in found} == {Level.STOP, Level.WARN, Level.REMARK}


def test_a_picture_is_not_force_data(tmp_path: Path) -> None:
    (tmp_path / "force.yaml").write_bytes(b"\x89PNG\r\n\x1a\n\x00\x00\x00\rIHDR")
    (found,) = findings_in(tmp_path)
    assert (found.code, found.level) == ("not-text", Level.STOP)
    assert found.message == "This is a picture (PNG), not force data."
    assert (found.place.line, found.place.column) == (1, 1)


def test_a_spreadsheet_that_made_a_date_of_a_range(tmp_path: Path) -> None:
    (tmp_path / "force.yaml").write_text(SMALL, encoding="utf-8")
    book = openpyxl.Workbook()
    sheet = book.worksheets[0]
    sheet.title = "supporting troops"
    sheet.append(["entry", "cost", "when refused", "roll", "allows 0", "allows all"])
    sheet.append(["guns", 4, "points kept", "1d4", datetime.date(2026, 3, 1), 4])
    book.save(tmp_path / "list.xlsx")
    (found,) = findings_in(tmp_path)
    assert (found.code, found.level) == ("date-for-range", Level.WARN)
    assert found.message == "supporting troops!E2: '1-3' has become '1 March'."
    assert found.effect == "Read as 1-3."
    assert (found.place.cell, found.place.line) == ("supporting troops!E2", 2)
    assert found.place.column == 5


def test_a_comma_in_a_spreadsheet_is_read_with_a_warning(tmp_path: Path) -> None:
    (tmp_path / "force.yaml").write_text(SMALL, encoding="utf-8")
    (tmp_path / "sources.csv").write_text(
        "source;currency;carriage\nNorth;GBP;0: 3.50\n", encoding="utf-8"
    )
    (tmp_path / "packs.csv").write_text(
        "source;pack;price;holds\nNorth;N1;3,50;rifleman: 10\n", encoding="utf-8"
    )
    read = checked(tmp_path, today=ON)
    (found,) = read.findings
    assert (found.code, found.level) == ("comma-decimal", Level.WARN)
    assert found.place.cell == "packs!C2"
    assert read.force.sources["North"].packs["N1"].price == 350
