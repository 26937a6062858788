"""The house style, where a program can hold us to it: sizes, names, shapes and words."""

import ast
import re
import subprocess
from collections.abc import Iterator
from functools import lru_cache
from pathlib import Path

import pytest

ROOT = Path(__file__).resolve().parent.parent
PACKAGE = ROOT / "src" / "paradestate"

pytestmark = pytest.mark.unmeasured

LONGEST_FILE = 450
LONGEST_FUNCTION = 60
DEEPEST_NESTING = 3
MOST_POSITIONAL = 2

FORBIDDEN_NAMES = {"utils", "helpers", "common", "base", "misc", "manager", "handler", "engine"}

# Functions whose positional parameters somebody else decides, as "file::function": "who decides".
SIGNATURE_SET_BY_OTHERS: dict[str, str] = {
    "tests/web/phone/test_gate.py::inside": "ASGI, which hands an application three things",
    "tests/web/test_connection.py::_application": "ASGI, likewise",
}

# Packages in which every module with code has a test file of its own name.
MIRRORED = ("core", "text", "chance")

Function = ast.FunctionDef | ast.AsyncFunctionDef
NESTING = (ast.If, ast.For, ast.AsyncFor, ast.While, ast.With, ast.AsyncWith, ast.Try, ast.Match)
SCOPES = (ast.FunctionDef, ast.AsyncFunctionDef, ast.ClassDef, ast.Lambda)

FORBIDDEN_WORDS = {
    "a registry's address": re.compile(
        r"https?://[\w.-]*(?:pypi|pythonhosted|npmjs|debian\.org|crates\.io)", re.IGNORECASE
    ),
    "a path of one machine": re.compile(
        r"(?<![\w.~-])/(?:(?:work|root)(?![\w-])|(?:home|Users|opt)/\w+|tmp/\w+/)|[A-Z]:\\Users"
    ),
}


def modules() -> list[Path]:
    """Every Python file of the project."""
    return sorted(
        file for folder in ("src", "tests", "bench") for file in (ROOT / folder).rglob("*.py")
    )


def name(file: Path) -> str:
    """The file as seen from the project's root."""
    return file.relative_to(ROOT).as_posix()


def tracked_files() -> list[Path]:
    """Every file that is, or is about to be, under version control."""
    command = ["git", "-c", f"safe.directory={ROOT}", "ls-files", "-z", "-co", "--exclude-standard"]
    listing = subprocess.run(command, cwd=ROOT, check=True, capture_output=True, text=True).stdout
    return [ROOT / line for line in listing.split("\0") if line and (ROOT / line).is_file()]


@lru_cache(maxsize=1)
def parsed(source: str) -> ast.Module:
    """The text as a tree, made once for all that is asked of it."""
    return ast.parse(source)


@lru_cache(maxsize=1)
def nodes(source: str) -> tuple[ast.AST, ...]:
    """Every node of the tree, gone through once for all that is asked of it."""
    return tuple(ast.walk(parsed(source)))


def functions(source: str) -> Iterator[tuple[Function, bool]]:
    """Every function in the text, and whether it is a method bound to something."""
    methods = {
        id(child)
        for parent in nodes(source)
        if isinstance(parent, ast.ClassDef)
        for child in parent.body
        if isinstance(child, Function)
        and "staticmethod" not in map(ast.unparse, child.decorator_list)
    }
    for node in nodes(source):
        if isinstance(node, Function):
            yield node, id(node) in methods


def nesting(node: ast.AST, *, depth: int = 0) -> int:
    """How deep the blocks under a node go; an ``elif`` is no deeper than its ``if``."""
    deepest = depth
    for child in ast.iter_child_nodes(node):
        # no block is part of an expression, and a function counts by itself
        if isinstance(child, (ast.expr, *SCOPES)):
            continue
        is_elif = isinstance(node, ast.If) and child in node.orelse and is_else_if(node)
        below = depth + (isinstance(child, NESTING) and not is_elif)
        deepest = max(deepest, nesting(child, depth=below))
    return deepest


def is_else_if(node: ast.If) -> bool:
    """Whether what follows ``else`` is another ``if`` in the same column, which is an ``elif``."""
    return (
        len(node.orelse) == 1
        and isinstance(node.orelse[0], ast.If)
        and node.orelse[0].col_offset == node.col_offset
    )


def positional(function: Function, *, is_method: bool) -> int:
    """How many parameters can be given by place, ``self`` and ``cls`` left out."""
    named = function.args.posonlyargs + function.args.args
    return len(named) - (is_method and bool(named))


def is_called_by_name(function: Function) -> bool:
    """Whether Python or pytest decides how it is called: dunder methods, tests, fixtures."""
    is_dunder = function.name.startswith("__") and function.name.endswith("__")
    is_test = function.name.startswith(("test_", "bench_"))
    is_fixture = any("fixture" in ast.unparse(line) for line in function.decorator_list)
    return is_dunder or is_test or is_fixture


def too_long(source: str) -> list[str]:
    """The functions over the limit of lines, docstring included."""
    return [
        function.name
        for function, _ in functions(source)
        if (function.end_lineno or 0) - function.lineno + 1 > LONGEST_FUNCTION
    ]


def too_deep(source: str) -> list[str]:
    """The functions with more blocks inside one another than allowed."""
    return [
        function.name for function, _ in functions(source) if nesting(function) > DEEPEST_NESTING
    ]


def too_positional(source: str) -> list[str]:
    """The functions that take more by place than allowed."""
    return [
        function.name
        for function, is_method in functions(source)
        if not is_called_by_name(function)
        and positional(function, is_method=is_method) > MOST_POSITIONAL
    ]


def printing(source: str) -> list[int]:
    """The lines that call ``print``."""
    return [
        node.lineno
        for node in nodes(source)
        if isinstance(node, ast.Call)
        and isinstance(node.func, ast.Name)
        and node.func.id == "print"
    ]


def loose_records(source: str) -> list[str]:
    """The dataclasses that are not frozen, slotted and keyword-only."""
    wanted = {"frozen=True", "slots=True", "kw_only=True"}
    return [
        node.name
        for node in nodes(source)
        if isinstance(node, ast.ClassDef)
        for decorator in node.decorator_list
        if ast.unparse(decorator).split("(")[0].split(".")[-1] == "dataclass"
        and not wanted <= {ast.unparse(word) for word in getattr(decorator, "keywords", [])}
    ]


def forbidden_words(text: str) -> list[str]:
    """What the text holds that ties it to one registry or one machine."""
    return [
        f"{what}: {found.group()}"
        for what, pattern in FORBIDDEN_WORDS.items()
        for found in pattern.finditer(text)
    ]


@pytest.mark.parametrize("file", modules(), ids=name)
def test_a_module_keeps_to_the_house_style(file: Path) -> None:
    source = file.read_text(encoding="utf-8")
    excused = {
        entry.split("::")[1] for entry in SIGNATURE_SET_BY_OTHERS if entry.startswith(name(file))
    }
    assert source.count("\n") <= LONGEST_FILE
    assert ast.get_docstring(parsed(source)), "says nothing about its one job"
    assert file.stem == file.stem.lower()
    assert not FORBIDDEN_NAMES & {part.removesuffix(".py") for part in file.relative_to(ROOT).parts}
    assert too_long(source) == []
    assert too_deep(source) == []
    assert set(too_positional(source)) == excused
    assert loose_records(source) == []
    if PACKAGE in file.parents and PACKAGE / "cli" not in file.parents:
        assert printing(source) == []


def test_nothing_tracked_names_a_registry_or_a_machine() -> None:
    found = {}
    for file in tracked_files():
        content = file.read_bytes()
        if b"\0" not in content:
            found[name(file)] = forbidden_words(content.decode("utf-8", errors="replace"))
    assert {file: words for file, words in found.items() if words} == {}


@pytest.mark.parametrize("folder", MIRRORED)
def test_every_module_has_a_test_file_of_its_name(folder: str) -> None:
    """A module may have a folder of test files instead, where one would be too long."""
    untested = []
    for file in sorted((PACKAGE / folder).rglob("*.py")):
        place = ROOT / "tests" / file.relative_to(PACKAGE).parent
        stem = file.stem.removeprefix("_")
        has_code = any(True for _ in functions(file.read_text(encoding="utf-8")))
        has_test = (place / f"test_{stem}.py").is_file() or any((place / stem).glob("test_*.py"))
        if has_code and file.stem != "__init__" and not has_test:
            untested.append(name(file))
    assert untested == []


def test_length_counts_the_whole_function() -> None:
    def body(lines: int) -> str:
        return "def answer():\n" + "    pass\n" * lines

    assert too_long(body(LONGEST_FUNCTION - 1)) == []
    assert too_long(body(LONGEST_FUNCTION)) == ["answer"]


def test_nesting_counts_blocks_and_not_elifs() -> None:
    three = (
        "def answer():\n for a in b:\n  with c:\n   if d: pass\n   elif e: pass\n   else: pass\n"
    )
    assert too_deep(three) == []
    assert too_deep(three.replace("else: pass", "else:\n    if f: pass")) == ["answer"]
    assert too_deep(three.replace("elif e: pass", "elif e:\n    while f: pass")) == ["answer"]
    assert too_deep(
        three.replace("if d: pass", "match d:\n    case 1:\n     if f: pass\n   if d: pass")
    )
    inside = "def outer():\n for a in b:\n  with c:\n   if d:\n    def inner():\n     if e: pass\n"
    assert too_deep(inside) == []


def test_positional_parameters_leave_out_self_and_dunders() -> None:
    assert too_positional("def answer(a, b, *, c): pass") == []
    assert too_positional("def answer(a, b, c): pass") == ["answer"]
    assert too_positional("class A:\n def answer(self, a, b): pass") == []
    assert too_positional("class A:\n def answer(self, a, b, c): pass") == ["answer"]
    assert too_positional("class A:\n @staticmethod\n def answer(a, b, c): pass") == ["answer"]
    assert too_positional("class A:\n def __exit__(self, a, b, c): pass") == []


def test_a_record_is_frozen_slotted_and_keyword_only() -> None:
    whole = "@dataclass(frozen=True, slots=True, kw_only=True)\nclass A: pass"
    assert loose_records(whole) == []
    assert loose_records(whole.replace("slots=True, ", "")) == ["A"]
    assert loose_records("@dataclasses.dataclass\nclass A: pass") == ["A"]


def test_a_call_of_print_is_seen_and_a_word_is_not() -> None:
    assert printing("imprint(1)\n'print(2)'\nprint(3)") == [3]


@pytest.mark.parametrize(
    "text",
    ["https:@@files.pythonhosted.org@x", "see @home@someone@force", "(@work@main)", "'@root'"],
)
def test_words_that_tie_us_to_one_place_are_seen(text: str) -> None:
    """Written with @ for a slash, so that this file is not itself found."""
    assert len(forbidden_words(text.replace("@", "/"))) == 1


@pytest.mark.parametrize(
    "text", ["docs@work@order.md", "https:@@example.org@home@page", "~@root@x"]
)
def test_other_words_are_left_alone(text: str) -> None:
    assert forbidden_words(text.replace("@", "/")) == []
