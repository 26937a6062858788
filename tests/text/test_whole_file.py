"""Files written whole or not at all, and the former version kept."""

import datetime
import errno
import os
import subprocess
import sys
import threading
from pathlib import Path
from tempfile import TemporaryDirectory

import pytest

from paradestate.text import whole_file
from paradestate.text.error import FileChangedError, FileError
from paradestate.text.former import FORMER, former_versions, free_name
from paradestate.text.whole_file import fill_new, read_whole, write_changed, write_new, write_over

AT = datetime.datetime(2026, 3, 5, 21, 14, 9, tzinfo=datetime.UTC)
OLD, NEW = b"a: old\n", b"a: new\n"


@pytest.fixture
def file(tmp_path: Path) -> Path:
    path = tmp_path / "force.yaml"
    path.write_bytes(OLD)
    return path


def everything_in(folder: Path) -> list[str]:
    return sorted(str(path.relative_to(folder)) for path in folder.rglob("*"))


def test_what_a_file_holds_is_read_whole(file: Path) -> None:
    assert read_whole(file) == OLD
    with pytest.raises(FileError, match=r"gone.yaml: No such file"):
        read_whole(file.with_name("gone.yaml"))


def test_a_new_file_is_written_where_none_is(tmp_path: Path) -> None:
    write_new(tmp_path / "a.yaml", NEW)
    assert (tmp_path / "a.yaml").read_bytes() == NEW
    with pytest.raises(FileChangedError):
        write_new(tmp_path / "a.yaml", OLD)
    assert (tmp_path / "a.yaml").read_bytes() == NEW
    assert everything_in(tmp_path) == ["a.yaml"]


def test_a_new_file_is_filled_piece_by_piece_where_none_is(tmp_path: Path) -> None:
    fill_new(tmp_path / "a.zip", lambda file: file.writelines([b"one, ", b"two"]))
    assert (tmp_path / "a.zip").read_bytes() == b"one, two"
    with pytest.raises(FileError, match="is there already; nothing is overwritten"):
        fill_new(tmp_path / "a.zip", lambda file: file.write(NEW))
    assert (tmp_path / "a.zip").read_bytes() == b"one, two"
    assert everything_in(tmp_path) == ["a.zip"]


def test_a_new_file_may_be_read_by_whom_the_mask_allows(tmp_path: Path) -> None:
    before = os.umask(0o027)
    try:
        write_new(tmp_path / "a.yaml", NEW)
    finally:
        os.umask(before)
    assert (tmp_path / "a.yaml").stat().st_mode & 0o777 == 0o640


def test_the_former_version_is_kept_with_its_time(file: Path) -> None:
    former = write_changed(file, NEW, seen=OLD, at=AT)
    assert file.read_bytes() == NEW
    assert former.read_bytes() == OLD
    assert former.name == "force.yaml.2026-03-05T21-14-09Z"
    assert everything_in(file.parent) == [FORMER, f"{FORMER}/{former.name}", "force.yaml"]


def test_an_earlier_copy_is_never_overwritten(file: Path) -> None:
    write_changed(file, NEW, seen=OLD, at=AT)
    write_changed(file, b"a: third\n", seen=NEW, at=AT)
    assert [kept.path.read_bytes() for kept in former_versions(file)] == [NEW, OLD]


def test_who_may_read_the_file_stays_and_holds_for_the_copy(file: Path) -> None:
    file.chmod(0o600)
    former = write_changed(file, NEW, seen=OLD, at=AT)
    assert [path.stat().st_mode & 0o777 for path in (file, former)] == [0o600, 0o600]


def test_a_link_stays_one_and_its_file_is_written(file: Path) -> None:
    link = file.parent / "link"
    link.mkdir()
    (link / "here.yaml").symlink_to(file)
    former = write_changed(link / "here.yaml", NEW, seen=OLD, at=AT)
    assert (link / "here.yaml").is_symlink()
    assert file.read_bytes() == NEW
    assert former.parent == file.parent / FORMER


def test_what_a_killed_writer_left_is_in_nobodys_way(file: Path) -> None:
    (file.parent / ".force.yaml.new").write_bytes(b"a: ha")
    write_changed(file, NEW, seen=OLD, at=AT)
    assert ".force.yaml.new" not in everything_in(file.parent)


@pytest.mark.parametrize("there", [b"a: theirs\n", None])
def test_the_second_of_two_writers_is_told_and_has_both_texts(
    file: Path, there: bytes | None
) -> None:
    if there is None:
        file.unlink()
    else:
        file.write_bytes(there)
    with pytest.raises(FileChangedError, match="Nothing was written") as told:
        write_changed(file, NEW, seen=OLD, at=AT)
    assert (told.value.path, told.value.mine, told.value.there) == (file, NEW, there)
    assert everything_in(file.parent) == ([] if there is None else ["force.yaml"])


def test_what_it_was_is_kept_where_the_new_one_is_in_place_already(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Ctrl-C in the moment after the renaming."""
    file = tmp_path / "force.yaml"
    file.write_bytes(b"old")
    plain = Path.replace

    def interrupted(beside: Path, goal: Path) -> None:
        plain(beside, goal)
        if goal == file:
            raise KeyboardInterrupt

    monkeypatch.setattr(Path, "replace", interrupted)
    with pytest.raises(KeyboardInterrupt):
        write_changed(file, b"new", seen=b"old", at=AT)
    assert file.read_bytes() == b"new"
    (former,) = (tmp_path / ".former").iterdir()
    assert former.read_bytes() == b"old"


def test_a_file_that_is_protected_from_writing_is_left_alone(tmp_path: Path) -> None:
    file = tmp_path / "force.yaml"
    file.write_bytes(b"old")
    file.chmod(0o444)
    with pytest.raises(FileError, match="protected from writing"):
        write_changed(file, b"new", seen=b"old", at=AT)
    assert file.read_bytes() == b"old"
    assert [path.name for path in tmp_path.iterdir()] == ["force.yaml"]


def test_a_change_in_the_last_moment_is_seen_too(
    file: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Another program, which knows no lock, writes while the former version is being kept."""

    def meanwhile(path: Path, *, at: datetime.datetime) -> Path:
        path.write_bytes(b"a: theirs\n")
        return free_name(path, at=at)

    monkeypatch.setattr(whole_file, "free_name", meanwhile)
    with pytest.raises(FileChangedError):
        write_changed(file, NEW, seen=OLD, at=AT)
    assert file.read_bytes() == b"a: theirs\n"
    assert everything_in(file.parent) == ["force.yaml"]


def test_of_many_writers_at_once_one_wins_and_the_others_are_told(file: Path) -> None:
    gate = threading.Barrier(8)
    said: list[str] = []

    def write(number: int) -> None:
        gate.wait()
        try:
            write_changed(file, f"a: {number}\n".encode(), seen=OLD, at=AT)
            said.append("written")
        except FileChangedError:
            said.append("told")

    writers = [threading.Thread(target=write, args=(number,)) for number in range(8)]
    for writer in writers:
        writer.start()
    for writer in writers:
        writer.join()
    assert sorted(said) == ["told"] * 7 + ["written"]
    assert [kept.path.read_bytes() for kept in former_versions(file)] == [OLD]


def test_a_folder_that_is_gone(tmp_path: Path) -> None:
    with pytest.raises(FileError, match="No such file"):
        write_new(tmp_path / "gone" / "a.yaml", NEW)


@pytest.mark.parametrize("call", [1, 2])
def test_a_full_disk_leaves_the_old_file_and_nothing_beside(
    file: Path, monkeypatch: pytest.MonkeyPatch, call: int
) -> None:
    """The new version or the copy of the former one doesn't fit any more."""
    calls = 0
    fsync = os.fsync

    def full(descriptor: int) -> None:
        nonlocal calls
        calls += 1
        if calls == call:
            raise OSError(errno.ENOSPC, os.strerror(errno.ENOSPC))
        fsync(descriptor)

    monkeypatch.setattr(os, "fsync", full)
    with pytest.raises(FileError, match=r"No space left on device\. Nothing was written"):
        write_changed(file, NEW, seen=OLD, at=AT)
    assert file.read_bytes() == OLD
    assert everything_in(file.parent) == ["force.yaml"]


def test_copies_that_were_there_stay_where_the_disk_is_full(
    file: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    former = write_changed(file, NEW, seen=OLD, at=AT)
    monkeypatch.setattr(whole_file, "put_down", full_disk)
    with pytest.raises(FileError, match="No space"):
        write_changed(file, OLD, seen=NEW, at=AT)
    assert file.read_bytes() == NEW
    assert [kept.path for kept in former_versions(file)] == [former]


def full_disk(folder: Path) -> None:
    raise OSError(errno.ENOSPC, os.strerror(errno.ENOSPC), str(folder))


def test_a_disk_that_does_not_confirm_the_last_step_is_told_apart(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(whole_file, "put_down", full_disk)
    with pytest.raises(FileError, match="it is written, but the disk"):
        write_new(tmp_path / "a.yaml", NEW)
    assert (tmp_path / "a.yaml").read_bytes() == NEW


UNWATCHED = {name: text for name, text in os.environ.items() if "COVERAGE" not in name}
"""Who is killed, or may not write, can't say which lines it has run, so it isn't asked to."""

LIMITED = """
import datetime, os, resource, signal, sys
from pathlib import Path
from paradestate.text.error import FileError
from paradestate.text.whole_file import write_changed
file = Path(sys.argv[1])
seen = file.read_bytes()
signal.signal(signal.SIGXFSZ, signal.SIG_IGN)
if sys.argv[2] == "limited":
    resource.setrlimit(resource.RLIMIT_FSIZE, (1000, 1000))
elif os.getuid() == 0:
    os.setuid(65534)
try:
    at = datetime.datetime(2026, 1, 1, tzinfo=datetime.UTC)
    write_changed(file, b"x" * 5000, seen=seen, at=at)
except FileError as error:
    print(error)
"""


@pytest.mark.slow
@pytest.mark.parametrize(
    ("how", "said"), [("limited", "File too large"), ("forbidden", "Permission denied")]
)
def test_a_disk_that_really_refuses(how: str, said: str) -> None:
    """A limit on the size of files; a folder that may be read and not written in."""
    with TemporaryDirectory() as folder:  # not below ours, into which another user can't go
        file = Path(folder, "force.yaml")
        file.write_bytes(OLD)
        file.parent.chmod(0o755 if how == "limited" else 0o555)
        done = subprocess.run(
            [sys.executable, "-c", LIMITED, str(file), how],
            env=UNWATCHED,
            capture_output=True,
            text=True,
            check=True,
            timeout=60,
        )
        assert said in done.stdout
        assert "is as it was" in done.stdout
        assert file.read_bytes() == OLD
        assert everything_in(file.parent) == ["force.yaml"]
        file.parent.chmod(0o755)


KILLED = """
import datetime, os, random, signal, sys, time
from itertools import count
from pathlib import Path
from paradestate.text.former import former_versions
from paradestate.text.whole_file import write_changed
file, runs = Path(sys.argv[1]), int(sys.argv[2])
texts = [letter * 300_000 for letter in (b"a", b"b")]
file.write_bytes(texts[0])
lot = random.Random(1)
at = datetime.datetime(2026, 1, 1, tzinfo=datetime.UTC)
halves = kept = 0
for run in range(runs):
    hears, says = os.pipe()
    child = os.fork()
    if not child:
        if run % 2:
            os.write(says, b".")
        for number in count():
            seen = file.read_bytes()
            write_changed(file, texts[seen == texts[0]], seen=seen, at=at)
            if not number and not run % 2:
                os.write(says, b".")
    os.close(says)
    os.read(hears, 1) or sys.exit("a writer ended by itself")
    os.close(hears)
    time.sleep(lot.uniform(0.001, 0.02))
    os.kill(child, signal.SIGKILL)
    os.waitpid(child, 0)
    former = former_versions(file)
    halves += file.read_bytes() not in texts
    halves += any(each.path.read_bytes() not in texts for each in former)
    kept += len(former)
    for each in former:
        each.path.unlink()
seen = file.read_bytes()
write_changed(file, texts[seen == texts[0]], seen=seen, at=at)
print(halves, kept, sorted(path.name for path in file.parent.rglob("*")))
"""


@pytest.mark.slow
def test_a_writer_that_is_killed_leaves_the_old_file_or_the_new_one(tmp_path: Path) -> None:
    """40 times at random moments; so do the copies, and the next writer clears what is left.

    Half of them have written once by then, however slow the machine, and half may have not.
    """
    done = subprocess.run(
        [sys.executable, "-c", KILLED, str(tmp_path / "force.yaml"), "40"],
        env=UNWATCHED,
        capture_output=True,
        text=True,
        check=True,
        timeout=120,
    )
    halves, kept, names = done.stdout.strip().split(" ", 2)
    assert halves == "0"
    assert int(kept) >= 20
    assert names == "['.former', 'force.yaml', 'force.yaml.2026-01-01T00-00-00Z']"


def test_what_is_written_over_leaves_nothing_of_what_it_was(file: Path) -> None:
    file.chmod(0o640)
    write_over(file, NEW, seen=OLD)
    assert file.read_bytes() == NEW
    assert file.stat().st_mode & 0o777 == 0o640
    assert everything_in(file.parent) == ["force.yaml"]
    with pytest.raises(FileChangedError):
        write_over(file, OLD, seen=b"a: other\n")
    assert file.read_bytes() == NEW
