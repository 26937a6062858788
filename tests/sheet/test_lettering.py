"""How much room a text takes."""

from paradestate.sheet.lettering import fitted, width_of, wrapped


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


def test_a_text_is_broken_between_words() -> None:
    assert wrapped("two light tanks", room=200) == ("two light tanks",)
    assert wrapped("two light tanks and three guns", room=84) == (
        "two light",
        "tanks and",
        "three guns",
    )


def test_a_word_without_room_and_a_last_line_are_cut() -> None:
    assert wrapped("a commander-in-chief", room=60) == ("a", "comm…")
    cut = wrapped("two light tanks and three guns", room=75, most=2)
    assert cut == ("two light", "tanks an…")
    assert all(width_of(line) <= 75 for line in cut)
