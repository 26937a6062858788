"""Two versions of a list for programs; shares and worths are fractions as strings."""

from paradestate.cli.count_json import fraction_json
from paradestate.cli.force_json import force_json
from paradestate.core.certainty import Exact, NotComputed, certainty_word
from paradestate.core.list_change import ListChange
from paradestate.core.sentence.comparison import consequence
from paradestate.core.support.comparison import LevelChange, ListComparison
from paradestate.journeys.compare import Compared, GameComparison


def compare_json(found: Compared) -> dict[str, object]:
    """The comparison with the keys that programs rely on."""
    return {
        "changes": [_change(each) for each in found.changes],
        "games": [_game(each) for each in found.games],
        "left_out": [{"game": name, "reason": why} for name, why in found.left_out.items()],
    }


def _change(change: ListChange) -> dict[str, object]:
    return {
        "section": change.section,
        "name": change.name,
        "part": change.part or None,
        "from": change.before or None,
        "to": change.after or None,
    }


def _game(game: GameComparison) -> dict[str, object]:
    made = game.comparison
    if isinstance(made, NotComputed):
        unknown = dict.fromkeys(("points", "by_points", "among_best", "best_listed", "sentence"))
        certainty = {"certainty": certainty_word(made), "reason": made.reason}
        return {"game": game.game} | unknown | certainty
    both = made.both
    return {
        "game": game.game,
        "points": made.old.at,
        "sentence": consequence(made, game.amendments) if game.amendments else None,
        "by_points": [_level(each, made) for each in made.levels],
        "best_listed": {"old": len(made.old.first), "new": len(made.new.first)},
        "best_is_cut": made.old.is_cut or made.new.is_cut,
        "among_best": {
            name: {"old": was, "new": now} for name, (was, now) in made.among_first.items()
        },
        "certainty": certainty_word(both if isinstance(both, NotComputed) else Exact()),
        "reason": both.reason if isinstance(both, NotComputed) else None,
    }


def _level(level: LevelChange, made: ListComparison) -> dict[str, object]:
    old, new = made.old.allowance, made.new.allowance
    return {
        "points": level.points,
        "chance_old": None if old is None else fraction_json(old.of(level.points)),
        "chance_new": None if new is None else fraction_json(new.of(level.points)),
        "legal_old": level.old,
        "legal_new": level.new,
        "legal_both": level.both,
        "lost": level.lost,
        "gained": level.gained,
        "share_lost": None if level.share_lost is None else fraction_json(level.share_lost),
        "best_old": force_json(level.old_best),
        "best_new": force_json(level.new_best),
    }
