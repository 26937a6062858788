"""The whole folder as one record, and its JSON Schema."""

import datetime
import re
from pathlib import Path

import jsonschema
import pytest
import yaml

from paradestate.text.format.force import JOINED, LISTED, force_schema
from tests.forces import EXAMPLES

VALIDATOR = jsonschema.Draft202012Validator(force_schema())


def test_the_schema_is_sound_and_closed() -> None:
    jsonschema.Draft202012Validator.check_schema(force_schema())
    assert force_schema()["additionalProperties"] is False


@pytest.mark.parametrize(
    "document",
    [
        {"format": 1, "title": "T"},
        {"figures": {"a": {"height": "10 mm", "may stand for": {"b": "good"}}}},
        {"formations": {"a": {"parts": {"b": 3}}}},
        {"formations": {"a": {"parts": [{"of": "b", "number": "2-4", "usual": 3}]}}},
        {"supporting troops": {"e": {"cost": {"1": 3}, "limit": "any", "needs": ["f"]}}},
        {"covers": {"from": 1941, "until": "1944-11"}},
        {"bench": {"stages": ["raw"], "week": "4 h"}},
    ],
)
def test_what_is_right_validates(document: dict[str, object]) -> None:
    assert not list(VALIDATOR.iter_errors(document))


@pytest.mark.parametrize(
    "document",
    [
        {"titel": "T"},
        {"figures": {"a": {"height": "10"}}},
        {"formations": {"a": {"parts": {"b": 0}}}},
        {"supporting troops": {"e": {"cost": {"1": "x"}}}},
        {"sources": {"N": {"currency": "pounds", "carriage": {}, "packs": {}}}},
        {"bench": {"stages": []}},
    ],
)
def test_what_is_wrong_does_not(document: dict[str, object]) -> None:
    assert list(VALIDATOR.iter_errors(document))


class PlainTyping(yaml.SafeLoader):
    """Types plain scalars as most editors do: numbers and true or false, and nothing else."""


PlainTyping.yaml_implicit_resolvers = {}
PlainTyping.add_implicit_resolver(
    "tag:yaml.org,2002:int", re.compile(r"^-?[0-9]+$"), list("-0123456789")
)
PlainTyping.add_implicit_resolver(
    "tag:yaml.org,2002:float", re.compile(r"^-?[0-9]+(\.[0-9]+|[eE][0-9]+)$"), list("-0123456789")
)
PlainTyping.add_implicit_resolver(
    "tag:yaml.org,2002:bool", re.compile(r"^(true|false)$"), list("tf")
)


def with_dates_as_text(value: object) -> object:
    """What JSON can hold of it."""
    if isinstance(value, dict):
        return {str(key): with_dates_as_text(child) for key, child in value.items()}
    if isinstance(value, list):
        return [with_dates_as_text(child) for child in value]
    return value.isoformat() if isinstance(value, datetime.date) else value


@pytest.mark.parametrize("loader", [PlainTyping, yaml.SafeLoader])
@pytest.mark.parametrize("path", sorted((EXAMPLES / "marenz").glob("*.yaml")), ids=lambda p: p.name)
def test_the_example_validates_however_an_editor_types_it(
    path: Path, loader: type[yaml.SafeLoader]
) -> None:
    document = yaml.load(path.read_text(encoding="utf-8"), Loader=loader)  # noqa: S506 - both safe
    assert not list(VALIDATOR.iter_errors(with_dates_as_text(document)))


def test_sections_that_join_and_lists_that_are_appended() -> None:
    assert len(JOINED) == 10
    assert set(LISTED) == {"drawn from", "limits", "loss limits", "states"}
