"""Holdings and journal in a browser: a parcel booked in once, taken back, nobody shut out."""

import pytest
from playwright.sync_api import Browser, Page, expect

from paradestate.core.journal_entry import EntryKind
from paradestate.journeys.history import history
from tests.journeys.logging_to import TODAY, logged
from tests.web.browser.shut_out import shut_out
from tests.web.server import Served

PAGES = (
    "holdings",
    "holdings/log",
    "holdings/log?kind=moved",
    "holdings/log?kind=session",
    "holdings/receive",
    "holdings/receive?source=South",
    "holdings/stock-take",
    "holdings/spreadsheet",
    "holdings/replacement",
    "holdings/spare",
    "journal",
    f"journal?on={TODAY}",
)

pytestmark = pytest.mark.slow


def book_in(page: Page, served: Served, *, is_impatient: bool) -> None:
    """Receives two packs from South, from the sheet of holdings on."""
    page.goto(served("holdings"))
    page.get_by_role("link", name="Receive a parcel").click()
    page.get_by_role("link", name="South").click()
    page.get_by_label("S1 came").fill("2")
    page.get_by_label("officer miscast").fill("1")
    button = page.get_by_role("button", name="Book it in")
    if is_impatient:
        button.dblclick()
    else:
        button.click()
    expect(page.get_by_text("To be claimed from South:")).to_be_visible()


def test_a_parcel_on_which_one_clicks_twice_is_booked_in_once(page: Page, served: Served) -> None:
    book_in(page, served, is_impatient=True)
    page.get_by_role("link", name="To the holdings").click()
    expect(page.get_by_text("43 figures held")).to_be_visible()
    assert history(served.folder, today=TODAY, last=9).number == 1


def test_it_works_without_scripts_and_is_taken_back(browser: Browser, served: Served) -> None:
    with browser.new_context(java_script_enabled=False) as context:
        page = context.new_page()
        book_in(page, served, is_impatient=False)
        page.get_by_role("button", name="Take it back").click()
        expect(page.get_by_text("Nothing is held yet.")).to_be_visible()
        page.goto(served("journal"))
        expect(page.get_by_text("2 lines verified, none altered.")).to_be_visible()
        expect(page.locator(".struck")).to_have_count(1)


def test_a_name_with_a_quotation_mark_is_counted_like_any_other(page: Page, served: Served) -> None:
    more = 'figures: {say "if" % / or: {}}\n'
    (served.folder / "more.yaml").write_text(more, encoding="utf-8")
    page.goto(served("holdings/stock-take"))
    row = page.get_by_role("group", name='say "if" % / or')
    row.get_by_label("painted").fill("7")
    page.get_by_role("button", name="Write the count").click()
    expect(page.get_by_text('counted 7 say "if" % / ors painted')).to_be_visible()


@pytest.mark.parametrize(("width", "scheme"), [(320, "dark")])
def test_every_sheet_is_for_everybody_and_fits(
    browser: Browser, *, served: Served, width: int, scheme: str
) -> None:
    logged(served.folder, EntryKind.RECEIVED, figures={"rifleman": 12, "cyclist": 3})
    logged(served.folder, EntryKind.LENT, figures={"rifleman": 2})
    dark = scheme == "dark"
    with browser.new_context(
        viewport={"width": width, "height": 800},
        color_scheme="dark" if dark else "light",
        bypass_csp=True,  # so that the checker may be put into the page
    ) as context:
        page = context.new_page()
        for path in PAGES:
            page.goto(served(path))
            page.evaluate("document.querySelectorAll('details').forEach(each => each.open = true)")
            assert shut_out(page) == [], path
            too_wide = "document.documentElement.scrollWidth > innerWidth"
            assert not page.evaluate(too_wide), path
