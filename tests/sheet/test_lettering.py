"""How much room a text takes."""

from paradestate.sheet.lettering import fitted, width_of


def test_broad_letters_take_more_room_than_narrow_ones() -> None:
    assert width_of("mmm") > width_of("aaa") > width_of("iii")
    assert width_of("兵兵") > width_of("aa")


def test_twice_the_size_is_twice_the_room() -> None:
    assert width_of("rifleman", size=28) == 2 * width_of("rifleman", size=14)


def test_a_text_is_cut_only_where_there_is_no_room_for_it() -> None:
    assert fitted("rifleman", room=100) == "rifleman"
    cut = fitted("machine-gun crew of the third company", room=100)
    assert cut.endswith("…")
    assert width_of(cut) <= 100
    assert fitted("rifleman", room=1) == "…"
