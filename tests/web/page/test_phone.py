"""The computer's page about phones, and what a phone sees of the same force."""

import datetime
import html
import ipaddress
import re
from collections.abc import Iterator
from dataclasses import dataclass, replace
from pathlib import Path
from uuid import uuid4

import pytest

from paradestate.core.journal_entry import EntryKind
from paradestate.core.log_request import LogRequest
from paradestate.journeys.history import history
from paradestate.journeys.log import log
from paradestate.web.application import application, new_site, site_of_phone
from paradestate.web.phone.addresses import Named
from paradestate.web.phone.listener import PhoneListener, phone_listener
from paradestate.web.site import Site
from paradestate.web.token import COOKIE, token_for
from tests.web.asking import Answer, Asking
from tests.web.server import marenz

NOW = datetime.datetime(2026, 3, 1, 19, 30, tzinfo=datetime.UTC)
HOME = Named(address=ipaddress.ip_address("192.168.7.20"), name="192.168.7.20")
INTERNET = Named(address=ipaddress.ip_address("8.8.4.4"), name="8.8.4.4")
OWN = "127.0.0.1:8765"


@dataclass(frozen=True, slots=True, kw_only=True)
class Both:
    """The computer's own browser, and a phone."""

    own: Asking
    phone: Asking
    listener: PhoneListener

    def press(self, path: str, **fields: str) -> Answer:
        """Presses a button of the computer's page."""
        return press(self.own, path, **fields)

    def word(self) -> str:
        """A new word, as the computer's page shows it."""
        assert self.press("/phone/word").status == 303
        found = re.search(r'class="word"[^>]*>([a-z0-9-]+)<', self.own.get("/phone").text)
        assert found is not None
        return found[1]

    def pair(self, name: str) -> Answer:
        return self.phone.post("/pair", data={"word": self.word(), "name": name})


def press(own: Asking, path: str, **fields: str) -> Answer:
    token = re.search(r'name="token" value="(\w+)"', own.get("/phone").text)
    given = {} if token is None else {"token": token[1]}
    return own.post(path, data=given | fields)


def the_site(folder: Path) -> Site:
    return new_site(folder, hosts=frozenset({OWN}), clock=lambda: NOW)


@pytest.fixture
def named() -> Named:
    return HOME


@pytest.fixture
def both(tmp_path: Path, named: Named) -> Iterator[Both]:
    site = the_site(marenz(tmp_path))
    listener = phone_listener(named, port=8766, folder=tmp_path / "state", now=NOW)
    computer = application(replace(site, phone=listener))
    phone = application(site_of_phone(site, listener=listener))
    with (
        Asking(computer, url=f"http://{OWN}") as own,
        Asking(phone, url=f"https://{listener.host}") as other,
    ):
        yield Both(own=own, phone=other, listener=listener)


def test_without_phones_the_page_says_how_to_let_them_in(tmp_path: Path) -> None:
    folder = marenz(tmp_path)
    with Asking(application(the_site(folder)), url=f"http://{OWN}") as own:
        answer = own.get("/phone")
        assert answer.status == 200
        assert "A phone can't" in answer.text
        assert f"paradestate serve {folder} --phone" in answer.text
        assert "on this machine only" in answer.text


@pytest.mark.parametrize("path", ["/phone/word", "/phone/no-word", "/phone/remove"])
def test_without_phones_nothing_can_be_done_there(tmp_path: Path, path: str) -> None:
    site = the_site(marenz(tmp_path))
    token = token_for("crumb", secret=site.secret)
    with Asking(application(site), url=f"http://{OWN}") as own:
        own.cookies[COOKIE] = "crumb"
        assert own.post(path, data={"token": token}).status == 409


def test_the_page_says_who_reaches_it_and_shows_the_fingerprint(both: Both) -> None:
    text = both.own.get("/phone").text
    assert "https://192.168.7.20:8766/" in text
    assert both.listener.reach in text
    assert both.listener.fingerprint_rows[0] in text
    assert "no device may come in yet" in text
    assert "on this machine and paired devices" in text
    assert "This address is on the internet" not in text


@pytest.mark.parametrize("named", [INTERNET])
def test_an_address_of_the_internet_is_warned_of(both: Both) -> None:
    assert "This address is on the internet" in both.own.get("/phone").text


def test_a_word_lets_one_phone_in_and_the_list_shows_it(both: Both) -> None:
    assert both.phone.get("/forces/marenz/parade").status == 303
    assert both.pair("Anna's phone").status == 303
    assert both.phone.get("/forces/marenz/parade").status == 200
    text = both.own.get("/phone").text
    assert "Anna&#39;s phone" in text
    assert "comes in until 28 Aug 2026" in text
    assert "1 device may come in" in text
    assert 'class="word"' not in text


def test_the_code_brings_the_phone_to_the_page_with_the_word(both: Both) -> None:
    word = both.word()
    assert both.listener.code(word).svg in both.own.get("/phone").text
    page = both.phone.get(f"/pair?word={word}")
    assert f'value="{word}"' in page.text
    assert both.listener.pairing.word == word


def test_a_word_can_be_taken_back(both: Both) -> None:
    word = both.word()
    both.press("/phone/no-word")
    answer = both.phone.post("/pair", data={"word": word})
    assert answer.status == 403
    assert "No word is good now" in answer.text


def test_a_wrong_word_is_said_on_the_phone_and_counted_on_the_computer(both: Both) -> None:
    both.word()
    answer = both.phone.post("/pair", data={"word": "wrong"})
    assert answer.status == 403
    assert "That isn't the word" in answer.text
    assert "4 attempts" in both.own.get("/phone").text


def test_a_device_that_is_removed_is_out_at_once(both: Both) -> None:
    both.pair("Anna's phone")
    key = both.listener.devices.all()[0].key
    both.press("/phone/remove", device=key)
    assert both.phone.get("/forces/marenz/parade").status == 303
    assert "None is paired" in both.own.get("/phone").text


@pytest.mark.parametrize("path", ["/phone", "/phone/", "//phone", "/phone?x=1", "/%70hone"])
def test_a_paired_phone_cannot_see_the_word(both: Both, path: str) -> None:
    both.pair("Anna's phone")
    word = both.word()
    answer = both.phone.get(path)
    assert answer.status == 404
    assert word not in answer.text
    assert 'href="/phone"' not in both.phone.get("/forces/marenz/parade").text


@pytest.mark.parametrize("path", ["/phone/word", "/phone/no-word", "/phone/remove"])
def test_a_paired_phone_cannot_let_in_or_put_out_another(both: Both, path: str) -> None:
    both.pair("Anna's phone")
    assert press(both.phone, path).status == 404
    assert both.listener.pairing.word is None
    assert len(both.listener.devices.all()) == 1


def test_what_a_phone_writes_stands_in_the_journal_of_the_computer(
    both: Both, tmp_path: Path
) -> None:
    folder = tmp_path / "marenz"
    counted = LogRequest(
        id=str(uuid4()),
        kind=EntryKind.COUNTED,
        written=NOW,
        on=NOW.date(),
        figures={"rifleman": 101, "officer": 7},
        to_stage="painted",
    )
    log(folder, today=NOW.date(), request=counted)
    both.pair("Anna's phone")
    address = "/forces/marenz/parade"
    stand = re.search(r'href="([^"]*\?stand=[^"]*Section[^"]*)"', both.phone.get(address).text)
    assert stand is not None
    page = both.phone.get(html.unescape(stand[1])).text
    fields = dict(re.findall(r'name="(token|stand|entry|from|to)" value="([^"]*)"', page))
    assert both.phone.post(f"{address}/bring-on", data=fields).status == 303
    entries = history(folder, today=NOW.date(), last=9).entries
    assert [entry.kind for entry in entries] == [EntryKind.MOVED, EntryKind.COUNTED]


def test_the_cookie_of_forms_goes_over_tls_alone(both: Both) -> None:
    both.pair("Anna's phone")
    answer = both.phone.get("/forces/marenz/parade")
    assert answer.header("set-cookie").endswith("; Secure")
    assert not both.own.get("/phone").header("set-cookie").endswith("; Secure")


def test_the_computer_does_not_ask_for_a_word(both: Both) -> None:
    assert both.own.get("/forces/marenz/parade").status == 200
    assert both.own.get("/pair").status == 404


def test_a_list_that_cannot_be_read_is_said_on_both(both: Both, tmp_path: Path) -> None:
    both.pair("Anna's phone")
    (tmp_path / "state" / "devices.json").write_text("nonsense")
    assert both.own.get("/phone").status == 503
    answer = both.phone.get("/forces/marenz/parade")
    assert answer.status == 503
    assert "Nobody can be let in now" in answer.text


def test_a_device_of_an_odd_name_cannot_put_anything_on_the_page(both: Both) -> None:
    both.pair("<script>alert(1)</script>")
    text = both.own.get("/phone").text
    assert "<script>alert" not in text
    assert "&lt;script&gt;alert" in text


def test_on_the_usual_port_of_tls_no_port_is_named(tmp_path: Path) -> None:
    desk = Named(address=HOME.address, name="desk.home.arpa")
    listener = phone_listener(desk, port=443, folder=tmp_path, now=NOW)
    assert listener.url == "https://desk.home.arpa/"
    assert listener.hosts == {"desk.home.arpa", "192.168.7.20"}
