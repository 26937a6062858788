"""The command `spreadsheet`."""

from pathlib import Path

import openpyxl
import pytest

from tests.cli.calling import call


@pytest.mark.parametrize("ending", ["xlsx", "ods"])
def test_what_is_written_can_be_read_instead(folder: Path, ending: str) -> None:
    before = call("order", folder, "--json").document
    file = folder.parent / f"prices.{ending}"
    answer = call("spreadsheet", folder, file, "--only", "sources", "--only", "packs")
    assert answer.status == 0
    assert "(sources, packs)" in answer.out
    (folder / "prices.yaml").unlink()
    file.rename(folder / file.name)
    assert call("order", folder, "--json").document == before


def test_a_csv_file_holds_the_sheet_it_is_called_after(folder: Path) -> None:
    file = folder.parent / "packs.csv"
    assert call("spreadsheet", folder, file, "--json").document["file"] == str(file)
    assert "North,N1,infantry box,20.00" in file.read_text(encoding="utf-8-sig")


@pytest.mark.parametrize(
    ("name", "said"),
    [
        ("mine.csv", "'packs.csv'"),
        ("mine.txt", "should end in .xlsx, .ods, .csv"),
        ("stock.xlsx", "nothing to write"),
    ],
)
def test_files_that_can_not_be_made(folder: Path, name: str, said: str) -> None:
    only = ("--only", "stock") if name == "stock.xlsx" else ()
    answer = call("spreadsheet", folder, folder.parent / name, *only)
    assert answer.status == 2
    assert said in answer.err


def test_nothing_is_overwritten(folder: Path) -> None:
    answer = call("spreadsheet", folder, folder / "force.yaml")
    assert answer.status == 2
    assert "nothing is overwritten" in answer.err


def test_a_stop_prevents_the_writing(folder: Path) -> None:
    (folder / "more.yaml").write_text("figures: {x: {sort: y}}\n", encoding="utf-8")
    file = folder.parent / "x.xlsx"
    assert call("spreadsheet", folder, file).status == 1
    assert not file.exists()


def test_an_empty_form_is_written_and_explained(folder: Path) -> None:
    file = folder.parent / "list.xlsx"
    answer = call("spreadsheet", folder, file, "--form")
    assert "Written: " in answer.out
    assert f"read-back {folder} --only 'supporting troops'" in answer.out
    assert openpyxl.load_workbook(file).sheetnames == ["supporting troops", "how to fill it in"]
    assert call("spreadsheet", folder, file, "--form").status == 2


def test_a_form_of_one_sheet_is_called_after_it(folder: Path) -> None:
    file = folder.parent / "supporting troops.csv"
    document = call("spreadsheet", folder, file, "--form", "--json").document
    assert document["sheets"] == ["supporting troops"]
    assert file.read_text(encoding="utf-8-sig").startswith("entry,held at,cost,each,limit,roll,")
    assert call("spreadsheet", folder, folder.parent / "mine.csv", "--form").status == 2


def test_a_stop_prevents_the_form(folder: Path) -> None:
    (folder / "more.yaml").write_text("figures: {x: {sort: y}}\n", encoding="utf-8")
    file = folder.parent / "list.xlsx"
    assert call("spreadsheet", folder, file, "--form").status == 1
    assert not file.exists()
