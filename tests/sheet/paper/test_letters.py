"""The letters that papers can print."""

import pytest

from paradestate.core.paper.label_face import LabelFace
from paradestate.sheet.paper.letters import printable, unprintable
from paradestate.sheet.paper.typesetting import printed
from tests.sheet.paper.papers import one_label, texts


@pytest.mark.parametrize(
    "name", ["Zwölf Öfen", "Žluťoučký kůň", "Łódź", "Ærø", "Ядро", "Αθήνα", "“Nº 4” – 7½ €…"]
)
def test_the_alphabets_of_europe_can_be_printed(name: str) -> None:
    assert printable().issuperset(name)
    assert unprintable((name, {"x": [name]}, 3)) == ()


def test_texts_with_other_letters_are_named_once_wherever_they_stand() -> None:
    value = LabelFace(mark=None, lines=("日本",))
    assert unprintable((value, {"a": value}, "plain", "ש")) == ("日本", "ש")


def test_what_can_be_printed_stands_in_the_file_as_text() -> None:
    title = "Łódź Ядро Αθήνα ½"
    (text,) = texts(printed(one_label(title=title)).pdf)
    assert text.startswith(title)
