"""What findings say of the command, in the words of the sheet."""

import re
from collections.abc import Iterable
from dataclasses import replace

from paradestate.core.finding import Finding
from paradestate.web.choosing.question import for_the_page

WAYS = (
    (r"Begin one: play FOLDER start\.", "Fix the terms of one below."),
    (r", or leave --posture out", ""),
    (r"--of \w+; or name it so, whenever you mean it", "a link below leads to it"),
    (r"Leave --dice out\.", "Leave the dice empty."),
    (r"Buy it: play FOLDER take .*", "Buy it under “Buy what needs no roll”."),
    (r"Roll first: play FOLDER roll .*", "Roll for it first, under “Roll for something else”."),
    (r"Bind it first: play FOLDER bind .*", "Bind the machine first, under a roll."),
    (r"say a word: play FOLDER word WORD", "say a word, below"),
    (r"play FOLDER show lists the lines with their ids\.", "The lines stand in the record below."),
    (r": play FOLDER strike \w+ --because TEXT\.", ", in the record below."),
    (r": play FOLDER end --of \w+\.", "; a link below leads to it."),
    (r"Buy them first: play FOLDER take .*; or", "Buy them first, or"),
)
"""Ways out by the command, and by the sheet."""


def for_the_evening(findings: Iterable[Finding]) -> tuple[Finding, ...]:
    """The findings with their ways out in the words of the sheet, each once."""
    return tuple(dict.fromkeys(map(_worded, for_the_page(tuple(findings)))))


def _worded(found: Finding) -> Finding:
    hint = found.hint
    for command, words in WAYS:
        hint = re.sub(command, words, hint)
    return replace(found, hint=hint)
