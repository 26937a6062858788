"""Every kind of paper, in the order in which they are printed."""

from paradestate.core.paper.fire_missions import fire_missions
from paradestate.core.paper.key_card import key_cards
from paradestate.core.paper.labels import labels
from paradestate.core.paper.markers import markers
from paradestate.core.paper.message_slips import message_slips
from paradestate.core.paper.opponents_sheet import opponents_sheet
from paradestate.core.paper.private_sheet import private_sheet
from paradestate.core.paper.rear_marks import rear_marks
from paradestate.core.paper.request_slips import request_slips
from paradestate.core.paper.roll_record import roll_record
from paradestate.core.paper.show_labels import VISITORS, show_labels
from paradestate.core.paper.state_board import state_board
from paradestate.core.paper.templates import templates
from paradestate.core.paper.troops_list import troops_list
from paradestate.journeys.game_papers import chart_of, for_a_game, umpires_of
from paradestate.journeys.money_papers import box_list_of, purchase_slips_of
from paradestate.journeys.paper_kind import PaperKind, on_ground
from paradestate.journeys.return_paper import parade_state_of
from paradestate.journeys.workshop_papers import (
    colours_of,
    jobs_of,
    notice_of,
    packing_list_of,
    stock_take_of,
    tray_plans_of,
)

EVERY_PAPER = (
    PaperKind(
        name="parade state",
        title="Parade state",
        about="How many of each company are there, with all that was counted twice.",
        drafted=parade_state_of,
    ),
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
    PaperKind(
        name="key card",
        title="Key card",
        about="Which mark is whose, on cards of playing-card size.",
        drafted=on_ground(key_cards),
    ),
    PaperKind(
        name="tray plans",
        title="Tray plans",
        about="Each tray at full size, for its lid.",
        drafted=tray_plans_of,
    ),
    PaperKind(
        name="packing list",
        title="Packing list",
        about="What goes into which tray, row by row.",
        drafted=packing_list_of,
    ),
    PaperKind(
        name="box list",
        title="Box list",
        about="What is owned in which box, and what it would cost new.",
        drafted=box_list_of,
    ),
    PaperKind(
        name="stock-take sheet",
        title="Stock-take",
        about="Boxes to count in, beside what is held.",
        drafted=stock_take_of,
    ),
    PaperKind(
        name="job cards",
        title="Job cards",
        about="A card for each batch, to lie beside the work.",
        drafted=jobs_of,
    ),
    PaperKind(
        name="colour cards",
        title="Colour cards",
        about="How each kind of figure is painted, coat by coat.",
        drafted=colours_of,
    ),
    PaperKind(
        name="purchase slips",
        title="Purchase slips",
        about="What to buy, a slip for each source.",
        drafted=purchase_slips_of,
    ),
    PaperKind(
        name="troops list",
        title="Supporting troops",
        about="Prices, limits and availability in words.",
        drafted=on_ground(troops_list),
    ),
    PaperKind(
        name="club notice",
        title="Club notice",
        about="Which force is played when, and what it will lack.",
        drafted=notice_of,
    ),
    PaperKind(
        name="show labels",
        title="Show labels",
        about="What stands there, for visitors of a show.",
        drafted=on_ground(show_labels),
        read_from=VISITORS,
    ),
)
