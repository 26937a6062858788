"""What to get next for programs; values and gains are fractions as strings."""

from collections.abc import Mapping
from fractions import Fraction

from paradestate.cli.count_json import fraction_json
from paradestate.cli.force_json import force_json
from paradestate.core.advice.advice import Alone, OutcomeRow, Step
from paradestate.core.advice.basket import Priced
from paradestate.core.advice.game_shares import PRIOR_GAMES
from paradestate.core.certainty import NotComputed, Sampled, certainty_word
from paradestate.core.money import amount_text
from paradestate.core.sentence.advice import Told, reason_sentence
from paradestate.journeys.next import NextFound

KEYS = (
    *("now", "candidates", "best", "steps", "reason_words", "foresight", "wish", "outcomes"),
    *("aim", "games", "currency", "limit", "left_out", "must_lacks", "bound", "interval"),
    *("games_played", "weights_count_as_games"),
)


def next_json(found: NextFound | NotComputed) -> dict[str, object]:
    """The answer with the keys that programs rely on."""
    if isinstance(found, NotComputed):
        certainty = {"certainty": certainty_word(found), "reason": found.reason}
        return dict.fromkeys(KEYS) | certainty
    advice = found.advice
    told = Told(advice=advice, currency=found.currency)
    foresight = advice.foresight
    return {
        "now": fraction_json(advice.now.value),
        "candidates": [_alone(each, told=told) for each in advice.alone],
        "best": {**_priced(advice.best, told=told), "gain": fraction_json(advice.gain)},
        "steps": [_step(each, told=told) for each in advice.steps],
        "reason_words": reason_sentence(told),
        "foresight": None if isinstance(foresight, NotComputed) else fraction_json(foresight),
        "wish": None if advice.wish is None else _with_fun(advice.wish, told=told),
        "outcomes": [_row(row) for row in advice.rows],
        "aim": advice.aim.value,
        "games": {name: fraction_json(share) for name, share in found.games.items()},
        "games_played": dict(found.shares.played),
        "weights_count_as_games": None if found.shares.is_by_weight else PRIOR_GAMES,
        "currency": found.currency,
        "limit": _cost(found.limit, told=told),
        "left_out": [{"purchase": each.name, "reason": each.reason} for each in found.left_out],
        "must_lacks": found.must_lacks,
        "bound": None if advice.bound is None else fraction_json(advice.bound),
        "interval": _interval(advice.gain_sure),
        "certainty": certainty_word(advice.certainty),
    }


def _cost(cost: Fraction, *, told: Told) -> str:
    """Money as a decimal string; work in minutes, as a fraction."""
    if told.currency is None:
        return fraction_json(cost)
    return amount_text(int(cost), told.currency)


def _alone(each: Alone, *, told: Told) -> Mapping[str, object]:
    joined = each.together
    return {
        "purchase": each.candidate.name,
        "is": each.candidate.words,
        "cost": _cost(each.priced.cost, told=told),
        "value": fraction_json(each.priced.value),
        "gain": fraction_json(each.gain),
        "interval": _interval(each.sure),
        "can_be_afforded": each.is_affordable,
        "best_with": None if each.best_with is None else _with_fun(each.best_with, told=told),
        "only_together_with": None if joined is None else told.named(joined.priced.basket),
    }


def _priced(priced: Priced, *, told: Told) -> dict[str, object]:
    return {
        "purchases": told.named(priced.basket),
        "cost": _cost(priced.cost, told=told),
        "value": fraction_json(priced.value),
    }


def _with_fun(priced: Priced, *, told: Told) -> dict[str, object]:
    fun = told.advice.price_of_fun(priced)
    return {**_priced(priced, told=told), "price_of_fun": fraction_json(fun)}


def _step(step: Step, *, told: Told) -> Mapping[str, object]:
    return {
        "added": told.named(step.added),
        "gain": fraction_json(step.gain),
        "cost": _cost(step.cost, told=told),
    }


def _row(row: OutcomeRow) -> Mapping[str, object]:
    return {
        "game": row.game,
        "points": row.points,
        "chance": fraction_json(row.chance),
        "allowed": list(row.allowed),
        "now": force_json(row.now),
        "then": force_json(row.then),
    }


def _interval(sure: Sampled | None) -> Mapping[str, object] | None:
    if sure is None:
        return None
    return {
        "plus_or_minus": fraction_json(sure.plus_or_minus),
        "draws": sure.draws,
        "seed": sure.seed,
    }
