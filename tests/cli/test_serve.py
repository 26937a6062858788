"""The command `serve`."""

import http.client
import os
import re
import signal
import ssl
import subprocess
import sys
import threading
import webbrowser
from collections.abc import Iterator
from contextlib import closing, contextmanager
from pathlib import Path

import pytest

from paradestate.cli import main
from paradestate.web.listening import LOOPBACK, bound
from tests.cli.calling import call

WITHIN_SECONDS = 60


@contextmanager
def served(*words: object, state: Path) -> Iterator[subprocess.Popen[str]]:
    command = [sys.executable, "-m", "paradestate", "serve", *map(str, words)]
    with subprocess.Popen(
        command,
        stdout=subprocess.PIPE,
        stderr=subprocess.PIPE,
        text=True,
        env=os.environ | {"XDG_STATE_HOME": str(state), "PYTHONUTF8": "1"},
    ) as process:
        watch = threading.Timer(WITHIN_SECONDS, process.kill)
        watch.start()
        try:
            yield process
        finally:
            watch.cancel()
            process.kill()


def said(process: subprocess.Popen[str]) -> str:
    """What it says up to the line that it can be opened."""
    assert process.stdout is not None
    lines = []
    for line in process.stdout:
        lines.append(line)
        if line.startswith("Open "):
            break
    return "".join(lines)


def ended(process: subprocess.Popen[str]) -> tuple[int, str, str]:
    process.send_signal(signal.SIGINT)
    out, err = process.communicate(timeout=WITHIN_SECONDS)
    return process.returncode, out, err


def status_of(connection: http.client.HTTPConnection, path: str) -> int:
    with closing(connection):
        connection.request("GET", path)
        return connection.getresponse().status


@pytest.mark.slow
def test_a_folder_is_served_to_this_computer_until_ctrl_c(folder: Path, tmp_path: Path) -> None:
    with served(folder, "--port", 0, state=tmp_path / "state") as process:
        found = re.fullmatch(r"Open http://127\.0\.0\.1:(\d+)/ in a browser .*\n", said(process))
        assert found is not None
        port = int(found[1])
        own = http.client.HTTPConnection(LOOPBACK, port, timeout=WITHIN_SECONDS)
        assert status_of(own, f"/forces/{folder.name}/parade") == 200
        assert ended(process) == (0, "Ended.\n", "")
    assert not (tmp_path / "state").exists()


@pytest.mark.slow
def test_with_phone_it_says_who_reaches_it_and_admits_nobody_unasked(
    folder: Path, tmp_path: Path
) -> None:
    with served(folder, "--port", 0, "--phone", LOOPBACK, state=tmp_path / "state") as process:
        words = said(process)
        found = re.search(r"Phones are answered at https://127\.0\.0\.1:(\d+)/\n", words)
        assert found is not None
        assert "Only this computer can reach this address; a phone can't." in words
        assert "A new certificate was made: there was none yet." in words
        assert len(re.findall(r"^    (?:[0-9A-F]{2} ){7}[0-9A-F]{2}$", words, re.MULTILINE)) == 4
        kept = (tmp_path / "state/paradestate/certificate-127.0.0.1.pem").read_text()
        authority = "-----BEGIN CERT" + kept.split("-----BEGIN CERT")[2]
        trusting = ssl.create_default_context(cadata=authority)
        other = http.client.HTTPSConnection(
            LOOPBACK, int(found[1]), context=trusting, timeout=WITHIN_SECONDS
        )
        assert status_of(other, f"/forces/{folder.name}/parade") == 303
        assert ended(process) == (0, "Ended.\n", "")


def test_a_port_that_is_taken_is_a_failure_of_the_world(
    folder: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    with bound(LOOPBACK, 0) as taken:
        port = taken.getsockname()[1]
        monkeypatch.setattr("sys.argv", ["paradestate", "serve", str(folder), "--port", str(port)])
        with pytest.raises(SystemExit) as end:
            main()
    assert end.value.code == 3
    assert f"Port {port} of 127.0.0.1 is taken" in capsys.readouterr().err


@pytest.mark.parametrize("address", ["0.0.0.0", "::", "203.0.113.7", "no-such-host.invalid"])  # noqa: S104
def test_an_address_that_is_not_one_of_this_computer_is_wrong_usage(
    folder: Path, address: str
) -> None:
    answer = call("serve", folder, "--phone", address)
    assert answer.status == 2
    assert address in answer.err


def test_with_open_the_browser_gets_the_first_page(
    folder: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    opened = threading.Event()
    pages: list[str] = []

    def browser(page: str) -> bool:
        pages.append(page)
        opened.set()
        return True

    monkeypatch.setattr(webbrowser, "open", browser)
    monkeypatch.setattr("paradestate.web.serving.listen", lambda _, *, ready: ready())
    assert call("serve", folder, "--port", 0).status == 0
    assert pages == []
    answer = call("serve", folder, "--port", 0, "--open")
    assert opened.wait(WITHIN_SECONDS)
    assert answer.out.startswith(f"Open {pages[0]} in a browser")
