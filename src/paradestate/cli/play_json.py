"""A game for programs."""

from collections.abc import Mapping
from fractions import Fraction
from typing import Any

from paradestate.cli.count_json import fraction_json
from paradestate.cli.judge_json import purchases_json
from paradestate.core.game import Purchase
from paradestate.core.play.account import Account
from paradestate.core.play.event_text import event_record
from paradestate.core.play.fairness import Fairness
from paradestate.core.play.game_record import Binding, GameRecord, Line
from paradestate.core.play.loss_count import LossCount
from paradestate.core.sentence.loss_limit import losses_words
from paradestate.core.sentence.play import event_words
from paradestate.journeys.game.played_game import PlayedGame
from paradestate.journeys.game.what_now import WhatNow


def play_json(game: PlayedGame) -> dict[str, object]:
    """The game's state and the season's dice; `state` is null where there is no game."""
    return {
        "state": None if game.record is None else _state(game, game.record),
        "games": [{"id": each.id, "game": each.terms.game} for each in game.others],
        "season": {str(sides): _fairness(each) for sides, each in game.season.items()},
    }


def _state(game: PlayedGame, record: GameRecord) -> dict[str, object]:
    terms = event_record(record.terms)
    ended = record.ended
    return {
        "id": record.id,
        "on": record.opening.on.isoformat(),
        **{word: terms.get(word) for word in ("game", "date", "posture", "opponent")},
        "grades": dict(record.terms.grades),
        "numbers": dict(record.terms.numbers),
        "is_open": ended is None,
        "outcome": None if ended is None else ended.outcome,
        "held": {} if ended is None else dict(ended.held),
        "time": None if ended is None else ended.time,
        "notes": notes_json(record),
        **(_account(game.account) if game.account is not None else {}),
        "lines": [_line(each, game.account) for each in record.lines],
        "board": [
            {
                "aspect": subject.aspect,
                "name": subject.name,
                "values": list(standing.values),
                "is_disputed": standing.is_disputed,
                "over": list(standing.over),
            }
            for subject, standing in record.board.items()
        ],
        "losses": [_losses(each) for each in game.losses],
        "machine_rolls": [_binding(each, game) for each in game.bindings],
        "now": _now(game.now),
    }


def notes_json(record: GameRecord) -> list[dict[str, str]]:
    """What was noted of a game; `about` is empty where it concerns the whole of it."""
    return [{"text": each.text, "about": each.about} for each in record.notes]


def _account(account: Account) -> dict[str, object]:
    return {
        "allowance": account.allowance,
        "formation_cost": account.terms.formation_cost,
        "grade_costs": dict(account.terms.grade_costs),
        "points_at_the_start": account.start,
        "points_left": account.left,
        "points_lost": account.lost,
        "bought": purchases_json(account.bought),
        "refused": purchases_json(account.refused),
        "declared": purchases_json(account.declared),
        "open": None
        if account.open is None
        else {"allowed": account.open.allowed, **purchases_json((account.open.asked,))[0]},
        "certainty": "exact",
    }


def _line(line: Line, account: Account | None) -> dict[str, object]:
    said: Mapping[str, Any] = event_record(line.event)
    second = () if account is None else account.second
    return {
        "id": line.id,
        "written": line.written.isoformat(),
        "device": line.device,
        "kind": type(line.event).__name__.lower(),
        "words": event_words(line.event),
        **{word.replace(" ", "_"): value for word, value in said.items()},
        "struck_because": line.struck_because,
        "counts": line.holds and line.id not in second,
    }


def _losses(losses: LossCount) -> dict[str, object]:
    body = losses.body
    return {
        "limit": body.number,
        "name": body.name,
        "counts": body.limit.count,
        "least": losses.least,
        "most": losses.most,
        "of": body.total,
        "in_force": list(losses.in_force),
        "in_doubt": list(losses.in_doubt),
        "until_next": losses.until_next,
        "steps": [{"needs": each.needs, "effects": list(each.effects)} for each in body.steps],
        "is_disputed": losses.is_disputed,
        "words": losses_words(losses),
        "certainty": "exact",
    }


def _binding(binding: Binding, game: PlayedGame) -> dict[str, object]:
    differences = game.differences.get(binding.line.id)
    return {
        "commitment": binding.line.id,
        "digest": binding.committed.digest,
        "purpose": binding.committed.purpose,
        "dice": binding.committed.dice,
        "word": binding.word,
        "roll": None if binding.rolled is None else binding.rolled.id,
        "secret": binding.secret,
        "agrees": None if differences is None else not differences,
        "differences": list(differences or ()),
    }


def _now(now: WhatNow) -> dict[str, object]:
    return {
        "words": now.words,
        "chart": list(now.chart),
        "ask": _purchase(now.ask),
        "take": _purchase(now.take),
        "buy": purchases_json(now.buy),
    }


def _purchase(purchase: Purchase | None) -> dict[str, object] | None:
    return None if purchase is None else purchases_json((purchase,))[0]


def _fairness(each: Fairness) -> dict[str, object]:
    return {
        "came": list(each.came),
        "rolls": each.rolls,
        "chi_square": fraction_json(each.statistic),
        "degrees": each.degrees,
        "chance": fraction_json(Fraction(each.chance)),
        "is_enough": each.is_enough,
        "is_remarkable": each.is_alarming,
    }
