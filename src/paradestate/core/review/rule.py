"""The signature of every rule: a force in, findings out."""

from collections.abc import Callable, Iterator
from typing import TypeAlias

from paradestate.core.finding import Finding
from paradestate.core.force import Force

Rule: TypeAlias = Callable[[Force], Iterator[Finding]]
"""Works on partial forces too: names that lead nowhere are passed over."""
