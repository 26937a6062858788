"""Forces that tests are made of, written as people write them."""

from functools import cache
from pathlib import Path

from paradestate.core.finding import stops
from paradestate.core.force import Force
from paradestate.text.folder import read_files, read_folder

EXAMPLES = Path(__file__).parents[1] / "src" / "paradestate" / "examples"

HEAD = """\
format: 1
title: Test
raise: {formation: top}
"""


def force_from(*texts: str, head: str = HEAD) -> Force:
    """The force that these YAML texts say, which the reader must find sound."""
    files = [head, *texts]
    named = {f"{number:02d}.yaml": text.encode() for number, text in enumerate(files)}
    reading = read_files(named)
    assert not stops(reading.findings)
    return reading.force


def partial_force_from(*texts: str, head: str = HEAD) -> Force:
    """The force that these texts say, as far as it can be read."""
    files = [head, *texts]
    named = {f"{number:02d}.yaml": text.encode() for number, text in enumerate(files)}
    return read_files(named).force


@cache
def marenz() -> Force:
    """The bundled example."""
    return read_folder(EXAMPLES / "marenz").force
