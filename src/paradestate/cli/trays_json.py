"""The tray plan and its packing list, for programs; millimetres are exact texts."""

from paradestate.core.certainty import Within, certainty_word
from paradestate.core.outline import decimal_text, outline_text
from paradestate.core.tray.laid import LaidRow, LaidTray
from paradestate.core.tray.plan import Misfit
from paradestate.core.tray.thing import Lying
from paradestate.journeys.document import finding_document
from paradestate.journeys.trays import TraysAnswer


def trays_json(answer: TraysAnswer) -> dict[str, object]:
    """The plan with the keys that programs rely on."""
    plan = answer.plan
    if plan is None:
        return {}
    return {
        "trays": [_tray(tray) for tray in plan.trays],
        "empty": [case.name for case in plan.empty],
        "no_place": [_misfit(misfit) for misfit in plan.misfits],
        "torn": list(plan.torn),
        "by_hand": plan.is_by_hand,
        "holds_packing_list": answer.is_whole,
        "certainty": certainty_word(plan.certainty),
        "bound": plan.bound.least,
        "bound_is_exceeded": isinstance(plan.certainty, Within),
        "bounds": {"by_area": plan.bound.by_area, "by_reach": plan.bound.by_reach},
        "findings": [finding_document(finding) for finding in answer.checked.findings],
    }


def _tray(tray: LaidTray) -> dict[str, object]:
    return {
        "tray": tray.case.name,
        "inside": outline_text(tray.case.inside),
        "gap_mm": decimal_text(tray.case.gap),
        "depth_taken_mm": decimal_text(tray.depth_taken),
        "width_taken_mm": decimal_text(tray.width_taken),
        "stands": len(tray.lying),
        "rows": [_row(row) for row in tray.rows],
    }


def _row(row: LaidRow) -> dict[str, object]:
    return {
        "from_mm": decimal_text(row.starts),
        "to_mm": decimal_text(row.ends),
        "staggered": row.is_staggered,
        "stands": [_stand(each) for each in row.lying],
    }


def _stand(lying: Lying) -> dict[str, object]:
    return {
        "stand": lying.thing.name,
        "pattern": lying.thing.pattern,
        "size": outline_text(lying.thing.outline),
        "across_mm": decimal_text(lying.across),
        "deep_mm": decimal_text(lying.deep),
        "turned": lying.is_turned,
    }


def _misfit(misfit: Misfit) -> dict[str, object]:
    return {
        "stand": misfit.thing.name,
        "why": str(misfit.want),
        "too_low": [case.name for case in misfit.too_low],
        "would_do": [case.name for case in misfit.would_do],
    }
