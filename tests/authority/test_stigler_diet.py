"""The cheapest diet: the continuous cover that lies under every order.

Foods stand for packs and nutrients for figure kinds, but a part of a food can be bought. Table,
least cost and their sources stand in `stigler_diet/SOURCE.txt`.
"""

import csv
from collections.abc import Mapping
from fractions import Fraction
from pathlib import Path

from paradestate.solve.program import Ending, Program

FOLDER = Path(__file__).parent / "stigler_diet"
MICRO = 10**6
"""Micro-dollars in a dollar: the program rounds its answers to whole numbers."""
MOST = 100 * MICRO
TENTHS = 10
"""Every number of the table is whole in tenths."""
DAYS = 365


def rows(file: str) -> list[dict[str, str]]:
    with (FOLDER / file).open(encoding="utf-8", newline="") as opened:
        return list(csv.DictReader(opened))


def in_tenths(written: str) -> int:
    number = Fraction(written) * TENTHS
    assert number.denominator == 1
    return number.numerator


FOODS = {row["commodity"]: row for row in rows("foods.csv")}
MINIMUMS = {row["nutrient"]: in_tenths(row["daily_minimum"]) for row in rows("minimums.csv")}


def diet(minimums: Mapping[str, int]) -> Mapping[str, int]:
    """Micro-dollars a year for each food of the cheapest diet."""
    program = Program()
    foods = {food: program.variable(most=MOST, whole=False) for food in FOODS}
    for nutrient, daily in minimums.items():
        a_dollar = {foods[food]: in_tenths(row[nutrient]) for food, row in FOODS.items()}
        program.row(a_dollar, least=daily * DAYS * MICRO)
    program.minimise(dict.fromkeys(foods.values(), 1))
    solution = program.solved(seconds=60)
    assert solution.ending is Ending.OPTIMAL
    return {food: spent for food, number in foods.items() if (spent := solution.values[number])}


def test_the_table_is_whole() -> None:
    assert (len(FOODS), len(MINIMUMS)) == (77, 9)


def test_the_cheapest_diet_costs_39_6617_dollars_a_year() -> None:
    """39.6617 is what OR-Tools' documentation prints, and so are the five foods."""
    spent = diet(MINIMUMS)
    assert round(sum(spent.values()), -2) == 39_661_700
    assert spent == {
        "Wheat Flour (Enriched)": 10_774_458,
        "Liver (Beef)": 690_783,
        "Cabbage": 4_093_269,
        "Spinach": 1_827_796,
        "Navy Beans, Dried": 22_275_426,
    }


def test_a_nutrient_more_or_less_moves_the_cost_as_it_must() -> None:
    """Calcium is short in the cheapest diet, protein is plentiful."""
    least = sum(diet(MINIMUMS).values())
    more_calcium = {**MINIMUMS, "calcium_g": MINIMUMS["calcium_g"] + 1}
    no_protein = {**MINIMUMS, "protein_g": 0}
    assert sum(diet(more_calcium).values()) > least
    assert sum(diet(no_protein).values()) == least
