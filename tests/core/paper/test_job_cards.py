"""Job cards in words."""

from paradestate.core.paper.job_cards import JobSlip, job_cards_paper
from paradestate.core.work.job_card import job_cards
from tests.core.work.batches import MINUTES, climbed


def slips(bench: str = MINUTES) -> dict[str, JobSlip]:
    found, force = climbed(bench=bench)
    shown = job_cards_paper(job_cards(found.rungs, force)).shown
    assert shown is not None
    return {slip.title: slip for slip in shown.cards}


def test_a_card_says_its_stands_stages_and_time() -> None:
    card = slips()["2 sections"]
    assert card.time == "1 h 20 min of work"
    assert card.stages == (
        ("assembled", ""),
        ("undercoated", ""),
        ("painted", "1 h 20 min"),
        ("based", ""),
    )
    assert [row.title for group in card.groups for row in group.rows] == ["1 Section", "2 Section"]
    assert [row.is_done for group in card.groups for row in group.rows] == [(False,) * 4] * 2


def test_where_nothing_is_left_to_do_there_is_no_card() -> None:
    assert job_cards_paper(()).shown is None
