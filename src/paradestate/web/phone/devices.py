"""The devices that have been paired: a name, a day, and the digest of what each shows.

What a device shows is never kept here, so that who reads this file can't come in with it.
"""

import datetime
import hashlib
import hmac
import json
import secrets
from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path

from paradestate.text.error import FileError
from paradestate.text.folder_lock import locked
from paradestate.text.private_file import OWNER_FOLDER, read_private, write_private

FILE = "devices.json"
SECRET_BYTES = 32
"""256 bits, from the system's own source of chance."""
DAYS = 180
"""How long a device is admitted after its pairing."""
LONGEST_NAME = 40
MOST_DEVICES = 20
"""A bound against accidents; the list is read by a person."""
KEY_LENGTH = 16


@dataclass(frozen=True, slots=True, kw_only=True)
class Device:
    """A device that was paired."""

    name: str
    day: datetime.date
    """When it was paired."""
    digest: str
    """SHA-256 of its secret, in hexadecimal digits."""

    @property
    def key(self) -> str:
        """What it is called in an address."""
        return self.digest[:KEY_LENGTH]

    @property
    def last_day(self) -> datetime.date:
        """The last day on which it is admitted."""
        return self.day + datetime.timedelta(days=DAYS)


class Devices:
    """The list in a folder; read anew each time, so that who is taken off it is out at once."""

    def __init__(self, folder: Path) -> None:
        self._folder = folder

    def all(self) -> tuple[Device, ...]:
        """Those on the list, the first paired first. Raises FileError where it can't be read."""
        path = self._folder / FILE
        kept = read_private(path)
        if kept is None:
            return ()
        try:
            return tuple(map(_device, json.loads(kept)))
        except (ValueError, TypeError, KeyError, RecursionError) as error:
            raise FileError(
                f"{path}: the list of paired devices can't be understood. No phone is let in. "
                "Take the file away, then pair each phone again."
            ) from error

    def admit(self, name: str, *, day: datetime.date) -> str:
        """Puts a device on the list and returns the secret that it is to show.

        Raises FileError where the list can't be read or written, or is full.
        """
        secret = secrets.token_urlsafe(SECRET_BYTES)
        self._folder.mkdir(parents=True, exist_ok=True, mode=OWNER_FOLDER)
        with locked(self._folder):
            listed = tuple(each for each in self.all() if day <= each.last_day)
            if len(listed) >= MOST_DEVICES:
                raise FileError(
                    f"{MOST_DEVICES} devices are paired, which is the most. No other was let in. "
                    "Remove one on the computer's page, then pair again."
                )
            made = Device(name=plain_name(name), day=day, digest=_digest(secret))
            self._write((*listed, made))
        return secret

    def known(self, secret: str, *, day: datetime.date) -> Device | None:
        """The device that shows this, if it is on the list and its time isn't over."""
        shown = _digest(secret)
        found = None
        for each in self.all():  # to the end each time, whoever it is
            if hmac.compare_digest(each.digest, shown) and each.day <= day <= each.last_day:
                found = each
        return found

    def remove(self, key: str) -> Device | None:
        """Takes the device of this key off the list; None where there was none.

        Raises FileError where the list can't be read or written.
        """
        if not self._folder.is_dir():
            return None
        with locked(self._folder):
            listed = self.all()
            gone = next((each for each in listed if each.key == key), None)
            if gone is not None:
                self._write(tuple(each for each in listed if each is not gone))
        return gone

    def _write(self, devices: tuple[Device, ...]) -> None:
        rows = [
            {"name": each.name, "day": each.day.isoformat(), "digest": each.digest}
            for each in devices
        ]
        data = json.dumps(rows, ensure_ascii=False, indent=2).encode()
        write_private(self._folder / FILE, data + b"\n")


def plain_name(typed: str) -> str:
    """A name on one line and not too long; "a phone" where there is none."""
    shown = "".join(letter if letter.isprintable() else " " for letter in typed)
    return " ".join(shown.split())[:LONGEST_NAME].strip() or "a phone"


def _digest(secret: str) -> str:
    return hashlib.sha256(secret.encode("utf-8", "surrogateescape")).hexdigest()


def _device(row: Mapping[str, str]) -> Device:
    digest = row["digest"]
    if len(bytes.fromhex(digest)) != hashlib.sha256().digest_size:
        raise ValueError(digest)
    return Device(
        name=plain_name(row["name"]), day=datetime.date.fromisoformat(row["day"]), digest=digest
    )
