"""A cluster for tests: a scheduler and two workers, each a process of its own on loopback."""

import contextlib
import json
import os
import subprocess
import sys
import time
from collections.abc import Iterator
from contextlib import ExitStack, contextmanager
from dataclasses import dataclass
from pathlib import Path

LOOPBACK = "127.0.0.1"


@dataclass(frozen=True, slots=True, kw_only=True)
class RunningCluster:
    address: str
    scheduler: "subprocess.Popen[bytes]"


@contextmanager
def _process(module: str, *words: str) -> Iterator["subprocess.Popen[bytes]"]:
    command = [sys.executable, "-m", f"distributed.cli.{module}", *words, "--host", LOOPBACK]
    # a scheduler looks half a minute for a worker that has answers and is gone, if not told so
    patience = {"DASK_DISTRIBUTED__COMM__TIMEOUTS__CONNECT": "2s"}
    with subprocess.Popen(command, stderr=subprocess.DEVNULL, env=os.environ | patience) as process:
        try:
            yield process
        finally:
            process.kill()


def _address(file: Path, *, scheduler: "subprocess.Popen[bytes]") -> str:
    """The address that a scheduler writes down once it listens, in more than one stroke."""
    while True:
        with contextlib.suppress(OSError, ValueError):
            return str(json.loads(file.read_text())["address"])
        assert scheduler.poll() is None
        time.sleep(0.05)


@contextmanager
def running_cluster(folder: Path, *, workers: int = 2) -> Iterator[RunningCluster]:
    file = folder / "scheduler.json"
    known = ("--scheduler-file", str(file), "--no-dashboard")
    with ExitStack() as stack:
        scheduler = stack.enter_context(_process("dask_scheduler", *known, "--port", "0"))
        address = _address(file, scheduler=scheduler)
        for _ in range(workers):
            # the nanny starts a worker again that has died
            worker = (address, "--no-dashboard", "--nthreads", "1", "--nanny")
            stack.enter_context(_process("dask_worker", *worker))
        yield RunningCluster(address=address, scheduler=scheduler)
