"""A PostgreSQL server of our own, in a temporary folder, reached by a socket in it alone."""

import os
import pwd
import shutil
import signal
import subprocess
import tempfile
import time
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import Any

import psycopg

PASSWORD = "sesame-in-a-test"  # noqa: S105 - of a server that is gone after the test
UNPRIVILEGED = "nobody"
"""PostgreSQL refuses to run as root."""
STARTED_WITHIN_SECONDS = 60


def program(name: str) -> str:
    """Where this program of PostgreSQL is, or what to do where it isn't."""
    places = [*os.get_exec_path(), *_asked(), *map(str, _debian())]
    found = shutil.which(name, path=os.pathsep.join(places))
    assert found, f"there is no {name}: run tools/postgresql, which says what to install"
    return found


def _asked() -> list[str]:
    if shutil.which("pg_config") is None:
        return []
    return [subprocess.check_output(["pg_config", "--bindir"], text=True).strip()]


def _debian() -> list[Path]:
    return sorted(Path("/usr/lib/postgresql").glob("*/bin"), reverse=True)


def _as_whom() -> dict[str, Any]:
    """How to start a program that must not run as root."""
    if os.geteuid() != 0:
        return {}
    known = pwd.getpwnam(UNPRIVILEGED)
    return {"user": known.pw_uid, "group": known.pw_gid, "extra_groups": []}


@contextmanager
def running_cluster() -> Iterator[str]:
    """The address of the server, as postgresql://..., for as long as the block lasts."""
    # not under the folder of the test: the path of a socket may only have some hundred letters
    with tempfile.TemporaryDirectory(prefix="pg-", ignore_cleanup_errors=True) as name:
        folder = Path(name)
        (folder / "password").write_text(PASSWORD)
        if os.geteuid() == 0:
            for path in (folder, folder / "password"):
                shutil.chown(path, UNPRIVILEGED)
        _make(folder)
        url = f"postgresql://postgres:{PASSWORD}@/postgres?host={folder}"
        with (folder / "log").open("wb") as log:
            server = _started(folder, log=log)
            try:
                _wait_for(server, url=url, log=folder / "log")
                yield url
            finally:
                server.send_signal(signal.SIGINT)  # ends what is under way, and itself
                server.wait(timeout=30)


def _make(folder: Path) -> None:
    words = [program("initdb"), "--no-sync", "--encoding=UTF8", "--no-locale", "-U", "postgres"]
    words += ["--auth=scram-sha-256", f"--pwfile={folder / 'password'}", str(folder / "data")]
    made = subprocess.run(
        words, cwd=folder, capture_output=True, text=True, check=False, **_as_whom()
    )
    assert made.returncode == 0, made.stderr


def _started(folder: Path, *, log: Any) -> subprocess.Popen[bytes]:  # noqa: ANN401 - an open file
    settings = {
        "listen_addresses": "",
        "unix_socket_directories": str(folder),
        "fsync": "off",
        "max_connections": "20",
        "shared_buffers": "16MB",
    }
    words = [word for key, value in settings.items() for word in ("-c", f"{key}={value}")]
    return subprocess.Popen(
        [program("postgres"), "-D", str(folder / "data"), *words],
        cwd=folder,
        stdout=log,
        stderr=log,
        **_as_whom(),
    )


def _wait_for(server: subprocess.Popen[bytes], *, url: str, log: Path) -> None:
    for _ in range(STARTED_WITHIN_SECONDS * 20):
        assert server.poll() is None, log.read_text()
        try:
            psycopg.connect(url).close()
        except psycopg.OperationalError:
            time.sleep(0.05)
        else:
            return
    raise AssertionError(log.read_text())
