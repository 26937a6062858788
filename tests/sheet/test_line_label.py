"""Words at upright lines."""

from paradestate.sheet.line_label import BESIDE, Label, arranged, drawn_label, label

TEXTS = ("the plan costs 17", "13/18, 72 in 100")


def test_words_stand_right_of_their_line_where_they_have_room() -> None:
    made = label(TEXTS, x=100, width=720)
    assert made.left == 100 + BESIDE
    assert not made.is_over


def test_else_left_of_it_and_end_there() -> None:
    made = label(TEXTS, x=700, width=720)
    assert made.right == 700 - BESIDE
    _, *words = drawn_label(made, row=0, floor=200)
    assert {text.get("text-anchor") for text in words} == {"end"}


def test_else_over_it_and_the_line_begins_under_them() -> None:
    made = label(TEXTS, x=90, width=150)
    assert made.is_over
    line, *words = drawn_label(made, row=1, floor=200)
    begins = float(line.get("d", "").split(" ")[1].split("V")[0])
    assert begins > max(float(text.get("y", "")) for text in words)


def test_rows_are_so_arranged_that_lines_run_clear_of_words() -> None:
    left, right = label(TEXTS, x=100, width=720), label(TEXTS, x=150, width=720)
    assert list(arranged([right, left])) == [left, right]
    assert list(arranged([left, right])) == [left, right]


def test_labels_that_never_meet_stay_in_their_order() -> None:
    far = Label(x=500, left=508, texts=TEXTS)
    near = Label(x=10, left=18, texts=TEXTS)
    assert list(arranged([far, near])) == [far, near]
