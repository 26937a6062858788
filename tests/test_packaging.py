"""What is shipped: the version, the locks, and a wheel that holds all a newcomer needs."""

import re
import shutil
import subprocess
import sys
import tomllib
import zipfile
from pathlib import Path
from typing import Any

import pytest
from packaging.requirements import Requirement
from packaging.utils import canonicalize_name

import paradestate

ROOT = Path(__file__).resolve().parent.parent
EXAMPLES = ROOT / "src" / "paradestate" / "examples"
LOCKS = ("requirements.lock", "requirements-dev.lock")


def project() -> dict[str, Any]:
    """The table ``project`` of pyproject.toml."""
    table: dict[str, Any] = tomllib.loads((ROOT / "pyproject.toml").read_text())["project"]
    return table


def needed(lock: str) -> list[Requirement]:
    """What pyproject.toml asks for, as far as this lock covers it."""
    extras = project()["optional-dependencies"]
    lines = project()["dependencies"] + extras["ods"]
    if lock == "requirements-dev.lock":
        lines = lines + extras["dev"]
    return [Requirement(line) for line in lines]


def pinned(text: str) -> dict[str, list[str]]:
    """The versions that a lock pins, by name; more than one where they depend on the Python."""
    versions: dict[str, list[str]] = {}
    for line in re.findall(r"^(\S+==[^\s;]+)", text, re.MULTILINE):
        package, version = line.split("==")
        versions.setdefault(canonicalize_name(package), []).append(version)
    return versions


def test_the_version_is_the_one_that_is_shipped() -> None:
    assert paradestate.__version__ == project()["version"]


@pytest.mark.parametrize("lock", LOCKS)
def test_a_lock_pins_what_is_asked_for(lock: str) -> None:
    versions = pinned((ROOT / lock).read_text())
    for requirement in needed(lock):
        found = versions.get(canonicalize_name(requirement.name), [])
        assert found, f"{lock} lacks {requirement.name}: make lock"
        assert all(requirement.specifier.contains(version) for version in found)


@pytest.mark.parametrize("lock", LOCKS)
def test_a_lock_has_a_digest_for_each_entry_and_no_address(lock: str) -> None:
    text = (ROOT / lock).read_text()
    entries = re.split(r"^(?=\S)", text, flags=re.MULTILINE)[1:]
    assert [entry for entry in entries if "--hash=sha256:" not in entry] == []
    assert "://" not in text


def test_both_locks_pin_the_same_versions() -> None:
    base, dev = (pinned((ROOT / lock).read_text()) for lock in LOCKS)
    assert {package: dev.get(package) for package in base} == base


@pytest.mark.slow
def test_the_wheel_holds_the_types_the_licence_and_every_example(tmp_path: Path) -> None:
    """Built from a copy, so that what an earlier build left behind cannot get in."""
    copy = tmp_path / "project"
    copy.mkdir()
    shutil.copytree(ROOT / "src", copy / "src", ignore=shutil.ignore_patterns("*.egg-info"))
    for file in (
        "pyproject.toml",
        "LICENSE",
        *([project()["readme"]] if "readme" in project() else []),
    ):
        shutil.copy(ROOT / file, copy)
    build = [sys.executable, "-m", "build", "--no-isolation", "--outdir", str(tmp_path), str(copy)]
    subprocess.run(build, check=True, capture_output=True)

    (wheel,) = tmp_path.glob("*.whl")
    held = set(zipfile.ZipFile(wheel).namelist())
    examples = {
        file.relative_to(ROOT / "src").as_posix() for file in EXAMPLES.rglob("*") if file.is_file()
    }
    assert examples
    assert examples <= held
    assert "paradestate/py.typed" in held
    papers = ROOT / "src" / "paradestate" / "sheet" / "paper"
    for folder in ("font", "template"):
        files = [file.relative_to(ROOT / "src") for file in (papers / folder).iterdir()]
        assert files
        assert {file.as_posix() for file in files} <= held
    assert any(file.endswith("/licenses/LICENSE") for file in held)
    assert [file for file in held if file.startswith(("tests/", "bench/"))] == []
