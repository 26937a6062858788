"""Calling the tools that see to Debian packages, among programs that a test puts there."""

import shutil
import subprocess
from pathlib import Path

TOOLS = Path(__file__).resolve().parent.parent / "tools"
IS_DEBIAN = Path("/etc/debian_version").exists()


def bare_programs(place: Path) -> Path:
    """A folder of programs with none but those of somebody without rights."""
    folder = place / "bin"
    folder.mkdir()
    put(folder, name="id", does="echo 1000")
    return folder


def put(folder: Path, *, name: str, does: str) -> None:
    """A program that does this."""
    program = folder / name
    program.write_text(f"#!/bin/sh\n{does}\n")
    program.chmod(0o755)


def called(tool: str, *, bare: Path, **settings: str) -> subprocess.CompletedProcess[str]:
    """What a tool says with these programs alone."""
    shell = shutil.which("sh")
    assert shell is not None
    return subprocess.run(
        [shell, TOOLS / tool],
        env={"PATH": str(bare), **settings},
        capture_output=True,
        text=True,
        check=False,
        timeout=60,
    )
