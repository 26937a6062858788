"""The small folder that a newcomer starts from."""

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from paradestate.core.establishment import establishment
from paradestate.core.review.every_rule import EVERY_RULE
from paradestate.text.folder import read_files
from paradestate.text.starter import Answers, starter_text


@given(
    st.builds(
        Answers,
        title=st.text(st.characters(codec="ascii", categories=["L", "N", "P", "Zs"]), min_size=1),
        height=st.integers(2, 100).map(Fraction),
        figures_per_stand=st.integers(1, 20),
        sections=st.integers(1, 12),
        platoons=st.integers(1, 12),
        owned=st.integers(0, 500),
        officers=st.integers(0, 5),
        price=st.sampled_from(["", "18.00"]),
        currency=st.sampled_from(["GBP", "EUR"]),
    )
)
def test_it_reads_without_a_finding_whatever_is_answered(answers: Answers) -> None:
    reading = read_files({"force.yaml": starter_text(answers).encode()})
    doubts = [found for rule in EVERY_RULE for found in rule(reading.force)]
    doubts = [found for found in doubts if found.code != "absurd-number"]
    assert not reading.findings or not answers.title.strip()
    assert not doubts
    made, _ = establishment(reading.force)
    assert made is not None
    box = {"rifleman": answers.owned, "officer": answers.officers}
    owned = {kind: {"in packet": number} for kind, number in box.items() if number}
    assert reading.force.stock == owned
    assert bool(reading.force.sources) == bool(owned and answers.price)
    sections = answers.sections * answers.platoons
    assert made.must.stands == {"company command": 1, "rifle section": sections}


@pytest.mark.parametrize("answers", [Answers(price="18.00"), Answers(owned=32)])
def test_without_a_box_or_its_price_it_says_how_a_source_is_written(answers: Answers) -> None:
    text = starter_text(answers)
    assert "# Where you can buy." in text
    assert not read_files({"force.yaml": text.encode()}).force.sources


def test_the_note_about_the_bench_can_be_used_as_it_stands() -> None:
    """Without its strokes it gives minutes for every figure and a week."""
    text, note = starter_text(Answers()).split("# bench:\n")
    section = "bench:\n" + "".join(line.removeprefix("# ") + "\n" for line in note.splitlines())
    reading = read_files({"force.yaml": (text + section.replace("#   ", "  ")).encode()})
    assert not reading.findings
    bench = reading.force.bench
    assert bench.week == 240
    assert bench.minutes["foot"].keys() == set(bench.stages[1:])


def test_the_box_that_was_bought_is_a_pack_that_can_be_bought_again() -> None:
    text = starter_text(Answers(owned=32, officers=4, price="18.00", currency="EUR"))
    source = read_files({"force.yaml": text.encode()}).force.sources["My shop"]
    pack = source.packs["box"]
    assert (source.currency, pack.price, pack.holds) == (
        "EUR",
        1800,
        {"rifleman": 32, "officer": 4},
    )
