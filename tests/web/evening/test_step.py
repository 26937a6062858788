"""What is at hand in an evening, as its form shows it."""

import re
from pathlib import Path

from paradestate.journeys.choosing import TermsTyped
from paradestate.journeys.game.play import opened, roll
from tests.web.evenings import TERMS, Clerk
from tests.web.grounds import NOW
from tests.web.server import marenz
from tests.web.visitor import Visitor


def test_where_nothing_is_best_taken_that_button_stands_first(tmp_path: Path) -> None:
    folder = marenz(tmp_path)
    clerk = Clerk(folder, begin=NOW)
    terms: TermsTyped = {**TERMS, "game": "evening attack"}
    opened(clerk.pen(), terms)
    roll(clerk.pen(), "allowance", numbers=(6, 2))
    done = roll(clerk.pen(), "anti-tank guns=2", numbers=(7,))
    assert done.game is not None
    assert (done.game.now.words, done.game.now.takes_none) == ("Anti-tank guns: take none.", True)
    text = Visitor(folder).get("evening").text
    buttons = re.findall(r'<button class="([^"]*)" name="number" value="(\d)"', text)
    assert buttons == [("big", "0"), ("big quiet", "1")]
