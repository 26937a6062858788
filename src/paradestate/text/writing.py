"""A force back to YAML text; reading it again gives the same force."""

import yaml

from paradestate.core.force import Force
from paradestate.text.format.force import FORCE, FORMAT_VERSION


def force_text(force: Force) -> str:
    """The whole force as the text of one YAML file, without comments."""
    written = FORCE.write(force)
    assert isinstance(written, dict)  # noqa: S101 - a record writes a mapping
    return yaml.dump(
        {"format": str(FORMAT_VERSION), **written},
        Dumper=PlainDumper,
        sort_keys=False,
        allow_unicode=True,
        width=100,
    )


class PlainDumper(yaml.CSafeDumper):
    """Writes text without the quotes that only typed readers need, such as those round 3."""


MERGE = "<<"
"""A name that YAML takes for a merge unless it is quoted."""


def _text(dumper: PlainDumper, text: str) -> yaml.ScalarNode:
    style = "'" if text == MERGE else None
    return dumper.represent_scalar("tag:yaml.org,2002:str", text, style=style)


PlainDumper.yaml_implicit_resolvers = {}
PlainDumper.add_representer(str, _text)
