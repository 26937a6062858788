"""The legal forces of a game for programs; shares and worths are fractions as strings."""

from fractions import Fraction

from paradestate.cli.count_json import fraction_json
from paradestate.cli.force_json import force_json
from paradestate.core.certainty import Exact, NotComputed, certainty_word
from paradestate.core.support.force_map import LevelForces, SearchedForce, ValuedForce
from paradestate.journeys.forces import BestAlone, Fieldable, ForcesFound

UNKNOWN = ("legal", "spending_all", "fieldable", "best", "list", "next_best", "by_points")
UNKNOWN_BESIDE_THE_BEST = (*UNKNOWN, "fieldable_share", "must_lacks", "at_random")
"""What isn't known where the legal forces are too many to be told apart."""


def forces_json(found: ForcesFound | BestAlone | NotComputed) -> dict[str, object]:
    """The answer with the keys that programs rely on."""
    if isinstance(found, NotComputed):
        certainty = {"certainty": certainty_word(found), "reason": found.reason}
        return dict.fromkeys(UNKNOWN) | certainty
    if isinstance(found, BestAlone):
        return _alone(found)
    level, fieldable = found.level, found.fieldable
    best, *following = found.best or (None,)
    return {
        "game": found.terms.game.name,
        "points": found.points,
        "points_given": found.allowance is None,
        "legal": level.legal,
        "spending_all": level.spending_all,
        **_fieldable(found, fieldable),
        "best": force_json(best),
        "best_certainty": certainty_word(Exact()) if found.has_worths else None,
        "best_bound": None,
        "next_best": [force_json(each) for each in following],
        "list": [_listed(each, found) for each in found.every] if found.is_listed else None,
        "at_random": force_json(found.drawn),
        "by_points": [
            _level(each, worth, found=found)
            for each, worth in zip(found.levels, found.worths, strict=True)
        ],
        "certainty": certainty_word(Exact()),
    }


def _alone(found: BestAlone) -> dict[str, object]:
    """The best force, with what isn't known beside it."""
    known = found.fieldable
    not_computed = certainty_word(NotComputed(reason=found.reason))
    return {
        **dict.fromkeys(UNKNOWN_BESIDE_THE_BEST),
        "game": found.terms.game.name,
        "points": found.points,
        "points_given": found.are_given,
        **_searched(found.best, of="best"),
        "from": "finished" if found.finished else "owned",
        **_searched(None if isinstance(known, NotComputed) else known, of="fieldable_best"),
        "fieldable_certainty": not_computed,
        "fieldable_reason": known.reason if isinstance(known, NotComputed) else found.reason,
        "certainty": not_computed,
        "reason": found.reason,
    }


def _searched(known: SearchedForce | None, *, of: str) -> dict[str, object]:
    """A best force that was searched for, and how sure it is."""
    if known is None:
        return {of: None, f"{of}_certainty": "not computed", f"{of}_bound": None}
    bound = None if known.is_proved else known.bound
    return {
        of: force_json(known.force),
        f"{of}_certainty": "exact" if known.is_proved else "within",
        f"{of}_bound": None if bound is None else fraction_json(bound),
    }


def _fieldable(found: ForcesFound, known: Fieldable | NotComputed) -> dict[str, object]:
    of = "finished" if found.finished else "owned"
    if isinstance(known, NotComputed):
        return {
            "from": of,
            "fieldable": None,
            "fieldable_share": None,
            **_searched(found.searched, of="fieldable_best"),
            "must_lacks": None,
            "fieldable_certainty": certainty_word(known),
            "fieldable_reason": known.reason,
        }
    number = known.at(found.points)
    return {
        "from": of,
        "fieldable": number,
        "fieldable_share": _share(number, of=found.level.legal),
        "fieldable_best": force_json(known.best) if found.has_worths else None,
        "fieldable_best_certainty": certainty_word(Exact()) if found.has_worths else None,
        "fieldable_best_bound": None,
        "must_lacks": known.must_lacks,
        "fieldable_certainty": certainty_word(Exact()),
        "fieldable_reason": None,
    }


def _share(number: int, *, of: int) -> str | None:
    return fraction_json(Fraction(number, of)) if of else None


def _level(level: LevelForces, worth: Fraction | None, *, found: ForcesFound) -> dict[str, object]:
    known, allowance = found.fieldable, found.allowance
    return {
        "points": level.points,
        "chance": None if allowance is None else fraction_json(allowance.of(level.points)),
        "legal": level.legal,
        "spending_all": level.spending_all,
        "fieldable": None if isinstance(known, NotComputed) else known.at(level.points),
        "best_worth": None if worth is None or not found.has_worths else fraction_json(worth),
    }


def _listed(force: ValuedForce, found: ForcesFound) -> dict[str, object]:
    known = found.fieldable
    can = None if isinstance(known, NotComputed) else force.purchases in known.every
    return {**(force_json(force) or {}), "can_be_fielded": can}
