"""The drawing of a tray: to scale, numbered, with what may not be touched ruled across."""

from xml.etree import ElementTree as ET

import pytest

from paradestate.core.mark.code import Mark, Sign
from paradestate.core.tray.lid import Lid, lids
from paradestate.core.tray.plan import laid_out
from paradestate.sheet.svg import Drawing
from paradestate.sheet.tray_plan import DESK, PHONE, TrayLook, barred_pattern, tray_drawing
from tests.tray_things import alike, battalion, case, thing


def lid_of(*marks: tuple[str, Mark]) -> Lid:
    plan = laid_out([case("case 1")], battalion())
    return next(lids(plan.trays, marks=dict(marks)))


def drawn(
    lid: Lid,
    *,
    pixels: int = DESK,
    chosen: str = "",
    barred: tuple[str, ...] = (),
    address: str = "?",
) -> Drawing:
    keys = {stand.name: at for at, stand in enumerate(lid.stands, start=1)}
    look = TrayLook(
        width=300,
        pixels=pixels,
        address=lambda _: address,
        words=lambda stand: stand.name,
        keys=keys,
        chosen=chosen,
        barred=barred,
    )
    return tray_drawing(lid, look=look)


def stands(drawing: Drawing) -> list[ET.Element]:
    root = ET.fromstring(drawing.svg)  # noqa: S314 - our own
    return [each for each in root.iter() if "data-stand" in each.attrib]


def test_every_stand_lies_where_the_lid_has_it_at_its_own_size() -> None:
    lid = lid_of()
    made = stands(drawn(lid))
    assert len(made) == len(lid.stands) == 45
    for stand, part in zip(lid.stands, made, strict=True):
        assert (
            part.get("transform") == f"translate({float(stand.across):.2f} {float(stand.deep):.2f})"
        )
        body = part[0]
        across = body.get("width") or str(2 * float(body.get("r") or 0))
        assert float(across) == pytest.approx(float(stand.width) - 0.8)
        assert part[-1].text == str(stand.number)


def test_rows_are_labelled_on_a_desk_in_words_and_on_a_phone_by_number() -> None:
    assert ">Row 6<" in drawn(lid_of()).svg
    assert ">Row 6<" not in drawn(lid_of(), pixels=PHONE).svg
    assert ">6<" in drawn(lid_of(), pixels=PHONE).svg


def mark(**known: int) -> Mark:
    return Mark(colour="royal blue", value="1F4E9E", bars=known.get("bars", 3), sign=Sign.CROSS)


def test_a_mark_is_the_colour_and_sign_and_bars_where_there_is_room() -> None:
    part = stands(drawn(lid_of(("No 1 / 0", mark()))))[0]
    assert part[0].get("fill") == "#1F4E9E"
    assert len(part[1]) == 4
    plan = laid_out([case("c")], [thing("t", 8, 30), thing("d", 40)])
    narrow = next(lids(plan.trays, marks={"t": mark(), "d": mark(bars=0)}))
    assert [len(each) for each in stands(drawn(narrow))] == [2, 2]
    plain = Mark(colour="", value="", bars=1, sign=None)
    assert stands(drawn(lid_of(("No 1 / 0", plain))))[0][0].get("fill") == "var(--sheet)"


def test_the_chosen_one_and_those_that_may_not_be_touched_are_told_apart() -> None:
    made = stands(drawn(lid_of(), chosen="No 1 / 0", barred=("No 1 / 1",)))
    assert made[0].get("aria-current") == "true"
    assert made[1].get("class") == "stand barred"
    assert made[1][0].get("fill") == "url(#tx-barred)"
    assert "tx-barred" in barred_pattern().svg


def test_what_leads_nowhere_is_no_link() -> None:
    plan = laid_out([case("c")], alike(1, 40, 20))
    lid = next(lids(plan.trays, marks={}))
    assert stands(drawn(lid, address=""))[0].tag.rpartition("}")[2] == "g"
    assert stands(drawn(lid))[0].tag.rpartition("}")[2] == "a"
