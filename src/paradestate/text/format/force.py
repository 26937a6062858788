"""The whole force folder as one record, and its JSON Schema."""

from paradestate.core.force import Force
from paradestate.core.support.entry import Asking
from paradestate.text.codec import ListOf, Schema
from paradestate.text.format import value
from paradestate.text.format.campaign import CAMPAIGN
from paradestate.text.format.club import CLUB
from paradestate.text.format.game import (
    GAMES_SECTION,
    GRADES_SECTION,
    RESERVES,
    CostOfFormation,
)
from paradestate.text.format.loss_limit import LOSS_LIMITS
from paradestate.text.format.purchase import STOCK, STOCK_STANDS, Sources
from paradestate.text.format.setting import (
    AIM,
    BENCH,
    COVERS,
    MARKS,
    OPPONENT,
    PACKED,
    TABLE,
    TRAYS_SECTION,
)
from paradestate.text.format.support import ENTRIES_SECTION, GROUP_LIMITS
from paradestate.text.format.troops import (
    FIGURES_SECTION,
    FORMATIONS_SECTION,
    RAISE,
    STANDS_SECTION,
)
from paradestate.text.format.worth import WORTHS
from paradestate.text.record import record, word

FORMAT_VERSION = 1
"""The version of the format that this program reads."""

FORCE = record(
    Force,
    word("title", value.FREE, required=True),
    word("about", value.FREE),
    word("drawn from", ListOf(of=value.NAME), about="where the organisation comes from"),
    word("private", value.YES_NO, about="typed in from a book: never shared"),
    word("aim", AIM),
    word("covers", COVERS, about="the dates that this folder knows"),
    word("figures", FIGURES_SECTION, about="kinds of figure and model"),
    word("stands", STANDS_SECTION, about="what is moved as one piece"),
    word("formations", FORMATIONS_SECTION, about="what is made of what"),
    word("raise", RAISE, attribute="raise_", required=True, about="what the owner raises"),
    word("stock", STOCK, about="figures owned at the start, by stage"),
    word("stock stands", STOCK_STANDS, about="whole stands owned at the start"),
    word("sources", Sources(), about="where packs are bought"),
    word("games", GAMES_SECTION),
    word("formation cost", CostOfFormation(), about="points of the force itself"),
    word("grades", GRADES_SECTION),
    word("supporting troops", ENTRIES_SECTION, about="what may be added for points"),
    word("asking", value.words_of(Asking), about="when those who need a roll are named"),
    word("limits", GROUP_LIMITS, about="limits shared by a group"),
    word("reserves", RESERVES),
    word("worths", WORTHS, about="the owner's own opinion"),
    word("bench", BENCH),
    word("campaign", CAMPAIGN, about="what a game leaves behind for the next"),
    word("club", CLUB, about="figures that several games share"),
    word("states", ListOf(of=value.NAME), about="what befalls a platoon at the table"),
    word("loss limits", LOSS_LIMITS, about="at how many losses what happens"),
    word("marks", MARKS),
    word("opponent", OPPONENT),
    word("trays", TRAYS_SECTION),
    word("packed", PACKED, about="where stands lie in trays, laid by hand"),
    word("table", TABLE),
)

JOINED = (
    "figures",
    "stands",
    "formations",
    "stock",
    "sources",
    "games",
    "grades",
    "supporting troops",
    "worths",
    "trays",
)
"""Sections that join name by name over the files of a folder."""

LISTED = tuple(name for name, known in FORCE.words.items() if isinstance(known.codec, ListOf))
"""Sections that are lists and are appended in file order."""


def force_schema() -> Schema:
    """The JSON Schema (2020-12) of a force file.

    Nothing is required, because the sections of a folder may stand in several files.
    """
    schema = FORCE.schema()
    del schema["required"]
    properties = {"format": value.FORMAT.schema()} | FORCE.properties()
    return {
        "$schema": "https://json-schema.org/draft/2020-12/schema",
        "title": "Force folder, format 1",
        **schema,
        "properties": properties,
    }
