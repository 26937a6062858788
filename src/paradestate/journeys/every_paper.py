"""Every kind of paper, in the order in which they are printed."""

from paradestate.core.paper.labels import labels
from paradestate.journeys.paper_kind import PaperKind, on_ground

EVERY_PAPER = (
    PaperKind(
        name="labels",
        title="Labels",
        about="A label for the underside of every stand.",
        drafted=on_ground(labels),
    ),
)
