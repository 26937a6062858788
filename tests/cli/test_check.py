"""The command `check`."""

from pathlib import Path

import jsonschema
import yaml

from tests.cli.calling import call
from tests.forces import EXAMPLES


def test_the_example_has_one_doubt(folder: Path) -> None:
    answer = call("check", folder)
    assert answer.status == 0
    assert answer.out.endswith(": 1 warning.\n")
    lines = answer.err.splitlines()
    assert lines[0].endswith("[stands-alike]")
    assert lines[2].index("^") == lines[1].index("tank commander")


def test_strict_is_1_on_warnings(folder: Path) -> None:
    assert call("check", folder, "--strict").status == 1


def test_a_stop_is_1(folder: Path) -> None:
    (folder / "more.yaml").write_text("stands: {x: {bsae: none}}\n", encoding="utf-8")
    answer = call("check", folder)
    assert answer.status == 1
    assert "Did you mean 'base'?" in answer.err
    assert "2 stops, 1 warning, 1 remark" in answer.err


def test_nothing_to_say(tmp_path: Path) -> None:
    text = "format: 1\ntitle: Small\nformations: {top: {men: 3}}\nraise: {formation: top}\n"
    (tmp_path / "force.yaml").write_text(text, encoding="utf-8")
    answer = call("check", tmp_path)
    assert (answer.status, answer.out, answer.err) == (0, "Small: nothing to say.\n", "")


def test_findings_for_programs(folder: Path) -> None:
    (folder / "packs.csv").write_text("source,pack,price\nEast,E1,oops\n", encoding="utf-8")
    findings = call("check", folder, "--json").document["findings"]
    keys = {"level", "code", "message", "effect", "hint", "file", "line", "column", "path"}
    assert all(keys | {"related"} <= set(finding) for finding in findings)
    assert {finding["cell"] for finding in findings if "cell" in finding} >= {"packs!C2"}
    alike = next(finding for finding in findings if finding["code"] == "stands-alike")
    assert alike["path"] == ["stands", "tank commander"]
    assert alike["related"][0]["line"] == 43


def test_the_schema_admits_the_example_and_refuses_slips() -> None:
    schema = call("check", EXAMPLES / "marenz", "--schema").document
    jsonschema.Draft202012Validator.check_schema(schema)
    validator = jsonschema.Draft202012Validator(schema)
    for path in sorted((EXAMPLES / "marenz").glob("*.yaml")):
        loaded = yaml.safe_load(path.read_text(encoding="utf-8"))
        text_keys = yaml.load(path.read_text(encoding="utf-8"), Loader=yaml.BaseLoader)  # noqa: S506
        assert not list(validator.iter_errors(with_text_keys(loaded, text_keys)))
    assert list(validator.iter_errors({"stands": {"x": {"bsae": "none"}}}))
    assert list(validator.iter_errors({"figures": {"x": {"sort": "spaceship"}}}))


def with_text_keys(value: object, texts: object) -> object:
    """What an editor sees: values typed by YAML, keys as text, dates as text."""
    if isinstance(value, dict) and isinstance(texts, dict):
        pairs = zip(value.values(), texts.items(), strict=True)
        return {key: with_text_keys(inner, text) for inner, (key, text) in pairs}
    if isinstance(value, list) and isinstance(texts, list):
        return [with_text_keys(inner, text) for inner, text in zip(value, texts, strict=True)]
    return value if isinstance(value, bool | int | float) else texts
