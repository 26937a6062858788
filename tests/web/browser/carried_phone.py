"""A carry file of the example force, and a phone on which it is opened with the network off."""

import datetime
import io
from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path

import zxingcpp
from PIL import Image
from playwright.sync_api import BrowserContext, expect

from paradestate.core.play.event import Told
from paradestate.core.play.game_record import GameRecord, game_records
from paradestate.journeys.game.bring import Brought, GivenFile, bring
from paradestate.journeys.game.carry import carry
from paradestate.journeys.game.table_entries import lacking, take_entries
from paradestate.web.table.carry_file import carry_file
from tests.entries import uuid
from tests.journeys.game.test_bring import opened
from tests.journeys.game.test_table_entries import GAME
from tests.journeys.game.test_table_entries import told as told_of
from tests.web.browser.table_phone import Phone
from tests.web.server import Served, marenz

TODAY = datetime.date(2026, 11, 27)


@dataclass(frozen=True, slots=True, kw_only=True)
class Evening:
    """A force, and a carry file of it in which a game is open."""

    folder: Path
    file: Path


class CarriedPhone(Phone):
    """A phone with a carry file, which never has a signal."""

    def __init__(self, context: BrowserContext, evening: Evening) -> None:
        super().__init__(context, Served(url=evening.file.as_uri(), folder=evening.folder))
        self.address = evening.file.as_uri()
        self.wrong: list[str] = []
        context.set_offline(True)
        context.on("console", lambda said: self.wrong.append(said.text))
        context.on("weberror", lambda error: self.wrong.append(str(error.error)))

    def open(self) -> None:
        self.page.goto(self.address)
        expect(self.page.locator("#kept")).to_be_visible()

    def away(self) -> None:
        """It always is."""

    def give_back(self) -> None:
        self.page.locator("[data-key=give]").click()
        expect(self.page.get_by_role("heading", name="Give back")).to_be_visible()

    def saved(self) -> bytes:
        """The file that it gives back."""
        with self.page.expect_download() as caught:
            self.page.locator("[data-key=save]").click()
        return caught.value.path().read_bytes()

    def codes(self) -> list[str]:
        """The texts of the codes that it shows, as an independent decoder reads them."""
        self.page.locator("[data-key=codes]").click()
        heading = self.page.get_by_role("heading", name="Code 1 of")
        expect(heading).to_be_visible()
        number = int((heading.text_content() or "").rpartition(" ")[2])
        read = []
        for at in range(number):
            expect(self.page.locator("svg.qr")).to_have_attribute(
                "aria-label", f"Code {at + 1} of {number}"
            )
            picture = Image.open(io.BytesIO(self.page.locator("svg.qr").screenshot()))
            # among so many bars it may also see codes of other sorts
            (text,) = (
                found.text
                for found in zxingcpp.read_barcodes(picture)
                if found.format == zxingcpp.BarcodeFormat.QRCode
            )
            read.append(text)
            if number > 1:  # of one there is no next
                self.page.locator("[data-key=next]").click()
        self.page.locator("[data-key=codes]").click()
        return read


def evening_in(place: Path) -> Evening:
    """The example force in a folder of this place, with a game that is open, and its carry file."""
    folder = marenz(place)
    take_entries(folder, today=TODAY, sent=[opened(1), told_of(2)])
    content = carry(folder, today=TODAY, new_id=lambda: uuid(7)).content
    assert content is not None
    file = place / "evening.html"
    file.write_bytes(carry_file(content))
    return Evening(folder=folder, file=file)


def brought(evening: Evening, *texts: bytes) -> Brought:
    files = [GivenFile(name=f"{at}.txt", data=data) for at, data in enumerate(texts, start=1)]
    return bring(evening.folder, today=TODAY, files=files)


def record_of(evening: Evening) -> GameRecord:
    every = lacking(evening.folder, today=TODAY, game=GAME, after="").entries
    (record,) = game_records(every, force=every[0].force)
    return record


def told(evening: Evening) -> Sequence[tuple[str, str]]:
    lines = sorted(record_of(evening).lines, key=lambda each: each.counter)
    return [
        (each.event.subject.name, each.event.value)
        for each in lines
        if isinstance(each.event, Told) and each.device.startswith("phone ") and each.id != uuid(2)
    ]
