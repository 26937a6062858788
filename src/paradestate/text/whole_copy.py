"""Where a file breaks off: the newest former version that is whole, and how to go back to it.

It is named and never used by itself.
"""

import shlex
from dataclasses import replace
from pathlib import Path

from paradestate.core.finding import Finding
from paradestate.text.decoding import decoded
from paradestate.text.former import Former, former_versions
from paradestate.text.yaml_tree import read_yaml

BROKEN_OFF = frozenset({"half-written", "empty-file"})
"""What is found where a file was cut off, in the middle of an entry or at its beginning."""

MOST_TRIED = 20


def with_whole_copy(found: Finding) -> Finding:
    """The finding; where it is about a file that breaks off, with the copy to go back to."""
    if found.code not in BROKEN_OFF:
        return found
    file = Path(found.place.file)
    whole = whole_copy(file)
    if whole is None:
        return found
    command = shlex.join(["cp", str(whole.path), str(file)])
    hint = (
        f"The copy kept on {whole.when} is whole; what was written since is only here. "
        f"To go back to it: {command}"
    )
    return replace(found, hint=hint)


def whole_copy(file: Path) -> Former | None:
    """The newest former version of a file that holds something and reads without a finding."""
    kept = former_versions(file)[:MOST_TRIED]
    return next((former for former in kept if _is_whole(former)), None)


def _is_whole(former: Former) -> bool:
    """Whether a former version holds something and reads without a finding in its form."""
    text, _ = decoded(former.path.read_bytes(), file=str(former.path))
    if text is None:
        return False
    reading = read_yaml(text, file=str(former.path))
    return reading.node is not None and not reading.findings
