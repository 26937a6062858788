"""What is written down of a game, in words."""

import pytest

from paradestate.core.play.event import (
    Asked,
    Committed,
    Ended,
    Event,
    Opened,
    Revealed,
    Rolled,
    Spoken,
    Subject,
    Told,
)
from paradestate.core.sentence.play import event_words

REVEALED = Revealed(commitment="a", secret="abcdef0123")  # noqa: S106 - it is told to everybody


@pytest.mark.parametrize(
    ("event", "words"),
    [
        (Opened(game="attack"), "attack opened"),
        (Opened(game="attack", opponent="Ommerath"), "attack opened against Ommerath"),
        (
            Rolled(purpose="allowance", dice="18 + 2d6", faces=(6, 2), total=26),
            "rolled 6 and 2 for allowance (18 + 2d6), 26 in all",
        ),
        (
            Rolled(purpose="tanks", dice="3", faces=(), total=3, commitment="a"),
            "rolled by the machine for tanks (3), 3 in all",
        ),
        (
            Rolled(purpose="tanks", dice="1d12", faces=(3,), total=3, number=2),
            "rolled 3 for 2 x tanks (1d12), 3 in all",
        ),
        (
            Committed(digest="0123456789ab", purpose="tanks", dice="1d12"),
            "bound to a secret for tanks (1d12), with the digest 01234567",
        ),
        (Spoken(commitment="a", word="heron"), "heard the opponent's word 'heron'"),
        (REVEALED, "told the secret abcdef01"),
        (
            Asked(entry="tanks", number=2, allowed=1, taken=1),
            "asked for 2 x tanks, 1 allowed, 1 taken",
        ),
        (
            Asked(entry="pioneers", number=1, choice="flame", taken=1),
            "asked for 1 x pioneers (flame), 1 taken",
        ),
        (
            Told(subject=Subject("out", "1 Section"), value="yes", turn=3),
            "out, 1 Section: yes, turn 3",
        ),
        (Told(subject=Subject("out", "1 Section"), value=""), "out, 1 Section: as at the start"),
        (Ended(), "ended"),
        (Ended(outcome="held the bridge"), "ended: held the bridge"),
    ],
)
def test_each_event_is_said_in_words(event: Event, words: str) -> None:
    assert event_words(event) == words
