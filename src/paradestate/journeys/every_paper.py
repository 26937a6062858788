"""Every kind of paper, in the order in which they are printed."""

from paradestate.core.paper.labels import labels
from paradestate.core.paper.markers import markers
from paradestate.core.paper.rear_marks import rear_marks
from paradestate.core.paper.templates import templates
from paradestate.journeys.paper_kind import PaperKind, on_ground

EVERY_PAPER = (
    PaperKind(
        name="labels",
        title="Labels",
        about="A label for the underside of every stand.",
        drafted=on_ground(labels),
    ),
    PaperKind(
        name="rear marks",
        title="Rear marks",
        about="The mark of every stand, for its own side to see.",
        drafted=on_ground(rear_marks),
    ),
    PaperKind(
        name="templates",
        title="Stand templates",
        about="Each kind of stand at full size, to set its figures down by.",
        drafted=on_ground(templates),
    ),
    PaperKind(
        name="markers",
        title="Markers",
        about="Printed stands on both sides, with dummies like them from the front.",
        drafted=on_ground(markers),
    ),
)
