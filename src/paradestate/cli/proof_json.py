"""The proof of a list for programs; shares and chances are fractions as strings."""

from paradestate.cli.count_json import fraction_json
from paradestate.core.certainty import Exact, NotComputed, certainty_word
from paradestate.core.sentence.proof import matters
from paradestate.core.support.price_table import PriceDoubt
from paradestate.core.support.proof import EntryLevel, EntryProof, GameProof, InBest, ListProof


def proof_json(proof: ListProof) -> dict[str, object]:
    """The proof with the keys that programs rely on."""
    return {
        "matters": list(matters(proof)),
        "games": [_game(game) for game in proof.games],
        "never_taken": list(proof.never_taken),
        "in_no_best": list(proof.always(InBest.NONE)),
        "in_every_best": list(proof.always(InBest.EVERY)),
        "without_worth": list(proof.worthless),
        "not_computed": [_refused(game, each) for game, each in proof.refused.items()],
        "certainty": certainty_word(Exact() if proof.games else next(iter(proof.refused.values()))),
    }


def _refused(game: str, reason: NotComputed) -> dict[str, object]:
    return {"game": game, "reason": reason.reason}


def _game(game: GameProof) -> dict[str, object]:
    return {
        "game": game.terms.game.name,
        "points": game.at,
        "points_given": game.allowance is None,
        "cheapest": game.cheapest,
        "unspendable": {"points": list(game.wasteful), "chance": fraction_json(game.waste)},
        "by_points": [
            {
                "points": level.points,
                "chance": None
                if game.allowance is None
                else fraction_json(game.allowance.of(level.points)),
                "legal": level.legal,
                "spending_all": level.spending_all,
                "least_unspent": left,
            }
            for level, left in zip(game.levels, game.unspent, strict=True)
        ],
        "entries": [_entry(each, game) for each in game.entries],
    }


def _entry(entry: EntryProof, game: GameProof) -> dict[str, object]:
    return {
        "entry": entry.entry,
        "reach": str(entry.reach),
        "reason": entry.reason or None,
        "prices": None
        if entry.prices is None
        else {str(number): points for number, points in entry.prices.items()},
        "steps": list(entry.steps),
        "contradictions": [_doubt(each) for each in entry.doubts],
        "never_allowed": list(entry.never_allowed),
        "dominated_by": None if entry.dominated is None else entry.dominated.by,
        "is_alike": entry.dominated is not None and entry.dominated.is_alike,
        "best_chances": {
            str(each): fraction_json(entry.chance_of(each, allowance=game.allowance))
            for each in InBest
        }
        if game.has_worths and entry.levels
        else None,
        "by_points": [_level(each) for each in entry.levels],
    }


def _doubt(doubt: PriceDoubt) -> dict[str, object]:
    return {
        "number": doubt.number,
        "points": doubt.points,
        "parts": list(doubt.parts),
        "parts_points": doubt.parts_points,
        "choice": doubt.choice,
        "in_reach": doubt.in_reach,
    }


def _level(level: EntryLevel) -> dict[str, object]:
    return {
        "points": level.points,
        "holding": level.holding,
        "share": None if level.share is None else fraction_json(level.share),
        "in_best": None if level.in_best is None else str(level.in_best),
    }
