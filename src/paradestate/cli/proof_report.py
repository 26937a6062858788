"""The proof of a list printed for people."""

from collections.abc import Container

from rich.console import Console
from rich.text import Text

from paradestate.cli.output import console, titled_table
from paradestate.core.sentence.chance import hundredths_words
from paradestate.core.sentence.proof import matters, place_words
from paradestate.core.sentence.wording import capital, several
from paradestate.core.support.proof import EntryProof, GameProof, ListProof

IN_BEST = (
    "In best forces: how likely the dice leave points with which every best force holds the entry, "
    "or some of those that are as good; a word alone is so for all points."
)


def print_proof(proof: ListProof, *, title: str) -> None:
    """What to look at, then each game entry by entry."""
    out = console()
    out.print(Text(title, style="bold"))
    said = list(matters(proof))
    out.print("To look at:" if said else "Nothing to look at.")
    for sentence in said:
        out.print(f"- {sentence}")
    for game in proof.games:
        out.print()
        _print_game(out, game, said=proof.never_taken)
    for name, reason in proof.refused.items():
        out.print()
        out.print(f"{capital(name)}: not computed: {reason.reason}.")
    out.print()
    if any(game.has_worths for game in proof.games):
        out.print(IN_BEST)
    if proof.games:
        out.print("Exact: all legal forces are counted, and all that are as good as the best.")


def _print_game(out: Console, game: GameProof, *, said: Container[str]) -> None:
    """A row for each entry; why it can't be taken here, unless that was said of all games."""
    name = capital(game.terms.game.name)
    if not game.entries:
        out.print(f"{name}: no supporting troops are on offer.")
        return
    is_rolled = game.allowance is not None and len(game.levels) > 1
    middle = ", the middle of what the dice leave" if is_rolled else ""
    table = titled_table(f"{name} with {several(game.at, 'point')}{middle}")
    table.add_column("entry")
    table.add_column("steps of price")
    table.add_column("of legal forces", justify="right")
    if game.has_worths:
        table.add_column("in best forces")
    for entry in game.entries:
        cells = [entry.entry, ", ".join(map(str, entry.steps)) or "-", _share(entry, game)]
        if game.has_worths:
            cells.append(place_words(entry, game) if entry.can_be_taken else "")
        table.add_row(*cells)
    out.print(table)
    for entry in game.entries:
        if not entry.can_be_taken and entry.entry not in said:
            out.print(f"{capital(entry.entry)}: {entry.reach} here; {entry.reason}.")


def _share(entry: EntryProof, game: GameProof) -> str:
    share = next((each.share for each in entry.levels if each.points == game.at), None)
    return "-" if share is None else hundredths_words(share)
