"""Papers written into a folder."""

import datetime
from dataclasses import replace
from pathlib import Path

import pytest

from paradestate.journeys.paper.sheet_files import write_sheets
from paradestate.journeys.paper.sheets import Sheet
from paradestate.journeys.spreadsheet import CannotWriteError
from paradestate.sheet.paper.typesetting import Printed
from paradestate.text import whole_file
from paradestate.text.error import FileError

AT = datetime.datetime(2026, 3, 5, 20, 15, tzinfo=datetime.UTC)


def sheet(words: str = "one") -> Sheet:
    pdf = f"%PDF-1.7 Parade State {words}".encode()
    return Sheet(
        name="key card", title="Key card", printed=Printed(pdf=pdf, pages=1, least_type=())
    )


def test_a_paper_goes_into_a_folder_that_is_made_for_it(tmp_path: Path) -> None:
    (written,) = write_sheets((sheet(),), out=tmp_path / "new" / "papers", at=AT)
    assert written.path == tmp_path / "new" / "papers" / "key-card.pdf"
    assert written.path.read_bytes() == sheet().printed.pdf
    assert written.former is None


def test_the_same_paper_isnt_written_again_and_another_one_is_kept(tmp_path: Path) -> None:
    write_sheets((sheet(),), out=tmp_path, at=AT)
    (same,) = write_sheets((sheet(),), out=tmp_path, at=AT)
    assert same.former is None
    (other,) = write_sheets((sheet("two"),), out=tmp_path, at=AT)
    assert other.former is not None
    assert other.former.read_bytes() == sheet().printed.pdf
    assert other.path.read_bytes() == sheet("two").printed.pdf


def test_no_other_file_is_touched_and_then_nothing_is_written(tmp_path: Path) -> None:
    mine = tmp_path / "key-card.pdf"
    mine.write_bytes(b"%PDF-1.4 my holiday")
    first = replace(sheet(), name="labels")
    with pytest.raises(CannotWriteError, match="isn't a paper of `sheets`"):
        write_sheets((first, sheet()), out=tmp_path, at=AT)
    assert mine.read_bytes() == b"%PDF-1.4 my holiday"
    assert not (tmp_path / "labels.pdf").exists()


def test_a_link_that_leads_nowhere_stays_as_it_is(tmp_path: Path) -> None:
    link = tmp_path / "key-card.pdf"
    link.symlink_to(tmp_path / "gone.pdf")
    with pytest.raises(CannotWriteError, match="nothing is overwritten"):
        write_sheets((sheet(),), out=tmp_path, at=AT)
    assert link.is_symlink()


def test_a_file_in_the_way_of_the_folder_is_said(tmp_path: Path) -> None:
    (tmp_path / "papers").write_text("a note")
    with pytest.raises(FileError, match="Nothing was written"):
        write_sheets((sheet(),), out=tmp_path / "papers", at=AT)


def test_a_file_that_another_program_writes_meanwhile_stays(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    seen = whole_file._refuse_changed  # noqa: SLF001 - the moment between looking and writing

    def meanwhile(path: Path, data: bytes, **kept: bytes | None) -> None:
        path.write_bytes(b"of another program")
        seen(path, data, **kept)

    monkeypatch.setattr(whole_file, "_refuse_changed", meanwhile)
    with pytest.raises(CannotWriteError, match="by another program meanwhile"):
        write_sheets((sheet(),), out=tmp_path, at=AT)
    assert (tmp_path / "key-card.pdf").read_bytes() == b"of another program"
