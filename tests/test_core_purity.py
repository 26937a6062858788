"""The core reads nothing, asks no clock and draws no lot: the same values in, the same out."""

import ast
import sys
from collections.abc import Iterator
from pathlib import Path

import pytest

CORE = Path(__file__).resolve().parent.parent / "src" / "paradestate" / "core"

# In the standard library, but each reaches outside: files, clock, chance, network, other programs.
OUTSIDE = {
    "asyncio",
    "glob",
    "http",
    "io",
    "logging",
    "multiprocessing",
    "os",
    "pathlib",
    "random",
    "secrets",
    "shutil",
    "socket",
    "sqlite3",
    "subprocess",
    "tempfile",
    "threading",
    "time",
    "urllib",
}
FORBIDDEN_CALLS = {"breakpoint", "eval", "exec", "float", "input", "open", "print", "__import__"}
CLOCK = {"now", "today", "utcnow"}


def imported(tree: ast.AST) -> Iterator[str]:
    """Every module that a file imports, by its whole name."""
    for node in ast.walk(tree):
        if isinstance(node, ast.Import):
            yield from (alias.name for alias in node.names)
        if isinstance(node, ast.ImportFrom):
            yield "." * node.level + (node.module or "")


def is_allowed(module: str) -> bool:
    """Whether core may import it: itself, or what the standard library can compute."""
    if module == "paradestate.core" or module.startswith("paradestate.core."):
        return True
    top = module.partition(".")[0]
    return top in sys.stdlib_module_names and top not in OUTSIDE


def reaching_out(source: str) -> list[str]:
    """What the text imports, calls or writes that core may not, in the text's own words."""
    tree = ast.parse(source)
    found = [f"import {module}" for module in imported(tree) if not is_allowed(module)]
    for node in ast.walk(tree):
        if isinstance(node, ast.Call) and is_forbidden(node.func):
            found.append(f"{ast.unparse(node.func)}()")
        if isinstance(node, ast.Constant) and isinstance(node.value, float | complex):
            found.append(repr(node.value))
    return found


def is_forbidden(function: ast.expr) -> bool:
    """Whether calling it reaches outside, or makes a number that is not exact."""
    if isinstance(function, ast.Name):
        return function.id in FORBIDDEN_CALLS
    return isinstance(function, ast.Attribute) and function.attr in CLOCK


@pytest.mark.parametrize("file", sorted(CORE.rglob("*.py")), ids=lambda file: file.stem)
def test_a_module_of_core_reaches_nothing_outside(file: Path) -> None:
    assert reaching_out(file.read_text(encoding="utf-8")) == []


@pytest.mark.parametrize(
    ("source", "said"),
    [
        ("import yaml", "import yaml"),
        ("import os.path", "import os.path"),
        ("from pathlib import Path", "import pathlib"),
        ("from paradestate.text import tree", "import paradestate.text"),
        ("def f():\n    import random", "import random"),
        ("from . import place", "import ."),
        ("open('x')", "open()"),
        ("datetime.now()", "datetime.now()"),
        ("datetime.date.today()", "datetime.date.today()"),
        ("x = 0.5", "0.5"),
        ("float(x)", "float()"),
    ],
)
def test_reaching_out_is_seen(source: str, said: str) -> None:
    assert reaching_out(source) == [said]


def test_computing_is_left_alone() -> None:
    source = (
        "import datetime\nfrom fractions import Fraction\nfrom paradestate.core.place import Place"
    )
    assert reaching_out(source) == []
