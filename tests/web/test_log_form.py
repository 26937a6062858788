"""What forms that write into the journal say, whatever the owner's things are called."""

import pytest

from paradestate.web.form import Form
from paradestate.web.log_form import field, figures_said, numbers_said, staged_said

ODD = ('say "if"', "a/b", "50% off", "caf\u00e9", "two\nlines", "")


@pytest.mark.parametrize("name", ODD)
def test_any_name_comes_back_and_none_of_it_is_written_otherwise_by_a_browser(name: str) -> None:
    key = field("counted", name, "in packet")
    assert not set(key) & set('"\r\n')
    assert staged_said(Form(texts={key: "3"}), "counted") == ({name: {"in packet": 3}}, ())


def test_fields_of_another_word_and_empty_ones_say_nothing() -> None:
    texts = {"came/S1": "2", "ordered/S1": "3", "came/S2": " ", "came": "9", "note": "came/S1"}
    assert numbers_said(Form(texts=texts), "came") == ({("S1",): 2}, ())


def test_noughts_are_left_out_of_figures_and_kept_in_a_count() -> None:
    texts = {"counted/rifleman/painted": "0"}
    assert figures_said(Form(texts={"figures/rifleman": "0"}), "figures") == ({}, ())
    assert staged_said(Form(texts=texts), "counted") == ({"rifleman": {"painted": 0}}, ())


def test_each_bad_number_is_named_by_its_box() -> None:
    texts = {"counted/rifleman/painted": "x", "counted/boat/based": "1.5"}
    staged, findings = staged_said(Form(texts=texts), "counted")
    assert staged == {}
    assert [found.message for found in findings] == [
        "rifleman, painted: 'x' isn't a whole number.",
        "boat, based: 1.5 isn't a whole number from 0 up.",
    ]
    assert {found.effect for found in findings} == {"Nothing is written into the journal."}
