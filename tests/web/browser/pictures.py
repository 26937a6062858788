"""Pictures of every page, on a phone, a tablet and a desk, light and dark: `make pictures`.

The clock stands still and the force is the example, so that a picture changes only with the page.
A few are kept for the docs, the others are in `build/pictures`.
"""

import base64
import datetime
import shutil
import tempfile
from dataclasses import replace
from ipaddress import ip_address
from pathlib import Path

import numpy as np
from playwright.sync_api import Browser, sync_playwright

from paradestate.core.journal_entry import EntryKind
from paradestate.core.log_request import LogRequest
from paradestate.journeys.game.losses_pen import Teller
from paradestate.journeys.game.losses_rolled import Seen, TypedRoll, roll_recoveries
from paradestate.journeys.log import log
from paradestate.web.application import BELOW, PAGES, application, new_site
from paradestate.web.phone.addresses import Named
from paradestate.web.phone.certificate import Certificate
from paradestate.web.phone.devices import Devices
from paradestate.web.phone.listener import PhoneListener
from paradestate.web.phone.pairing import Pairing
from paradestate.web.serving import loopback_hosts
from tests.journeys.played_losses import SECTIONS, ids, out, play, with_campaign
from tests.web.browser.conftest import ARGUMENTS, chromium
from tests.web.browser.small_png import MOST_COLOURS, small_png
from tests.web.evenings import half_over
from tests.web.grounds import CLUB
from tests.web.server import marenz, running

ROOT = Path(__file__).parents[3]
ALL = ROOT / "build" / "pictures"
KEPT = ROOT / "docs" / "pictures"
IN_DOCS = (
    "parade-1280-light",
    "parade-1280-dark",
    "parade-320-light",
    "organisation-1280-light",
    "purchases-1280-light",
    "bench-1280-light",
    "bench-320-light",
    "choosing-1280-light",
    "choosing-320-dark",
    "next-1280-light",
    "hosts-1280-light",
    "list-1280-light",
    "marks-1280-light",
    "marks-320-light",
    "trays-1280-light",
    "papers-320-light",
    "evening-1280-light",
    "evening-320-dark",
    "after-1280-light",
    "club-1280-light",
    "club-320-light",
    "phone-1280-light",
)

ASKED = {
    "choosing": "?game=whole-day+attack&rolled=25"
    "&plan=light+tanks%3D2,+tank+squadron+commander%3D1,+machine-gun+platoon%3D2",
    "hosts": "?game=whole-day+attack&section=machine-gun+platoon+1"
    "&plan=machine-gun+platoon%3D3,+pioneers(flame)%3D2"
    "&worths=3_3_3_2~3_3_3~~______2_2_2~______2_2_2&of=e3569049",
    "next": "?game=whole-day+attack&money=25",
    "club": "?from=2026-03-05",
    "marks": "?read=yellow,+three+bars",
    "papers": "?game=whole-day+attack",
    "list": "?game=whole-day+attack&entry=anti-tank+guns&price:1=6&price:2=8",
}
"""What is asked of a sheet that says little before it is asked."""

COLOURS = {"marks": 120, "papers": 60}
"""Of a sheet that is about colours."""

NOW = datetime.datetime(2026, 3, 1, 19, 30, tzinfo=datetime.UTC)
WIDTHS = {320: 640, 768: 1024, 1280: 900}
"""Of the window, each with its height."""
SCHEMES = ("light", "dark")

WORK = (
    ("painted", "2026-01-11", {"rifleman": 24, "officer": 3}),
    ("based", "2026-02-01", {"rifleman": 27, "officer": 2, "signaller": 1}),
    ("undercoated", "2026-02-15", {"rifleman": 16, "mortar crew": 4, "light truck": 1}),
    ("in packet", "2026-02-28", {"rifleman": 12, "signaller": 2}),
)

# A browser knows how to read its own picture, and hands back its pixels.
PIXELS = """async data => {
  const image = new Image();
  image.src = data;
  await image.decode();
  const canvas = new OffscreenCanvas(image.width, image.height), drawn = canvas.getContext("2d");
  drawn.drawImage(image, 0, 0);
  const bytes = drawn.getImageData(0, 0, image.width, image.height).data;
  let text = "";
  for (let start = 0; start < bytes.length; start += 32768)
    text += String.fromCharCode(...bytes.subarray(start, start + 32768));
  return [image.width, image.height, btoa(text)];
}"""


class StillPairing(Pairing):
    """Shows a word that is the same in every picture, and is good for nobody."""

    word = "abcd-efgh-jkmn-pqrs-tuvw"
    seconds_left = 600
    attempts_left = 5


def still_listener(folder: Path) -> PhoneListener:
    """What the page about phones shows, without a listener behind it."""
    devices = Devices(folder)
    devices.admit("Anna's phone", day=NOW.date())
    pairs, others = (
        ":".join(f"{(number * 37 + first) % 256:02X}" for number in range(32)) for first in (11, 90)
    )
    ends = NOW + datetime.timedelta(days=396)
    return PhoneListener(
        named=Named(address=ip_address("192.168.7.20"), name="192.168.7.20"),
        port=8765,
        certificate=Certificate(
            path=folder,
            fingerprint=pairs,
            ends=ends,
            why_new="",
            authority=b"",
            authority_fingerprint=others,
        ),
        devices=devices,
        pairing=StillPairing(),
    )


def worked_on(folder: Path) -> None:
    """Some weeks of the bench, so that there is something to see."""
    for number, (stage, day, figures) in enumerate(WORK):
        on = datetime.date.fromisoformat(day)
        request = LogRequest(
            id=f"00000000-0000-4000-8000-{number:012}",
            kind=EntryKind.COUNTED,
            written=datetime.datetime.combine(on, NOW.timetz()),
            on=on,
            figures=figures,
            to_stage=stage,
        )
        done = log(folder, today=NOW.date(), request=request)
        assert done.entry is not None, done.findings


def played_on(folder: Path) -> None:
    """A game with sections out of action, and the dice of some of them."""
    with_campaign(folder)
    on = NOW.date()
    play(
        folder, *map(out, SECTIONS), out("No 2 Company / 1 Platoon / 1 Section", "captured"), on=on
    )
    new = ids(5000)
    teller = Teller(folder=folder, today=on, now=NOW, new_id=lambda: next(new))
    typed = [
        TypedRoll(name=name, numbers=(face,))
        for name, face in zip(SECTIONS, (6, 2, 4), strict=False)
    ]
    done = roll_recoveries(teller, typed, seen=Seen(roller="Ann", witness="Bert"))
    assert done.is_done, done.findings


def main() -> None:
    """Takes every picture anew."""
    for folder in (ALL, KEPT):
        shutil.rmtree(folder, ignore_errors=True)
        folder.mkdir(parents=True)
    with tempfile.TemporaryDirectory() as name:
        place = Path(name)
        force = marenz(place)
        worked_on(force)
        played_on(force)
        (force / "club.yaml").write_text(CLUB, encoding="utf-8")
        site = new_site(force, hosts=frozenset(), clock=lambda: NOW)
        phone = still_listener(place / "state")
        with (
            running(
                lambda port: application(replace(site, hosts=loopback_hosts(port), phone=phone))
            ) as url,
            sync_playwright() as playwright,
        ):
            browser = playwright.chromium.launch(executable_path=chromium(), args=list(ARGUMENTS))
            for path in (*(page.path for page in (*PAGES, *BELOW)), "start", "phone"):
                _before(path, force)
                below = path if path in {"start", "phone"} else f"forces/marenz/{path}"
                address = f"{url}/{below}{ASKED.get(path, '')}"
                _taken(browser, address, name=path.replace("/", "-"))
            for kept in IN_DOCS:
                (KEPT / f"{kept}.png").write_bytes(_small(browser, kept))
            browser.close()


def _before(path: str, force: Path) -> None:
    """What happens before a page is taken: a game isn't begun before the parade, which names it."""
    if path == "evening":
        half_over(force, begin=NOW - datetime.timedelta(minutes=20))


def _taken(browser: Browser, address: str, *, name: str) -> None:
    """One page in every width and scheme."""
    for width, height in WIDTHS.items():
        page = browser.new_page(
            viewport={"width": width, "height": height}, reduced_motion="reduce"
        )
        page.goto(address)
        page.locator("[data-progress], [data-setting]").first.wait_for(state="detached")
        page.evaluate("document.querySelectorAll('img').forEach(each => each.loading = 'eager')")
        page.wait_for_load_state("networkidle")
        for scheme in SCHEMES:
            page.emulate_media(color_scheme="dark" if scheme == "dark" else "light")
            shot = page.screenshot(full_page=True, animations="disabled")
            (ALL / f"{name}-{width}-{scheme}.png").write_bytes(shot)
        page.close()


def _small(browser: Browser, name: str) -> bytes:
    """A picture that was taken, in few colours."""
    shot = (ALL / f"{name}.png").read_bytes()
    blank = browser.new_page()
    data = f"data:image/png;base64,{base64.b64encode(shot).decode()}"
    width, height, text = blank.evaluate(PIXELS, data)
    blank.close()
    pixels = np.frombuffer(base64.b64decode(text), np.uint8).reshape(height, width, 4)
    return small_png(
        pixels[:, :, :3], most=COLOURS.get(name.split("-", maxsplit=1)[0], MOST_COLOURS)
    )


if __name__ == "__main__":
    main()
