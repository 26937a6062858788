"""What the order of work uses up, for programs; fractions as strings."""

from collections.abc import Mapping

from paradestate.cli.count_json import fraction_json
from paradestate.core.outline import outline_text
from paradestate.core.sentence.caution import CAUTIONS, FIRST
from paradestate.core.supplies import Supplies
from paradestate.core.work.basing import Base
from paradestate.core.work.paint import Paint
from paradestate.core.work.requisition import Requisition


def supplies_json(made: Requisition, *, supplies: Supplies) -> dict[str, object]:
    """The answer with the keys that programs rely on."""
    basing = made.basing
    return {
        "batches": made.batches,
        "stands": made.stands,
        "paint": [_paint(each) for each in made.paint.paints],
        "bottle": fraction_json(supplies.bottle_taken),
        "spare": fraction_json(supplies.spare_taken),
        "bases": [_base(each) for each in basing.bases],
        "area": fraction_json(basing.area),
        "area_with_spare": fraction_json(basing.with_spare),
        "sheet": {
            "size": outline_text(supplies.sheet_taken),
            "enough": basing.sheets.enough,
            "least": basing.sheets.least,
            "too_large": [outline_text(outline) for outline in basing.sheets.too_large],
            "certainty": "exact" if basing.sheets.is_exact else "within",
        },
        "unknown": dict(made.paint.unknown),
        "uncoloured": dict(made.paint.uncoloured),
        "cautions": cautions_json(),
    }


def cautions_json() -> Mapping[str, object]:
    """What to mind at the bench."""
    return {
        "first": FIRST,
        "of": [{"about": each.about, "words": each.words} for each in CAUTIONS],
    }


def _paint(paint: Paint) -> Mapping[str, object]:
    return {
        "for": str(paint.coating),
        "colour": paint.colour or None,
        "figures": paint.figures,
        "millilitres": fraction_json(paint.used),
        "with_spare": fraction_json(paint.with_spare),
        "bottles": paint.bottles,
        "is": "guess" if paint.is_guess else "measured",
    }


def _base(base: Base) -> Mapping[str, object]:
    return {
        "base": outline_text(base.outline),
        "number": base.number,
        "with_spare": base.with_spare,
        "area": fraction_json(base.area),
        "from_one_sheet": base.from_sheet,
    }
