"""Every kind of paper, in the order in which they are printed."""

from paradestate.core.paper.fire_missions import fire_missions
from paradestate.core.paper.labels import labels
from paradestate.core.paper.markers import markers
from paradestate.core.paper.message_slips import message_slips
from paradestate.core.paper.opponents_sheet import opponents_sheet
from paradestate.core.paper.private_sheet import private_sheet
from paradestate.core.paper.rear_marks import rear_marks
from paradestate.core.paper.request_slips import request_slips
from paradestate.core.paper.roll_record import roll_record
from paradestate.core.paper.state_board import state_board
from paradestate.core.paper.templates import templates
from paradestate.journeys.game_papers import chart_of, for_a_game, umpires_of
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
    PaperKind(
        name="private sheet",
        title="Order of battle",
        about="Everything, for its owner alone: what stands, hides, waits and fires.",
        drafted=for_a_game("private sheet", on_ground(private_sheet)),
    ),
    PaperKind(
        name="opponents sheet",
        title="Opponent's sheet",
        about="What may be seen, with room for what he finds out.",
        drafted=for_a_game("opponents sheet", on_ground(opponents_sheet)),
        names_force=False,
    ),
    PaperKind(
        name="umpires sheet",
        title="Umpire's sheet",
        about="Both sides with all that is hidden, and who comes when.",
        drafted=for_a_game("umpires sheet", umpires_of),
    ),
    PaperKind(
        name="state board",
        title="State board",
        about="A box for every stand, state and fire mission.",
        drafted=for_a_game("state board", on_ground(state_board)),
    ),
    PaperKind(
        name="fire missions",
        title="Fire missions",
        about="A tear-off for each fire mission that is bought.",
        drafted=for_a_game("fire missions", on_ground(fire_missions)),
    ),
    PaperKind(
        name="request slips",
        title="Requests",
        about="A slip for each entry of the supporting troops.",
        drafted=for_a_game("request slips", on_ground(request_slips)),
    ),
    PaperKind(
        name="decision chart",
        title="Decision chart",
        about="What to ask for first, and what then.",
        drafted=for_a_game("decision chart", chart_of),
    ),
    PaperKind(
        name="roll record",
        title="Roll record",
        about="Every die as it falls, and who saw it.",
        drafted=for_a_game("roll record", on_ground(roll_record)),
    ),
    PaperKind(
        name="message slips",
        title="Messages",
        about="Slips for orders and reports.",
        drafted=for_a_game("message slips", on_ground(message_slips)),
    ),
)
