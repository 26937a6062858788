"""Every page on a phone and on a desk, light and dark: for whom it can be read and touched."""

from collections.abc import Iterator
from dataclasses import replace
from itertools import product
from typing import Literal

import pytest
from playwright.sync_api import Browser, Page

from paradestate.web.application import BELOW, PAGES, application, new_site
from paradestate.web.listening import LOOPBACK
from paradestate.web.phone.addresses import named_address
from paradestate.web.phone.listener import phone_listener
from paradestate.web.serving import loopback_hosts
from tests.web.browser.shut_out import SCHEMES, shut_out
from tests.web.evenings import half_over
from tests.web.grounds import NOW, Grounds
from tests.web.server import running

STAND = "parade?stand=No+1+Company+%2F+1+Platoon+%2F+1+Section"
CHOSEN = (
    "choosing?game=whole-day+attack&rolled=25&allowed:light+tanks=2"
    "&plan=light+tanks%3D3,+armoured+cars%3D2,+bicycle+troop%3D2"
)
"""A plan that isn't legal, half way through the dice."""
SPENT = "next?game=whole-day+attack&money=25&wish=North%2FN1%3D1"
TAKEN_UP = (
    "hosts?game=whole-day+attack&section=machine-gun+platoon+1&must:pioneers=yes"
    "&plan=machine-gun+platoon%3D3,+pioneers(flame)%3D2"
    "&at:pioneers(flame)+2=No+1+Company+/+2+Platoon"
)
"""A section that is to be moved, and another where it may not be."""
CHANGED = "list?game=whole-day+attack&entry=anti-tank+guns&price:1=5&worth:2=x"
CHANGED_TOO = "list?game=whole-day+attack&entry=anti-tank+guns&price:1=5"
"""A slip that can't be read, and one that can."""
ALIKE = "marks?choose=9&read=blue&hand:brick+red=yes&hand:leaf+green=yes&more=bone%3DE3DAC9"
"""More colours than are at hand, and a mark that several bear."""
UNKNOWN_TROOPS = "papers?game=none&plan=dragons%3D3"
ONE_PAPER = "papers/paper?name=markers"
CHOSEN_COLOURS = "marks?choose=3&read=brown,+two+bars,+cross"
STAND_UP = "trays?stand=2"
"""A stand that is to change places, and others with which it may not."""
SHEETS = [
    STAND,
    CHOSEN,
    SPENT,
    TAKEN_UP,
    CHANGED,
    CHANGED_TOO,
    STAND_UP,
    "evening?new=yes",
    "choosing/list",
    ALIKE,
    CHOSEN_COLOURS,
    UNKNOWN_TROOPS,
    ONE_PAPER,
    *(page.path for page in (*PAGES, *BELOW)),
]
ADDRESSES = ["/", "/start", "/phone", *(f"/forces/marenz/{path}" for path in SHEETS)]

SMALLEST = 44
"""Pixels of whatever is touched (WCAG 2.2, 2.5.5)."""

# What is too small to touch; a link within a line of text is let through, as the standard does,
# and so is a mark of a drawing, which is as large as what it stands for: a control beside it does
# the same. A box that is ticked is as large as its label.
TOO_SMALL = """least => {
  const inLine = each => each.localName === "a" && getComputedStyle(each).display === "inline"
    && !each.closest("svg, nav, table")
    && each.parentElement.textContent.trim() !== each.textContent.trim();
  const touched = each => each.matches("[type=checkbox], [type=radio]") && each.closest("label")
    || each;
  const said = (each, box) =>
    `${Math.round(box.width)} x ${Math.round(box.height)}: ${each.outerHTML.slice(0, 120)}`;
  return [...document.querySelectorAll("a[href], button, input, select, textarea, summary")]
    .filter(each => each.checkVisibility({visibilityProperty: true}) && each.type !== "hidden")
    .filter(each => !each.matches(".skip, .vh, svg a") && !inLine(each))
    .map(each => [each, touched(each).getBoundingClientRect()])
    .filter(([, box]) => box.width + .5 < least || box.height + .5 < least)
    .map(([each, box]) => said(each, box));
}"""
WIDER = "() => document.documentElement.scrollWidth - document.documentElement.clientWidth"
MARKED = """() => {
  const each = document.activeElement, style = getComputedStyle(each);
  return each === document.body || each.closest("svg") !== null
    || (style.outlineStyle !== "none" && style.outlineWidth !== "0px");
}"""


@pytest.fixture(scope="module")
def url(tmp_path_factory: pytest.TempPathFactory) -> Iterator[str]:
    """The example force with a small journal, a word shown and a phone paired."""
    place = tmp_path_factory.mktemp("every")
    listener = phone_listener(named_address(LOOPBACK), port=8766, folder=place / "state", now=NOW)
    listener.devices.admit("Anna's phone", day=NOW.date())
    listener.pairing.begin()
    folder = Grounds(place).collection
    half_over(folder / "marenz", begin=NOW, is_disputed=True)
    with running(
        lambda port: application(
            replace(new_site(folder, hosts=loopback_hosts(port), clock=lambda: NOW), phone=listener)
        )
    ) as served:
        yield served


def looked_at(page: Page, address: str) -> None:
    """Opens an address, and waits for what is searched for there."""
    page.goto(address)
    page.locator("[data-progress], [data-setting]").first.wait_for(state="detached")


@pytest.fixture(scope="module", params=ADDRESSES)
def opened(request: pytest.FixtureRequest, browser: Browser, url: str) -> Iterator[Page]:
    """A page loaded once for all that is looked at; each test shows it in its own way."""
    context = browser.new_context(
        base_url=url, viewport={"width": 320, "height": 800}, reduced_motion="reduce"
    )
    page = context.new_page()
    looked_at(page, request.param)
    yield page
    context.close()


def show(page: Page, *, width: int, scheme: Literal["light", "dark"] = "light") -> None:
    page.set_viewport_size({"width": width, "height": 800})
    page.emulate_media(color_scheme=scheme)


@pytest.mark.slow
def test_nothing_keeps_anybody_out(opened: Page) -> None:
    """On a phone and on a desk, light and dark."""
    for width, scheme in product((1280, 320), SCHEMES):
        show(opened, width=width, scheme=scheme)
        assert shut_out(opened) == [], (width, scheme)


@pytest.mark.slow
def test_nothing_is_scrolled_sideways_and_a_thumb_finds_all(opened: Page) -> None:
    for width in (320, 390, 768, 1280):
        show(opened, width=width)
        assert (width, opened.evaluate(WIDER)) == (width, 0)
    show(opened, width=390)
    assert opened.evaluate(TOO_SMALL, SMALLEST) == []


@pytest.mark.slow
def test_the_focus_goes_through_a_page_and_can_be_seen(opened: Page) -> None:
    """With the keyboard alone: the first stop leads to the sheet, and each stop is marked.

    The last that is looked at on a page: after it the focus is somewhere.
    """
    show(opened, width=1280)
    opened.keyboard.press("Tab")
    assert opened.evaluate("document.activeElement.className") == "skip"
    for _ in range(8):
        opened.keyboard.press("Tab")
        assert opened.evaluate(MARKED), opened.evaluate("document.activeElement.outerHTML")


def test_a_page_that_is_too_wide_or_too_small_to_touch_is_seen(browser: Browser) -> None:
    """So that the tests above could fail."""
    page = browser.new_page(viewport={"width": 390, "height": 800})
    page.set_content(
        '<button style="width: 20px; height: 20px">x</button>'
        '<p style="width: 900px; color: #ccc; background: #fff">too pale'
    )
    assert len(page.evaluate(TOO_SMALL, SMALLEST)) == 1
    assert page.evaluate(WIDER) > 0
    assert {"color-contrast", "document-title"} <= {rule for rule, _ in shut_out(page)}
    page.close()
