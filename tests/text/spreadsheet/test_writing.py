"""A force's sections written to spreadsheets and read back."""

import io
import time
from dataclasses import replace
from decimal import Decimal

import openpyxl
import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from paradestate.core.force import Force
from paradestate.core.money import Currency, Minor
from paradestate.core.source import Pack, Source
from paradestate.text.folder import read_files
from paradestate.text.spreadsheet.writing import (
    csv_text,
    number_or_text,
    ods_bytes,
    pages_of,
    xlsx_bytes,
)
from paradestate.text.writing import force_text
from tests.forces import force_from, marenz
from tests.text.spreadsheet.books import HEAD, read


def files_of(force: Force, ending: str) -> dict[str, bytes]:
    pages = pages_of(force)
    if ending == "csv":
        return {f"{page.name}.csv": csv_text(page).encode("utf-8-sig") for page in pages}
    return {f"b.{ending}": {"xlsx": xlsx_bytes, "ods": ods_bytes}[ending](pages)}


def read_again(force: Force, ending: str) -> Force:
    """The force with its stock, sources and supporting troops read from spreadsheets."""
    rest = replace(force, sources={}, stock={}, stock_stands={}, supporting_troops={})
    yaml = force_text(rest).encode()
    reading = read_files({"a.yaml": yaml, **files_of(force, ending)})
    assert not [found for found in reading.findings if found.level == "stop"]
    return reading.force


@pytest.mark.parametrize("ending", ["csv", "xlsx", "ods"])
def test_the_example_comes_back_the_same(ending: str) -> None:
    force = replace(
        marenz(),
        stock={"rifleman": {"painted": 10, "assembled": 6}},
        stock_stands={"truck": {"based": 2}},
    )
    assert read_again(force, ending) == force


@pytest.mark.parametrize("ending", ["csv", "xlsx", "ods"])
def test_every_word_of_an_entry_comes_back_the_same(ending: str) -> None:
    force = force_from(
        """
formations: {top: {men: 1}}
grades: {training: {usual: fair, points: {fair: 0, recruits: -3}}}
supporting troops:
  tow: {cost: {each: 2, numbers: 1-5}, limit: {most: any, least: 1}}
  gun:
    cost: {1: 3, 2: 5}
    cost by grade: {training: {recruits: 2, fair: {1: 4, 2: 7}}}
    repeats cost more: [1, -2]
    limit: {most: 1, of: top, plus: 2}
    availability: {roll: 1d6, allows: {1: 0, 2-4: 1, 5-6: all}, shared roll: guns}
    when refused: points lost
    needs for each: {tow: 2}
    choice: [light, heavy]
    choice costs: {heavy: 1}
    in posture: {defence: {cost: 3, limit: any, availability: {roll: 1d6, allows: {1-6: all}}}}
"""
    )
    assert read_again(force, ending) == force


NAMES = st.text(
    st.characters(
        codec="utf-8", categories=["L", "N", "P", "S"], exclude_characters="\ufffe\uffff"
    ),
    min_size=1,
    max_size=12,
)


@pytest.mark.parametrize("ending", ["csv", "xlsx", "ods"])
@given(st.dictionaries(NAMES, st.integers(1, 10**6), min_size=1, max_size=3), NAMES)
@settings(max_examples=20, suppress_health_check=[HealthCheck.too_slow])
def test_odd_names_come_back_the_same(ending: str, prices: dict[str, int], kind: str) -> None:
    force = force_from("formations: {top: {men: 1}}")
    force = read_files({"a.yaml": force_text(force).encode()}).force
    packs = {
        name: Pack(name=name, title=name, price=Minor(price), holds={kind: 2})
        for name, price in prices.items()
    }
    source = Source(
        name=kind, currency=Currency("GBP"), carriage={Minor(0): Minor(350)}, packs=packs
    )
    figures = read_files({"a.yaml": HEAD.encode()}).force.figures
    known = replace(force, figures={kind: replace(figures["rifleman"], name=kind)})
    known = replace(known, sources={source.name: source})
    normal = read_files({"a.yaml": force_text(known).encode()}).force
    assert read_again(normal, ending).sources == normal.sources


def test_nothing_that_is_written_is_a_formula() -> None:
    force = replace(marenz(), sources={}, supporting_troops={}, stock={"=1+1": {"painted": 1}})
    book = openpyxl.load_workbook(io.BytesIO(xlsx_bytes(pages_of(force))))
    assert book["stock"]["A2"].data_type == "s"
    assert csv_text(pages_of(force)[0]).splitlines()[1].startswith("'=1+1")


@pytest.mark.parametrize(
    ("text", "value"),
    [("3", 3), ("3.5", 3.5), ("3.50", "3.50"), ("007", "007"), ("rifle", "rifle"), ("-2", -2)],
)
def test_numbers_are_numbers_where_they_come_back_the_same(text: str, value: object) -> None:
    assert number_or_text(text) == value
    assert type(number_or_text(text)) is type(value)


@given(st.decimals(allow_nan=False, allow_infinity=False, places=2, min_value=0, max_value=10**9))
def test_written_numbers_are_exact(number: Decimal) -> None:
    text = format(number, "f")
    written = number_or_text(text)
    assert isinstance(written, str) or Decimal(repr(written)) == number


def test_a_force_without_those_sections_has_no_pages() -> None:
    assert pages_of(force_from("formations: {top: {men: 1}}")) == ()


def test_a_source_without_packs_has_no_page_of_them() -> None:
    text = "formations: {top: {men: 1}}\nsources: {N: {currency: GBP, carriage: {0: 0}, packs: {}}}"
    assert [page.name for page in pages_of(force_from(text))] == ["sources"]


@pytest.mark.unmeasured
@pytest.mark.slow
def test_five_thousand_rows_are_read() -> None:
    packs = {
        f"P{number}": Pack(name=f"P{number}", price=Minor(100 + number), holds={"rifleman": 3})
        for number in range(5000)
    }
    source = Source(
        name="N", currency=Currency("GBP"), carriage={Minor(0): Minor(350)}, packs=packs
    )
    force = replace(read({}).force, sources={"N": source})
    data = xlsx_bytes(pages_of(force))
    began = time.perf_counter()
    reading = read({"b.xlsx": data})
    assert len(reading.force.sources["N"].packs) == 5000
    assert time.perf_counter() - began < 60  # a guard against squares, not a measurement
