"""The sheet to count on."""

from paradestate.core.holdings import Holdings
from paradestate.core.paper.stock_take_sheet import StockTakeSheet, stock_take_sheet
from tests.forces import force_from

FORCE = """\
figures: {rifleman: {}, officer: {}}
stands:
  section: {base: 40 x 20 mm, figures: {rifleman: 4}}
  marker: {base: 40 mm disc, printed: yes}
formations: {top: {parts: {section: 1, marker: 1}}}
"""
SEVEN = f"{FORCE}bench: {{stages: [a, b, c, d, e, f, g]}}\n"
NOTHING = Holdings()


def sheet(text: str, *, held: Holdings = NOTHING, lent: Holdings = NOTHING) -> StockTakeSheet:
    shown = stock_take_sheet(force_from(text), held=held, lent=lent).shown
    assert shown is not None
    return shown


def test_every_kind_and_stage_has_a_box_beside_what_is_held() -> None:
    held = Holdings(figures={"rifleman": {"painted": 12}, "mule": {"based": 1}})
    figures, stands = sheet(FORCE, held=held).tables
    assert figures.title == "Figures"
    assert figures.stages == ("in packet", "assembled", "undercoated", "painted", "based")
    assert [(row.name, row.held) for row in figures.rows] == [
        ("rifleman", (0, 0, 0, 12, 0)),
        ("officer", (0, 0, 0, 0, 0)),
        ("mule", (0, 0, 0, 0, 1)),
    ]
    assert [row.name for row in stands.rows] == ["section"]  # a printed marker isn't made


def test_stages_that_are_too_many_go_on_in_a_further_table_and_none_is_lost() -> None:
    held = Holdings(figures={"rifleman": {"g": 3, "lost": 1}})
    tables = [each for each in sheet(SEVEN, held=held).tables if each.title.startswith("Figures")]
    assert [(each.title, each.stages) for each in tables] == [
        ("Figures", ("a", "b", "c", "d", "e")),
        ("Figures, further stages", ("f", "g", "lost")),
    ]
    assert tables[1].rows[0].held == (0, 3, 1)


def test_what_is_lent_is_said_for_it_isnt_there() -> None:
    lent = Holdings(figures={"rifleman": {"painted": 2, "based": 0}})
    shown = sheet(FORCE, held=Holdings(figures={"officer": {"based": 1}}), lent=lent)
    assert shown.away == ("Painted: 2 riflemen",)
    assert sum(sum(row.held) for row in shown.tables[0].rows) == 1


def test_where_there_is_nothing_to_count_there_is_no_sheet() -> None:
    force = force_from("formations: {top: {men: 4}}")
    assert stock_take_sheet(force, held=NOTHING, lent=NOTHING).shown is None
