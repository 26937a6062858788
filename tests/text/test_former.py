"""The names and order of former versions."""

import datetime
from pathlib import Path

from paradestate.text.former import FORMER, former_versions, free_name

AT = datetime.datetime(2026, 3, 5, 21, 14, 9, 999_999, tzinfo=datetime.UTC)


def kept(folder: Path, *names: str) -> None:
    (folder / FORMER).mkdir(exist_ok=True)
    for name in names:
        (folder / FORMER / name).write_text("a: 1\n", encoding="utf-8")


def test_a_copy_has_the_name_of_its_file_and_the_time_in_utc(tmp_path: Path) -> None:
    east = AT.astimezone(datetime.timezone(datetime.timedelta(hours=9)))
    path = free_name(tmp_path / "force.yaml", at=east)
    assert path == tmp_path / FORMER / "force.yaml.2026-03-05T21-14-09Z"


def test_copies_of_one_second_are_counted(tmp_path: Path) -> None:
    file = tmp_path / "force.yaml"
    names = []
    for _ in range(11):
        names.append(free_name(file, at=AT).name)
        kept(tmp_path, names[-1])
    assert names[1:3] == [f"{names[0]}.2", f"{names[0]}.3"]
    assert [former.number for former in former_versions(file)] == list(range(11, 0, -1))


def test_former_versions_come_newest_first_and_others_are_passed_over(tmp_path: Path) -> None:
    file = tmp_path / "force.yaml"
    assert former_versions(file) == ()
    times = ("2026-03-05T21-14-09Z", "2026-03-06T00-00-00Z", "2025-12-31T23-59-59Z")
    kept(
        tmp_path,
        *(f"force.yaml.{time}" for time in times),
        "prices.yaml.2027-01-01T00-00-00Z",
        "force.yaml.2026-02-31T00-00-00Z",
        "force.yaml",
        "notes.txt",
    )
    (tmp_path / FORMER / "force.yaml.2028-01-01T00-00-00Z").mkdir()
    assert [former.when for former in former_versions(file)] == [
        "2026-03-06 at 00:00 UTC",
        "2026-03-05 at 21:14 UTC",
        "2025-12-31 at 23:59 UTC",
    ]


def test_where_the_clock_went_back_the_newest_is_still_the_last_that_was_kept(
    tmp_path: Path,
) -> None:
    file = tmp_path / "force.yaml"
    kept(tmp_path, "force.yaml.2030-01-01T00-00-00Z")
    later = free_name(file, at=AT)
    assert later.name == "force.yaml.2030-01-01T00-00-00Z.2"
    kept(tmp_path, later.name)
    assert former_versions(file)[0].path == later
