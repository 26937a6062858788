"""What the sheet of losses is asked: which game, which comes next, and by what stands are told."""

from collections.abc import Mapping
from dataclasses import dataclass
from urllib.parse import urlencode

COMPANIES = "company"
GAME = "game"
"""The field of a form with the id of the game that it was made for: a newer one may have begun."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Question:
    """As it stands in the address, and in every form."""

    of: str = ""
    """The beginning of a game's id; empty: the newest."""
    next_game: str = ""
    by: str = ""

    @property
    def is_by_company(self) -> bool:
        """Whether stands are counted by companies, and not by kinds."""
        return self.by == COMPANIES

    @property
    def fields(self) -> Mapping[str, str]:
        """What is said, by the names of its fields."""
        every = {"of": self.of, "next": self.next_game, "by": self.by}
        return {name: text for name, text in every.items() if text}

    def query(self, **changed: str) -> str:
        """The same in an address, with some of it said otherwise."""
        said = {name: text for name, text in {**self.fields, **changed}.items() if text}
        return f"?{urlencode(said)}" if said else ""


def question(said: Mapping[str, str]) -> Question:
    """What an address or a form asks."""
    return Question(
        of=(said.get(GAME) or said.get("of", "")).strip(),
        next_game=said.get("next", "").strip(),
        by=said.get("by", "").strip(),
    )
