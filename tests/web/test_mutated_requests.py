"""Requests that are nearly right never break anything, and show nothing that lies outside.

600 of them here; `bench/bench_mutated_requests.py` sends 100,000.
"""

from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path

import pytest

from paradestate.web.application import BELOW, PAGES
from paradestate.web.guard import HEADERS
from tests.web.asking import Answer
from tests.web.campaign import Campaign, prepared
from tests.web.grounds import BESIDE, MOST_SENT, SCRIPT, Grounds, faults

OWN = 500
STRANGE = 100
"""From a device that nobody let in."""


@pytest.fixture(scope="module")
def campaign(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Campaign]:
    with prepared(tmp_path_factory.mktemp("mutated")) as made:
        yield made


def test_the_pages_are_all_found_and_no_link_of_theirs_leads_nowhere(campaign: Campaign) -> None:
    """Else what follows would show nothing."""
    sources = campaign.own.sources
    found = {each.target.decode() for each in sources}
    assert {"/phone", *(f"/forces/marenz/{page.path}" for page in (*PAGES, *BELOW))} <= found
    assert any(each.method == "POST" and b"token" in each.body for each in sources)
    for each in sources:
        if each.method == "GET":
            assert campaign.own.sent(each).status in {200, 303}, each.target


def test_forms_that_are_not_changed_are_taken(campaign: Campaign) -> None:
    """What is changed below is refused for the change, not for want of a token."""
    posts = [each for each in campaign.own.sources if each.method == "POST"]
    for each in posts:
        answer = campaign.own.sent(each)
        assert answer.status not in {400, 403, 404, 405}, each
    campaign.grounds.put_back()


def test_a_length_that_is_none_or_too_great_is_refused(campaign: Campaign) -> None:
    request = campaign.own.sources[0]
    headers = [each for each in request.headers if each[0] != b"content-length"]
    for length in ("-1", "many", "6291457", "9" * 20, "9" * 5000, "\xb2", ""):
        told = (*headers, (b"content-length", length.encode("latin-1")))
        assert campaign.own.sent(replace(request, headers=told)).status == 413, length


@pytest.mark.unmeasured
@pytest.mark.slow
def test_no_request_breaks_anything_or_shows_what_lies_outside(
    campaign: Campaign, caplog: pytest.LogCaptureFixture
) -> None:
    assert list(campaign.own_faults(OWN)) == []
    caplog.clear()  # the reader of forms says what it couldn't read


@pytest.mark.unmeasured
@pytest.mark.slow
def test_no_request_lets_in_a_device_that_is_not_paired(campaign: Campaign) -> None:
    assert list(campaign.stranger_faults(STRANGE)) == []


GOOD = tuple((name.encode(), value.encode()) for name, value in HEADERS.items())
PAGE = (*GOOD, (b"content-type", b"text/html"))


@pytest.mark.parametrize(
    ("answer", "what"),
    [
        (Answer(status=500, headers=GOOD, body=b""), "status is 500"),
        (Answer(status=200, headers=GOOD, body=BESIDE.encode()), "beside the collection"),
        (Answer(status=200, headers=GOOD[1:], body=b""), "content policy"),
        (Answer(status=200, headers=(*GOOD, (b"x-injected", b"yes")), body=b""), "smuggled"),
        (Answer(status=200, headers=(*GOOD, (b"a", b"b\r\nc: d")), body=b""), "smuggled"),
        (Answer(status=200, headers=PAGE, body=SCRIPT), "script"),
        (Answer(status=200, headers=GOOD, body=b"x" * (MOST_SENT + 1)), "too long"),
    ],
)
def test_every_fault_of_an_answer_is_seen(answer: Answer, what: str) -> None:
    found = faults(answer)
    assert len(found) == 1
    assert what in found[0]


def test_an_answer_without_a_fault_has_none() -> None:
    assert faults(Answer(status=404, headers=PAGE, body=b"<p>Nothing is here.</p>")) == []


def test_what_lies_beside_is_seen_when_it_changes(tmp_path: Path) -> None:
    """So that a request that writes outside the collection would be found."""
    grounds = Grounds(tmp_path)
    before = grounds.outside()
    (grounds.root / "written.txt").write_text("by somebody")
    assert grounds.outside() != before
    grounds.put_back()
    assert grounds.outside() == before
