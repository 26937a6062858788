"""The docs name every command, option, word of the format, finding and setting."""

import ast
import re
from collections.abc import Iterator
from pathlib import Path

import click
import pytest

from paradestate.cli.program import program
from paradestate.text.format.force import force_schema

ROOT = Path(__file__).parents[2]
LOOK_UP = ROOT / "docs" / "look-up"
SOURCES = sorted((ROOT / "src").rglob("*.py"))


def page(name: str) -> str:
    return (LOOK_UP / name).read_text(encoding="utf-8")


def words_of(schema: object) -> Iterator[str]:
    """Every word that a schema names as a key, at any depth."""
    if isinstance(schema, dict):
        properties = schema.get("properties")
        if isinstance(properties, dict):
            yield from properties
        for value in schema.values():
            yield from words_of(value)
    elif isinstance(schema, list):
        for value in schema:
            yield from words_of(value)


def test_every_word_of_the_format_is_on_its_page() -> None:
    text = page("format.md")
    missing = {word for word in words_of(force_schema()) if f"`{word}`" not in text}
    assert not missing


def texts_within(node: ast.AST) -> Iterator[str]:
    for part in ast.walk(node):
        if isinstance(part, ast.Constant) and isinstance(part.value, str):
            yield part.value


def codes_in(path: Path) -> Iterator[str]:
    """Every literal that is given as a `code` to a call or as the default of one."""
    for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
        if isinstance(node, ast.keyword) and node.arg in {"code", "missing_code"}:
            yield from texts_within(node.value)
        elif isinstance(node, ast.FunctionDef):
            defaults = zip(node.args.kwonlyargs, node.args.kw_defaults, strict=True)
            named = [default for known, default in defaults if known.arg.endswith("code")]
            for default in filter(None, named):
                yield from texts_within(default)


@pytest.mark.unmeasured
def test_every_finding_has_its_heading_on_the_page_of_findings_and_none_is_there_in_vain() -> None:
    headings = set(re.findall(r"^### `([a-z0-9-]+)`", page("findings.md"), flags=re.MULTILINE))
    codes = {code for path in SOURCES for code in codes_in(path)}
    assert codes
    assert headings == codes


def commands() -> list[tuple[str, click.Command]]:
    context = click.Context(program)
    found = []
    for name in program.list_commands(context):
        command = program.get_command(context, name)
        assert command is not None
        found.append((name, command))
    return found


@pytest.mark.parametrize("name", [name for name, _ in commands()])
def test_every_command_and_option_is_on_the_page_of_commands(name: str) -> None:
    text = page("commands.md")
    command = dict(commands())[name]
    assert f"## `{name}`" in text
    section = text.split(f"## `{name}`", 1)[1].split("\n## ", 1)[0]
    common = text.split("## Common options", 1)[1].split("\n## ", 1)[0]
    options = [option for parameter in command.params for option in parameter.opts]
    longs = [option for option in options if option.startswith("--")]
    assert not [option for option in longs if option not in section + common]


def settings_in(path: Path) -> Iterator[str]:
    """The names of environment variables that the code asks for."""
    text = path.read_text(encoding="utf-8")
    yield from re.findall(r"(?:environ(?:\.get)?|getenv)[\[(]\s*[\"']([A-Z_]+)[\"']", text)


def test_every_setting_is_on_the_page_of_settings() -> None:
    text = page("settings.md")
    missing = {name for path in SOURCES for name in settings_in(path) if f"`{name}`" not in text}
    assert not missing


def test_every_module_of_the_core_has_an_entry_in_the_glossary() -> None:
    glossary = page("glossary.md").lower()
    modules = {path.stem for path in (ROOT / "src/paradestate/core").glob("*.py")} - {"__init__"}
    missing = {name for name in modules if name.replace("_", " ") not in glossary}
    assert not missing


def links_in(path: Path) -> Iterator[str]:
    yield from re.findall(r"\]\(([^)#:]+)(?:#[^)]*)?\)", path.read_text(encoding="utf-8"))


PAGES = [*sorted((ROOT / "docs").rglob("*.md")), ROOT / "README.md", ROOT / "CONTRIBUTING.md"]


@pytest.mark.parametrize("path", PAGES, ids=lambda path: str(path.relative_to(ROOT)))
def test_every_link_leads_to_a_file(path: Path) -> None:
    missing = [link for link in links_in(path) if not (path.parent / link).exists()]
    assert not missing
