"""The pairing word: good once, for ten minutes, and for five attempts."""

from concurrent.futures import ThreadPoolExecutor

import pytest

from paradestate.web.phone.pairing import ALPHABET, ATTEMPTS, SECONDS, Attempt, Pairing


class Hand:
    """A clock that a test sets."""

    def __init__(self) -> None:
        self.seconds = 1000.0

    def __call__(self) -> float:
        return self.seconds


@pytest.fixture
def clock() -> Hand:
    return Hand()


@pytest.fixture
def pairing(clock: Hand) -> Pairing:
    return Pairing(clock=clock)


def test_a_word_is_twenty_characters_that_nobody_mistakes() -> None:
    words = {Pairing().begin() for _ in range(200)}
    assert len(words) == 200
    for word in words:
        groups = word.split("-")
        assert [len(group) for group in groups] == [4] * 5
        assert set("".join(groups)) <= set(ALPHABET)
    assert not set(ALPHABET) & set("01ilo")
    assert len(ALPHABET) == 31


def test_the_word_lets_in_once(pairing: Pairing) -> None:
    word = pairing.begin()
    assert pairing.word == word
    assert pairing.attempt(word) is Attempt.RIGHT
    assert pairing.attempt(word) is Attempt.OVER
    assert pairing.word is None


def test_capitals_spaces_and_lines_make_no_difference(pairing: Pairing) -> None:
    word = pairing.begin()
    assert pairing.attempt(f"  {word.upper().replace('-', ' ')}\n") is Attempt.RIGHT


def test_before_a_word_is_asked_for_none_is_good(pairing: Pairing) -> None:
    assert pairing.attempt("") is Attempt.OVER
    assert (pairing.word, pairing.attempts_left, pairing.seconds_left) == (None, 0, 0)


def test_nothing_and_nearly_the_word_are_wrong(pairing: Pairing) -> None:
    word = pairing.begin()
    other = ALPHABET[ALPHABET.index(word[0]) - 1]
    for typed in ("", word[:-1], other + word[1:], word + word):
        assert pairing.attempt(typed) is Attempt.WRONG
    assert pairing.attempt(word) is Attempt.RIGHT


def test_after_five_wrong_ones_the_right_one_is_of_no_use(pairing: Pairing) -> None:
    word = pairing.begin()
    for left in reversed(range(ATTEMPTS)):
        assert pairing.attempt("wrong") is Attempt.WRONG
        assert pairing.attempts_left == left
    assert pairing.word is None
    assert pairing.attempt(word) is Attempt.OVER
    assert pairing.attempt(pairing.begin()) is Attempt.RIGHT


def test_after_ten_minutes_it_is_over(pairing: Pairing, clock: Hand) -> None:
    word = pairing.begin()
    assert pairing.seconds_left == SECONDS
    clock.seconds += SECONDS - 1
    assert (pairing.seconds_left, pairing.word) == (1, word)
    clock.seconds += 1
    assert (pairing.seconds_left, pairing.word) == (0, None)
    assert pairing.attempt(word) is Attempt.OVER


def test_a_new_word_ends_the_one_before(pairing: Pairing) -> None:
    before = pairing.begin()
    now = pairing.begin()
    assert pairing.attempt(before) is Attempt.WRONG
    assert pairing.attempt(now) is Attempt.RIGHT


def test_a_word_can_be_taken_back(pairing: Pairing) -> None:
    word = pairing.begin()
    pairing.end()
    assert pairing.attempt(word) is Attempt.OVER


def test_of_many_at_once_one_is_let_in() -> None:
    pairing = Pairing()
    word = pairing.begin()
    with ThreadPoolExecutor(8) as pool:
        answers = list(pool.map(pairing.attempt, [word] * 40))
    assert answers.count(Attempt.RIGHT) == 1


def test_a_very_long_text_is_no_word(pairing: Pairing) -> None:
    pairing.begin()
    assert pairing.attempt("-" * 1_000_000) is Attempt.WRONG
