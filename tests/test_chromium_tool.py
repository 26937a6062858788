"""`tools/chromium`: nothing to do, something to install, or a message that says what."""

import shutil
from pathlib import Path

import pytest

from tests.installing import IS_DEBIAN, bare_programs, called, put


@pytest.fixture
def bare(tmp_path: Path) -> Path:
    """A folder of programs without a browser, for somebody without rights."""
    return bare_programs(tmp_path)


@pytest.mark.parametrize("name", ["chromium", "chromium-browser", "google-chrome"])
def test_nothing_is_done_where_a_browser_is_on_the_path(bare: Path, name: str) -> None:
    put(bare, name=name, does="exit 1")
    done = called("chromium", bare=bare)
    assert (done.returncode, done.stdout, done.stderr) == (0, "", "")


def test_who_may_not_install_is_told_what_to_install(bare: Path) -> None:
    put(bare, name="apt-get", does="echo never")
    done = called("chromium", bare=bare)
    assert done.returncode == 1
    assert "on Debian: apt-get install chromium" in done.stderr
    assert done.stdout == ""


def test_root_on_debian_gets_it_installed_and_elsewhere_is_told(bare: Path) -> None:
    put(bare, name="id", does="echo 0")
    made = f': >{bare}/chromium; "{shutil.which("chmod")}" 755 {bare}/chromium'
    put(bare, name="apt-get", does=f'case "$1" in install) {made} ;; esac')
    done = called("chromium", bare=bare)
    assert done.returncode == (0 if IS_DEBIAN else 1)
    assert ("installing it for the tests" in done.stdout) is IS_DEBIAN


def test_an_installation_that_fails_is_said(bare: Path) -> None:
    put(bare, name="id", does="echo 0")
    put(bare, name="apt-get", does="exit 100")
    done = called("chromium", bare=bare)
    assert done.returncode == 1
    assert ("could not be installed" in done.stderr) is IS_DEBIAN
