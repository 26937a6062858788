"""The page of job cards."""

from pathlib import Path

import pytest
from starlette.testclient import TestClient

from paradestate.core.sentence.caution import FIRST
from paradestate.web.application import application, new_site
from tests.cli.test_bench_supplies import DONE
from tests.forces import EXAMPLES


def page(folder: Path, query: str = "", *, status: int = 200) -> str:
    client = TestClient(application(new_site(folder, hosts=frozenset({"testserver"}))))
    answer = client.get(f"/forces/{folder.name}/bench/cards{query}")
    assert answer.status_code == status
    return answer.text


@pytest.fixture
def one(tmp_path: Path) -> Path:
    """A force of one figure."""
    folder = tmp_path / "one"
    folder.mkdir()
    (folder / "force.yaml").write_text(DONE, encoding="utf-8")
    return folder


def changed(folder: Path, old: str, *, new: str) -> Path:
    text = (folder / "force.yaml").read_text(encoding="utf-8")
    assert old in text
    (folder / "force.yaml").write_text(text.replace(old, new), encoding="utf-8")
    return folder


def test_every_batch_has_a_slip_and_the_cautions_come_once() -> None:
    text = page(EXAMPLES / "marenz")
    assert text.count('id="batch-') == 9
    assert text.count('class="slip card thick"') == 2
    assert "12 rifle sections" in text
    assert "With it the smallest legal force can be played." in text
    assert text.count(FIRST.replace("'", "&#39;")) == 1
    assert "<option selected>" not in text


def test_the_sheet_of_the_bench_leads_there_and_back() -> None:
    folder = EXAMPLES / "marenz"
    client = TestClient(application(new_site(folder, hosts=frozenset({"testserver"}))))
    assert 'href="/forces/marenz/bench/cards"' in client.get("/forces/marenz/bench").text
    assert 'href="/forces/marenz/bench"' in client.get("/forces/marenz/bench/cards").text


def test_the_cards_until_a_milestone() -> None:
    text = page(EXAMPLES / "marenz", "?until=smallest+legal+force")
    assert text.count('id="batch-') == 6
    assert "<option selected>smallest legal force</option>" in text


def test_a_milestone_that_is_none_says_which_there_are() -> None:
    text = page(EXAMPLES / "marenz", "?until=%3Cb%3E", status=422)
    assert "There is no milestone &#39;&lt;b&gt;&#39;." in text
    assert "smallest legal force" in text
    assert 'href="/forces/marenz/bench/cards"' in text


def test_a_stop_in_the_files_is_shown_in_its_place(one: Path) -> None:
    text = page(changed(one, "bench: {minutes: {foot: {painted: 1}}}", new=""))
    assert "No minutes are given for rifleman" in text
    assert "A stop prevents the answer." in text


def test_figures_without_colours_say_how_to_give_some(one: Path) -> None:
    assert "tunic: [{colour: sand" in page(one)
    coloured = changed(
        one, "{minutes:", new="{colours: {coat: [{colour: <i>, coats: 2}]}, minutes:"
    )
    text = page(coloured)
    assert "colour card" in text
    assert "&lt;i&gt;, 2 coats" in text
    assert "<i>," not in text
    assert "2 boxes to tick" in text


def test_a_figure_of_no_size_is_told(one: Path) -> None:
    text = page(changed(one, "{height: 10 mm}", new="{}"))
    assert "No size is given for rifleman: 1 rifleman." in text


def test_what_is_done_is_ticked(one: Path) -> None:
    two = changed(one, "parts: {section: 1}", new="parts: {section: 2}")
    (two / "stock.yaml").write_text("stock: {rifleman: {assembled: 1}}\n", encoding="utf-8")
    text = page(two)
    assert text.count('<span class="vh">done</span>') == 1
    assert text.count('<span class="vh">to do</span>') == 7


def test_a_bench_with_nothing_to_do_has_no_cards(one: Path) -> None:
    (one / "stock.yaml").write_text("stock: {rifleman: {based: 1}}\n", encoding="utf-8")
    text = page(one)
    assert "Nothing is left to do at the bench." in text
    assert 'id="supplies"' not in text
