"""A small commented force folder, written from six answers."""

from dataclasses import dataclass
from fractions import Fraction

from paradestate.core.outline import decimal_text


@dataclass(frozen=True, slots=True, kw_only=True)
class Answers:
    """What a newcomer answers. Heights in millimetres."""

    title: str = "My first force"
    height: Fraction = Fraction(15)
    figures_per_stand: int = 4
    sections: int = 3
    platoons: int = 3
    owned: int = 0
    """Riflemen that are owned already, unbuilt."""
    officers: int = 0
    """Officers that are owned already, unbuilt."""
    price: str = ""
    """What a box of just these figures costs, such as `18.00`; empty where nobody said."""
    currency: str = "GBP"
    """Of the price, by ISO 4217."""


def starter_text(answers: Answers) -> str:
    """The text of the folder's one file; it reads without a finding."""
    footprint = answers.height / 2
    width = (footprint + 1) * answers.figures_per_stand + 1
    depth = footprint + 4
    return TEMPLATE.format(
        title=answers.title.replace("\\", "\\\\").replace('"', '\\"'),
        height=decimal_text(answers.height),
        footprint=decimal_text(footprint),
        width=decimal_text(width),
        depth=decimal_text(depth),
        disc=decimal_text((footprint + 1) * 3),
        figures=answers.figures_per_stand,
        men=answers.figures_per_stand * 3,
        sections=answers.sections,
        platoons=answers.platoons,
        stock=_stock(answers),
        source=_source(answers),
    )


def _box(answers: Answers) -> dict[str, int]:
    """What is owned, by kind."""
    there = {"rifleman": answers.owned, "officer": answers.officers}
    return {kind: number for kind, number in there.items() if number}


def _stock(answers: Answers) -> str:
    lines = [f"  {kind}: {{in packet: {number}}}\n" for kind, number in _box(answers).items()]
    return "".join(("\nstock:\n", *lines)) if lines else ""


def _source(answers: Answers) -> str:
    """Where the box was bought, or how that is written where nobody said."""
    box = _box(answers)
    if not answers.price or not box:
        return UNKNOWN_SOURCE
    holds = ", ".join(f"{kind}: {number}" for kind, number in box.items())
    return SOURCE.format(currency=answers.currency, price=answers.price, holds=holds)


TEMPLATE = """\
# A force folder: every *.yaml file in this folder is read. Lines that begin with # are notes.
format: 1
title: "{title}"
drawn from: [invented]

# What you buy and paint. The footprint is the disc that one figure needs.
figures:
  rifleman: {{height: {height} mm, footprint: {footprint} mm}}
  officer: {{height: {height} mm, footprint: {footprint} mm}}

# What you put down on the table and move as one piece: front x depth.
stands:
  rifle section:
    base: {width} x {depth} mm
    called: Section
    men: {men}
    figures: {{rifleman: {figures}}}
  company command: {{base: {disc} mm disc, men: 3, figures: {{officer: 1, rifleman: 1}}}}

# What is made of what.
formations:
  platoon:
    called: Platoon
    echelon: platoon
    arm: infantry
    parts: {{rifle section: {sections}}}
  company:
    echelon: company
    arm: infantry
    parts: {{company command: 1, platoon: {platoons}}}

raise: {{formation: company}}
{stock}
{source}
# How you work, for `paradestate bench`: minutes until one figure has reached each stage.
# bench:
#   minutes: {{foot: {{assembled: 3, undercoated: 1, painted: 15, based: 5}}}}
#   week: 4 h
"""

SOURCE = """\
# Where you buy. Add what is charged for sending: so much, from goods of so much.
sources:
  My shop:
    currency: {currency}
    carriage: {{0: 0}}
    packs:
      box: {{price: {price}, holds: {{{holds}}}}}
"""

UNKNOWN_SOURCE = """\
# Where you can buy. Write the prices of your own shop here.
# sources:
#   My shop:
#     currency: GBP
#     carriage: {0: 3.50, 40: 0}
#     packs:
#       riflemen: {price: 8.00, holds: {rifleman: 10}}
"""
