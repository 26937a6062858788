"""A sweep for programs; worths are fractions as strings."""

from paradestate.cli.count_json import fraction_json
from paradestate.cli.force_json import force_json
from paradestate.core.certainty import Exact, NotComputed, certainty_word
from paradestate.core.support.amendment import (
    Amendment,
    LimitAmendment,
    PriceAmendment,
    WorthAmendment,
    number_of,
)
from paradestate.core.support.sweep import Swept
from paradestate.core.support.terms import Terms
from paradestate.journeys.sweep import Sweep


def sweep_json(found: Sweep) -> dict[str, object]:
    """The sweep with the keys that programs rely on."""
    return {
        "questions": found.questions,
        "answered": len(found.rows),
        "rows": [_row(found, each) for each in found.rows],
        "left_out": [
            {"folder": str(folder), "game": game, "reason": reason}
            for folder, game, reason in found.left_out
        ],
    }


def _row(found: Sweep, swept: Swept) -> dict[str, object]:
    game = found.games[swept.question.game]
    terms, row = game.forces.terms, swept.row
    about = {
        "folder": str(game.folder),
        "game": terms.game.name,
        "points": game.forces.at,
        "changes": [_amendment(terms, each) for each in swept.question.amendments],
    }
    if isinstance(row, NotComputed):
        return about | {"certainty": certainty_word(row), "reason": row.reason}
    return about | {
        "legal_old": row.old,
        "legal_new": row.new,
        "lost": row.lost,
        "gained": row.gained,
        "best": force_json(row.best),
        "mean_best": None if row.mean_best is None else fraction_json(row.mean_best),
        "among_best": dict(row.held),
        "best_listed": row.listed,
        "certainty": certainty_word(Exact()),
    }


def _amendment(terms: Terms, amendment: Amendment) -> dict[str, object]:
    match amendment:
        case LimitAmendment(entry=entry, most=most):
            return {"entry": entry, "limit": most}
        case PriceAmendment(entry=entry, points=points):
            return {"entry": entry, "number": _number(terms, amendment), "price": points}
        case _:
            worth = fraction_json(amendment.worth)
            return {
                "entry": amendment.entry,
                "number": _number(terms, amendment),
                "worth": worth,
            }


def _number(terms: Terms, amendment: PriceAmendment | WorthAmendment) -> int | None:
    """The priced number that it is about; null where the entry isn't on offer."""
    offer = terms.offers.get(amendment.entry)
    return None if offer is None else number_of(offer, amendment)
