"""What programs read wherever it is asked for: findings and stand-ins as JSON documents.

Keys keep their meaning; more may be added.
"""

from paradestate.core.figure import StandIn
from paradestate.core.finding import Finding
from paradestate.core.place import Place


def finding_document(finding: Finding) -> dict[str, object]:
    """A finding for programs."""
    return {
        "level": finding.level,
        "code": finding.code,
        "message": finding.message,
        "effect": finding.effect,
        "hint": finding.hint,
        **_place(finding.place),
        "related": [_place(place) for place in finding.related],
    }


def _place(place: Place) -> dict[str, object]:
    known: dict[str, object] = {
        "file": place.file,
        "line": place.line,
        "column": place.column,
        "path": list(place.path),
    }
    return known | ({"cell": place.cell} if place.cell else {})


def stand_in_document(each: StandIn) -> dict[str, object]:
    """A stand-in for programs."""
    return {"kind": each.kind, "stands_for": each.stands_for, "number": each.number}
