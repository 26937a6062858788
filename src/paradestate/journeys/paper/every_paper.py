"""Every kind of paper, in the order in which they are printed."""

from paradestate.core.paper.fire_missions import fire_missions
from paradestate.core.paper.key_card import key_cards
from paradestate.core.paper.labels import labels
from paradestate.core.paper.markers import markers
from paradestate.core.paper.message_slips import message_slips
from paradestate.core.paper.opponents_sheet import opponents_sheet
from paradestate.core.paper.rear_marks import rear_marks
from paradestate.core.paper.request_slips import request_slips
from paradestate.core.paper.roll_record import roll_record
from paradestate.core.paper.show_labels import VISITORS, show_labels
from paradestate.core.paper.state_board import state_board
from paradestate.core.paper.templates import templates
from paradestate.core.paper.troops_list import troops_list
from paradestate.journeys.paper.club_papers import notice_of, sign_out_of
from paradestate.journeys.paper.game_papers import chart_of, umpires_of
from paradestate.journeys.paper.money_papers import box_list_of, purchase_slips_of
from paradestate.journeys.paper.paper_kind import PaperKind, on_ground
from paradestate.journeys.paper.paper_use import Eyes, Purpose
from paradestate.journeys.paper.return_paper import parade_state_of
from paradestate.journeys.paper.workshop_papers import (
    colours_of,
    jobs_of,
    packing_list_of,
    private_sheet_of,
    stock_take_of,
    tray_plans_of,
)

EVERY_PAPER = (
    PaperKind(
        name="parade state",
        title="Parade state",
        about="How many of each company are there, with all that was counted twice.",
        purpose=Purpose.BENCH,
        drafted=parade_state_of,
    ),
    PaperKind(
        name="labels",
        title="Labels",
        about="A label for the underside of every stand.",
        purpose=Purpose.STANDS,
        drafted=on_ground(labels),
    ),
    PaperKind(
        name="rear marks",
        title="Rear marks",
        about="The mark of every stand, for its own side to see.",
        purpose=Purpose.STANDS,
        drafted=on_ground(rear_marks),
    ),
    PaperKind(
        name="templates",
        title="Stand templates",
        about="Each kind of stand at full size, to set its figures down by.",
        purpose=Purpose.BENCH,
        drafted=on_ground(templates),
    ),
    PaperKind(
        name="markers",
        title="Markers",
        about="Printed stands on both sides, with dummies like them from the front.",
        purpose=Purpose.TONIGHT,
        drafted=on_ground(markers),
    ),
    PaperKind(
        name="private sheet",
        title="Order of battle",
        about="Everything, for its owner alone: what stands, hides, waits and fires.",
        purpose=Purpose.TONIGHT,
        drafted=private_sheet_of,
        is_of_a_game=True,
    ),
    PaperKind(
        name="opponents sheet",
        title="Opponent's sheet",
        about="What may be seen, with room for what he finds out.",
        purpose=Purpose.TONIGHT,
        drafted=on_ground(opponents_sheet),
        eyes=Eyes.ANYBODY,
        is_of_a_game=True,
        names_force=False,
    ),
    PaperKind(
        name="umpires sheet",
        title="Umpire's sheet",
        about="Both sides with all that is hidden, and who comes when.",
        purpose=Purpose.TONIGHT,
        drafted=umpires_of,
        is_of_a_game=True,
    ),
    PaperKind(
        name="state board",
        title="State board",
        about="A box for every stand, state and fire mission.",
        purpose=Purpose.TONIGHT,
        drafted=on_ground(state_board),
        is_of_a_game=True,
    ),
    PaperKind(
        name="fire missions",
        title="Fire missions",
        about="A tear-off for each fire mission that is bought.",
        purpose=Purpose.TONIGHT,
        drafted=on_ground(fire_missions),
        is_of_a_game=True,
    ),
    PaperKind(
        name="request slips",
        title="Requests",
        about="A slip for each entry of the supporting troops.",
        purpose=Purpose.TONIGHT,
        drafted=on_ground(request_slips),
        is_of_a_game=True,
    ),
    PaperKind(
        name="decision chart",
        title="Decision chart",
        about="What to ask for first, and what then.",
        purpose=Purpose.TONIGHT,
        drafted=chart_of,
        is_of_a_game=True,
    ),
    PaperKind(
        name="roll record",
        title="Roll record",
        about="Every die as it falls, and who saw it.",
        purpose=Purpose.TONIGHT,
        drafted=on_ground(roll_record),
        is_of_a_game=True,
    ),
    PaperKind(
        name="message slips",
        title="Messages",
        about="Slips for orders and reports.",
        purpose=Purpose.TONIGHT,
        drafted=on_ground(message_slips),
        is_of_a_game=True,
    ),
    PaperKind(
        name="key card",
        title="Key card",
        about="Which mark is whose, on cards of playing-card size.",
        purpose=Purpose.TONIGHT,
        drafted=on_ground(key_cards),
    ),
    PaperKind(
        name="tray plans",
        title="Tray plans",
        about="Each tray at full size, for its lid.",
        purpose=Purpose.TRAY,
        drafted=tray_plans_of,
    ),
    PaperKind(
        name="packing list",
        title="Packing list",
        about="What goes into which tray, row by row.",
        purpose=Purpose.TRAY,
        drafted=packing_list_of,
    ),
    PaperKind(
        name="box list",
        title="Box list",
        about="What is owned in which box, and what it would cost new.",
        purpose=Purpose.TRAY,
        drafted=box_list_of,
    ),
    PaperKind(
        name="stock-take sheet",
        title="Stock-take",
        about="Boxes to count in, beside what is held.",
        purpose=Purpose.BENCH,
        drafted=stock_take_of,
    ),
    PaperKind(
        name="job cards",
        title="Job cards",
        about="A card for each batch, to lie beside the work.",
        purpose=Purpose.BENCH,
        drafted=jobs_of,
    ),
    PaperKind(
        name="colour cards",
        title="Colour cards",
        about="How each kind of figure is painted, coat by coat.",
        purpose=Purpose.BENCH,
        drafted=colours_of,
    ),
    PaperKind(
        name="purchase slips",
        title="Purchase slips",
        about="What to buy, a slip for each source.",
        purpose=Purpose.BENCH,
        drafted=purchase_slips_of,
    ),
    PaperKind(
        name="troops list",
        title="Supporting troops",
        about="Prices, limits and availability in words.",
        purpose=Purpose.CLUB,
        drafted=on_ground(troops_list),
    ),
    PaperKind(
        name="sign-out sheet",
        title="Sign-out sheet",
        about="What goes out on which evening, to be signed for and counted back.",
        purpose=Purpose.CLUB,
        drafted=sign_out_of,
    ),
    PaperKind(
        name="club notice",
        title="Club notice",
        about="What is played when, and what it will lack.",
        purpose=Purpose.CLUB,
        drafted=notice_of,
        eyes=Eyes.VISITORS,
    ),
    PaperKind(
        name="show labels",
        title="Show labels",
        about="What stands there, for visitors of a show.",
        purpose=Purpose.CLUB,
        drafted=on_ground(show_labels),
        eyes=Eyes.VISITORS,
        read_from=VISITORS,
    ),
)
