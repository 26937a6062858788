"""A count for programs."""

from fractions import Fraction

from paradestate.core.change import Change
from paradestate.core.establishment import LayerTotals
from paradestate.core.figure import Sort
from paradestate.core.number import NumberRange
from paradestate.core.outline import decimal_text
from paradestate.core.ratio import Ratio, ratio
from paradestate.core.strength import stands_by_stage
from paradestate.journeys.count import Count
from paradestate.journeys.document import stand_in_document


def count_json(answer: Count) -> dict[str, object]:
    """The count with the keys that programs rely on."""
    made, owned = answer.made, answer.strength
    return {
        "title": answer.force.title,
        "formation": made.formation,
        "date": None if made.date is None else str(made.date),
        "must": _layer(made.must),
        "wished": _layer(made.wished),
        "wanted": dict(made.wanted_figures()),
        "held": dict(owned.held),
        "deficiency": dict(owned.deficiency),
        "surplus": dict(owned.surplus),
        "stand_ins": [stand_in_document(each) for each in owned.stand_ins],
        "ratio": _ratio(answer),
        "chains": {name: str(chain) for name, chain in made.rollup.chains.items()},
        "three_totals": dict(
            zip(("by_level", "by_kind", "by_company"), answer.check.totals, strict=True)
        ),
        "formations": dict(made.number_of),
        "ceiling": {
            "stands": dict(answer.ceiling.stands),
            "figures": dict(answer.ceiling.figures),
        },
        "crowding": {name: decimal_share(share) for name, share in answer.crowding.items()},
        "fronts": [
            {
                "formation": front.formation,
                "stands": front.stands,
                "front_mm": decimal_text(front.front),
                "ground_m": None if front.ground is None else decimal_text(front.ground),
                "abreast": front.abreast,
            }
            for front in answer.fronts
        ],
        "stands_by_stage": dict(stands_by_stage(owned)),
        "stands": [
            {
                "name": state.stand.name,
                "pattern": state.stand.pattern,
                "layer": state.stand.layer,
                "stage": state.stage,
                "lacking": dict(state.lacking),
            }
            for state in owned.stands
        ],
        "changes": [change_json(change) for change in answer.changes or ()],
    }


def _layer(totals: LayerTotals) -> dict[str, object]:
    return {
        "stands": dict(totals.stands),
        "printed": dict(totals.printed),
        "figures": dict(totals.figures),
        "foot": totals.foot,
        "mounted": totals.by_sort[Sort.MOUNTED],
        "guns": totals.by_sort[Sort.GUN],
        "vehicles": totals.by_sort[Sort.VEHICLE],
        "men": range_json(totals.men),
    }


def _ratio(answer: Count) -> str | dict[str, str] | None:
    must = answer.made.must
    figures = must.foot + must.by_sort[Sort.MOUNTED]
    if not figures or not must.men.most:
        return None
    return ratio_json(ratio(must.men, figures=figures))


def ratio_json(known: Ratio) -> str | dict[str, str]:
    """Men to a figure as an exact fraction, or its least and most."""
    if known.least == known.most:
        return fraction_json(known.least)
    return {"least": fraction_json(known.least), "most": fraction_json(known.most)}


def decimal_share(share: Fraction) -> str:
    """A share to four decimals: the area of a disc is no exact fraction."""
    return f"{float(share):.4f}"


def fraction_json(number: Fraction) -> str:
    """An exact fraction: `13/27`."""
    return str(number)


def range_json(number: NumberRange | int | None) -> int | dict[str, int] | None:
    """A whole number, or its least and most."""
    if isinstance(number, NumberRange):
        if number.is_single:
            return number.least
        return {"least": number.least, "most": number.most}
    return number


def change_json(change: Change) -> dict[str, object]:
    """One number that differs."""
    return {
        "what": change.what,
        "name": change.name,
        "from": range_json(change.before),
        "to": range_json(change.after),
        "difference": change.difference,
    }
