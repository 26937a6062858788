"""The browser of the tests: it reads what a server of the test says, and runs it."""

from playwright.sync_api import Browser, Page
from starlette.responses import HTMLResponse

from tests.web.server import Served, running

PAGE = "<title>Parade</title><p id=who>nobody</p><script>who.textContent = 'a rifleman'</script>"


def test_a_browser_reads_and_runs_what_is_served(browser: Browser) -> None:
    with running(lambda _: HTMLResponse(PAGE)) as url, browser.new_page() as page:
        page.goto(url)
        assert page.title() == "Parade"
        assert page.locator("#who").text_content() == "a rifleman"


def test_the_example_force_is_served(page: Page, served: Served) -> None:
    page.goto("/")
    assert page.url == served("parade")
    assert page.locator("h1").count() == 1
