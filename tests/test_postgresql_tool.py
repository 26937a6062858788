"""`tools/postgresql`: nothing to do, something to install, or a message that says what."""

import shutil
from pathlib import Path

import pytest

from tests.installing import IS_DEBIAN, bare_programs, called, put


@pytest.fixture
def bare(tmp_path: Path) -> Path:
    """A folder of programs without any of PostgreSQL's, for somebody without rights."""
    return bare_programs(tmp_path)


def test_nothing_is_done_where_the_programs_are_on_the_path(bare: Path) -> None:
    put(bare, name="initdb", does="exit 1")
    put(bare, name="postgres", does="exit 1")
    done = called("postgresql", bare=bare, PG_PLACES="")
    assert (done.returncode, done.stdout, done.stderr) == (0, "", "")


def test_they_are_found_elsewhere_too(bare: Path, tmp_path: Path) -> None:
    for version in ("14", "15"):
        (tmp_path / version / "bin").mkdir(parents=True)
    for name in ("initdb", "postgres"):
        put(tmp_path / "15" / "bin", name=name, does="exit 1")
    assert called("postgresql", bare=bare, PG_PLACES=f"{tmp_path}/*/bin").returncode == 0
    assert called("postgresql", bare=bare, PG_PLACES=f"{tmp_path}/14/bin").returncode == 1
    put(bare, name="pg_config", does=f"echo {tmp_path}/15/bin")
    assert called("postgresql", bare=bare, PG_PLACES="").returncode == 0


def test_who_may_not_install_is_told_what_to_install(bare: Path) -> None:
    put(bare, name="apt-get", does="echo never")
    done = called("postgresql", bare=bare, PG_PLACES="")
    assert done.returncode == 1
    assert "on Debian: apt-get install postgresql" in done.stderr
    assert done.stdout == ""


def test_root_on_debian_gets_it_installed_and_elsewhere_is_told(bare: Path, tmp_path: Path) -> None:
    put(bare, name="id", does="echo 0")
    made = f'case "$1" in install) for p in initdb postgres; do : >{tmp_path}/$p; '
    made += f'"{shutil.which("chmod")}" 755 {tmp_path}/$p; done ;; esac'
    put(bare, name="apt-get", does=made)
    done = called("postgresql", bare=bare, PG_PLACES=str(tmp_path))
    assert done.returncode == (0 if IS_DEBIAN else 1)
    assert ("installing it for the tests" in done.stdout) is IS_DEBIAN


def test_an_installation_that_fails_is_said(bare: Path) -> None:
    put(bare, name="id", does="echo 0")
    put(bare, name="apt-get", does="exit 100")
    done = called("postgresql", bare=bare, PG_PLACES="")
    assert done.returncode == 1
    assert ("could not be installed" in done.stderr) is IS_DEBIAN
