"""The whole folder as one record, and its JSON Schema."""

import jsonschema
import pytest

from paradestate.text.format.force import JOINED, LISTED, force_schema

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


def test_sections_that_join_and_lists_that_are_appended() -> None:
    assert len(JOINED) == 10
    assert set(LISTED) == {"drawn from", "limits", "states"}
