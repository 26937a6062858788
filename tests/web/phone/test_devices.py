"""The list of paired devices."""

import datetime
import hashlib
import json
from pathlib import Path
from stat import S_IMODE

import pytest

from paradestate.text.error import FileError
from paradestate.web.phone.devices import DAYS, FILE, MOST_DEVICES, Devices, plain_name

TODAY = datetime.date(2026, 3, 1)
DAY = datetime.timedelta(days=1)


@pytest.fixture
def devices(tmp_path: Path) -> Devices:
    return Devices(tmp_path / "paradestate")


def test_a_device_that_was_admitted_is_known(devices: Devices) -> None:
    first = devices.admit("Anna's phone", day=TODAY)
    second = devices.admit("a tablet", day=TODAY)
    found = devices.known(first, day=TODAY)
    assert found is not None
    assert (found.name, found.day) == ("Anna's phone", TODAY)
    assert [each.name for each in devices.all()] == ["Anna's phone", "a tablet"]
    assert first != second


def test_nobody_else_is(devices: Devices) -> None:
    assert devices.known("", day=TODAY) is None
    secret = devices.admit("a phone", day=TODAY)
    for shown in ("", secret[:-1], secret + "a", secret.swapcase(), "\udcff", "é" * 1000):
        assert devices.known(shown, day=TODAY) is None


def test_only_the_digest_of_its_secret_is_kept(devices: Devices, tmp_path: Path) -> None:
    secret = devices.admit("a phone", day=TODAY)
    path = tmp_path / "paradestate" / FILE
    assert secret not in path.read_text()
    assert json.loads(path.read_text()) == [
        {
            "name": "a phone",
            "day": "2026-03-01",
            "digest": hashlib.sha256(secret.encode()).hexdigest(),
        }
    ]
    assert len(secret) == 43  # 256 bits in characters of six
    assert S_IMODE(path.stat().st_mode) == 0o600


def test_a_device_that_is_removed_is_out_at_once(devices: Devices) -> None:
    secret = devices.admit("a phone", day=TODAY)
    stays = devices.admit("a tablet", day=TODAY)
    known = devices.known(secret, day=TODAY)
    assert known is not None
    assert devices.remove(known.key) == known
    assert devices.known(secret, day=TODAY) is None
    assert devices.known(stays, day=TODAY) is not None
    assert devices.remove(known.key) is None


def test_removing_from_no_list_removes_nothing(devices: Devices) -> None:
    assert devices.remove("0123456789abcdef") is None


def test_a_pairing_ends_after_half_a_year(devices: Devices) -> None:
    secret = devices.admit("a phone", day=TODAY)
    assert devices.known(secret, day=TODAY + DAYS * DAY) is not None
    assert devices.known(secret, day=TODAY + (DAYS + 1) * DAY) is None
    assert devices.known(secret, day=TODAY - DAY) is None
    devices.admit("another", day=TODAY + (DAYS + 1) * DAY)
    assert [each.name for each in devices.all()] == ["another"]


def test_more_than_twenty_are_too_many(devices: Devices) -> None:
    for number in range(MOST_DEVICES):
        devices.admit(f"phone {number}", day=TODAY)
    with pytest.raises(FileError, match="20 devices are paired"):
        devices.admit("one more", day=TODAY)
    assert len(devices.all()) == MOST_DEVICES


@pytest.mark.parametrize(
    "text",
    [
        "",
        "{",
        "[1]",
        "null",
        "[{}]",
        '[{"name": "a", "day": "2026-03-01", "digest": "00"}]',
        '[{"name": "a", "day": "2026-03-01", "digest": 7}]',
        '[{"name": 3, "day": "2026-03-01", "digest": "' + "00" * 32 + '"}]',
        '[{"name": "a", "day": "soon", "digest": "' + "00" * 32 + '"}]',
        "[" * 100_000,
        "\xff",
    ],
)
def test_a_list_that_is_not_understood_lets_nobody_in(
    text: str, devices: Devices, tmp_path: Path
) -> None:
    devices.admit("a phone", day=TODAY)
    path = tmp_path / "paradestate" / FILE
    path.write_bytes(text.encode("latin-1"))
    for ask in (
        devices.all,
        lambda: devices.known("x", day=TODAY),
        lambda: devices.admit("y", day=TODAY),
        lambda: devices.remove("z"),
    ):
        with pytest.raises(FileError, match="list of paired devices can't be understood"):
            ask()
    assert path.read_bytes() == text.encode("latin-1")


def test_a_list_that_others_may_change_lets_nobody_in(devices: Devices, tmp_path: Path) -> None:
    secret = devices.admit("a phone", day=TODAY)
    (tmp_path / "paradestate" / FILE).chmod(0o622)
    with pytest.raises(FileError, match="others than you"):
        devices.known(secret, day=TODAY)


@pytest.mark.parametrize(
    ("typed", "name"),
    [
        ("", "a phone"),
        (" \n\t", "a phone"),
        ("Anna's\r\nphone", "Anna's phone"),
        ("\u202eflipped", "flipped"),
        ("x" * 500, "x" * 40),
        ("<script>", "<script>"),
    ],
)
def test_a_name_stands_on_one_line(typed: str, name: str) -> None:
    assert plain_name(typed) == name
