"""Rows of sheets as sections of the force."""

from paradestate.core.source import Pack
from paradestate.core.support.entry import Band
from tests.text.spreadsheet.books import HEAD, read, said, xlsx

SOURCES = "source,currency,carriage,discount\nNorth,GBP,0: 3.50,50: 10%\n"
PACKS = "source,pack,price,holds\n"


def test_sources_with_their_packs() -> None:
    reading = read({
        "sources.csv": SOURCES,
        "packs.csv": PACKS + 'North,N1,8.00,"rifleman: 10, officer: 1"\nNorth,N2,3,rifleman: 1\n',
    })  # fmt: skip
    assert not reading.findings
    north = reading.force.sources["North"]
    assert list(north.packs) == ["N1", "N2"]
    assert north.packs["N1"] == Pack(name="N1", price=800, holds={"rifleman": 10, "officer": 1})  # type: ignore[arg-type]
    assert reading.force.places["sources", "North", "packs", "N2", "price"].cell == "packs!C3"


def test_stock_by_stage_and_in_all() -> None:
    reading = read({"stock.csv": "figure,held,painted\nrifleman,10,6\nofficer,,2\n",
                    "stock stands.csv": "stand,based\ngun,1\n"})  # fmt: skip
    assert not reading.findings
    assert reading.force.stock == {
        "rifleman": {"painted": 6, "in packet": 4},
        "officer": {"painted": 2},
    }
    assert reading.force.stock_stands == {"gun": {"based": 1}}


ENTRIES = "entry,cost,each,needs,bars,choice,when refused,roll,allows 0,allows 1,allows all\n"


def test_supporting_troops() -> None:
    rows = (
        'guns,"1: 4, 2: 7",gun: 1,,tanks,"flame, smoke",points kept,1d12,1-2,"3, 5-8","4, 9-12"\n'
        "tanks,9,,guns,,,,,,,\n"
    )
    reading = read({"supporting troops.csv": ENTRIES + rows})
    assert not reading.findings
    guns = reading.force.supporting_troops["guns"]
    assert guns.availability is not None
    assert guns.availability.allows == (
        Band(least=1, most=2, allows=0),
        Band(least=3, most=3, allows=1),
        Band(least=5, most=8, allows=1),
        Band(least=4, most=4, allows=None),
        Band(least=9, most=12, allows=None),
    )
    assert (guns.bars, guns.choice) == (("tanks",), ("flame", "smoke"))
    assert reading.force.supporting_troops["tanks"].needs == {"guns": 1}


def test_slips_are_named_by_sheet_and_cell() -> None:
    reading = read({
        "sources.csv": SOURCES,
        "packs.csv": PACKS + "North,N1,oops,rifelman: 10\nNorth,N2,,rifleman: 1\n",
    })  # fmt: skip
    assert said(reading) == [
        ("not-a-number", "packs!C2"),
        ("unknown-name", "packs!D2"),
        ("pack-without-price", "packs!B3"),
    ]


def test_columns_and_rows_that_can_not_be_read() -> None:
    reading = read({
        "stock.csv": "figur,painted\nrifleman,3\n",
        "packs.csv": "source,pack,prise\nNorth,N1,3\n",
        "sources.csv": SOURCES + ",EUR,0: 1\n",
    })  # fmt: skip
    assert ("column-missing", "stock!A1") in said(reading)
    assert ("unknown-word", "packs!C1") in said(reading)
    assert ("row-without-name", "sources!A3") in said(reading)


def test_a_cell_beyond_the_headings_is_passed_over() -> None:
    assert not read({"stock.csv": "figure,painted\nrifleman,3,9\n"}).findings


def test_a_name_in_two_rows_or_in_yaml_too() -> None:
    twice = read({"stock.csv": "figure,painted\nrifleman,3\nrifleman,4\n"})
    assert said(twice) == [("name-twice", "stock!A3")]
    assert twice.force.stock == {"rifleman": {"painted": 3}}
    both = read(
        {"stock.csv": "figure,painted\nrifleman,3\n"}, head=HEAD + "stock: {rifleman: {}}\n"
    )
    assert said(both) == [("name-twice", "stock!A2")]


def test_a_pack_without_its_source_is_missing_the_terms() -> None:
    reading = read({"packs.csv": PACKS + "North,N1,3,rifleman: 1\n"})
    assert [code for code, _ in said(reading)] == ["missing-word", "missing-word"]


def test_sheets_by_other_names_are_passed_over() -> None:
    assert said(read({"notes.csv": "a,b\n1,2\n"})) == [("no-sheet", "")]
    book = xlsx({"stock": [["figure", "painted"], ["rifleman", 3]], "notes": [["a"]], "packs": []})
    assert not read({"b.xlsx": book}).findings


def test_a_value_that_is_no_mapping_is_told_so_by_its_word() -> None:
    reading = read({"packs.csv": PACKS + "North,N1,3,rifleman 10\n", "sources.csv": SOURCES})
    assert said(reading) == [("wrong-shape", "packs!D2")]


def test_a_cell_that_can_not_be_read_at_all() -> None:
    reading = read({"packs.csv": PACKS + "North,N1,3,a: \x07\n", "sources.csv": SOURCES})
    assert ("control-character", "packs!D2") in said(reading)


def test_an_empty_cell_of_braces_is_nothing() -> None:
    reading = read({"packs.csv": PACKS + 'North,N1,3,"a: &x 1"\n', "sources.csv": SOURCES})
    assert ("yaml-anchor", "packs!D2") in said(reading)
