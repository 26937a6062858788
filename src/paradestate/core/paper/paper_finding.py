"""What is doubtful in what a paper prints."""

from collections.abc import Container, Iterable, Iterator

from paradestate.core.choice import CHOSEN_HERE
from paradestate.core.finding import Finding, Level
from paradestate.core.sentence.wording import listed


def letter_findings(texts: Iterable[str], *, printable: Container[str]) -> Iterator[Finding]:
    """Texts in which a letter is none of the faces that papers are set in."""
    for text in texts:
        letters = dict.fromkeys(letter for letter in text if letter not in printable)
        lacking = listed(f"'{letter}'" for letter in letters)
        yield Finding(
            level=Level.WARN,
            code="letter-not-in-face",
            message=f"'{text}': {lacking} can't be printed.",
            effect="An empty box stands in its place.",
            hint="Papers print Latin, Greek and Cyrillic letters: write the name in one of these.",
            place=CHOSEN_HERE,
        )


def too_long(title: str, *, name: str) -> Finding:
    """A paper that has more to say than is set while somebody waits for a page."""
    return Finding(
        level=Level.WARN,
        code="paper-too-long",
        message=f"'{title}' is too long to be set while a page is waited for.",
        effect="It isn't shown here.",
        hint=f"The command sets it, however long that takes: sheets --only '{name}'.",
        place=CHOSEN_HERE,
    )
