"""The press: one paper after the other, the one asked for first, and never two at once."""

import time
from collections.abc import Iterator
from threading import Event, Lock

import pytest

from paradestate.journeys.order import Search
from paradestate.journeys.paper.every_paper import EVERY_PAPER
from paradestate.journeys.paper.one_paper import OnePaper
from paradestate.journeys.paper.paper_kind import PaperKind
from paradestate.web.papers import press as module
from paradestate.web.papers.press import Press, Setting, Shelf
from paradestate.web.search import Searches

KINDS = EVERY_PAPER[:4]
NAMES = [kind.name for kind in KINDS]
SOON = 30.0


def nothing(kind: PaperKind) -> OnePaper:
    """A paper on which there is nothing."""
    return OnePaper(kind=kind, sheet=None)


@pytest.fixture
def searches() -> Iterator[Searches]:
    made = Searches()
    yield made
    assert made.end()


class Slow:
    """Sets a paper when it is let."""

    def __init__(self) -> None:
        self.asked: list[str] = []
        self.begun, self.go = Event(), Event()

    def __call__(self, kind: PaperKind) -> OnePaper:
        self.asked.append(kind.name)
        self.begun.set()
        assert self.go.wait(SOON)
        return nothing(kind)


def run(setting: Setting, *, seconds: float = SOON, is_stopped: bool = False) -> bool:
    search = Search(seconds=seconds, stop=lambda: is_stopped)
    return setting.run(search, one_at_a_time=Lock(), shelf=Shelf())


def asked_again(setting: Setting) -> Iterator[None]:
    """As often as a page asks until all is set, for so long and no longer."""
    until = time.monotonic() + SOON
    while not setting.is_whole and time.monotonic() < until:
        yield
        setting.wait(0.05)


def test_all_are_set_in_their_order() -> None:
    setting = Setting(KINDS, nothing)
    assert (setting.number, setting.at, setting.is_whole) == (4, KINDS[0].title, False)
    assert run(setting)
    assert list(setting.done) == NAMES
    assert setting.at == ""
    assert setting.wait(0)


def test_the_one_that_is_waited_for_comes_next() -> None:
    setting = Setting(KINDS, nothing)
    assert setting.waited_for(NAMES[2], seconds=0) is None
    assert run(setting)
    assert list(setting.done) == [NAMES[2], NAMES[0], NAMES[1], NAMES[3]]
    assert setting.waited_for(NAMES[2], seconds=0) is not None


def test_none_is_begun_when_it_is_told_to_stop_or_its_time_is_over() -> None:
    setting = Setting(KINDS, nothing)
    assert not run(setting, is_stopped=True)
    assert not run(setting, seconds=0)
    assert setting.done == {}


def test_two_papers_are_never_set_at_once(searches: Searches) -> None:
    press, slow = Press(), Slow()
    settings = [
        press.setting(key, kinds=KINDS, make=slow, rests_on=press) for key in ("one", "other")
    ]
    for key, setting in zip(("one", "other"), settings, strict=True):
        press.set_on(setting, key=key, searches=searches)
    assert slow.begun.wait(SOON)
    time.sleep(0.05)
    assert len(slow.asked) == 1
    slow.go.set()
    assert all(setting.wait(SOON) for setting in settings)


def test_another_question_ends_the_one_before_and_what_was_set_stays(searches: Searches) -> None:
    press, slow = Press(), Slow()
    first = press.setting("first", kinds=KINDS, make=slow, rests_on=press)
    press.set_on(first, key="force", searches=searches)
    assert slow.begun.wait(SOON)
    other = press.setting("other", kinds=KINDS, make=nothing, rests_on=press)
    press.set_on(other, key="force", searches=searches)
    slow.go.set()
    assert other.wait(SOON)
    assert first.waited_for(NAMES[0], seconds=SOON) is not None
    assert list(first.done) == NAMES[:1]
    press.set_on(first, key="force", searches=searches)
    assert first.wait(SOON)


def test_a_setting_holds_as_long_as_what_it_rests_on() -> None:
    press = Press()
    rests_on = object()
    first = press.setting("key", kinds=KINDS, make=nothing, rests_on=rests_on)
    assert press.setting("key", kinds=KINDS, make=nothing, rests_on=rests_on) is first
    assert press.setting("key", kinds=KINDS, make=nothing, rests_on=object()) is not first


def test_few_settings_are_kept() -> None:
    press = Press()
    first = press.setting(0, kinds=KINDS, make=nothing, rests_on=press)
    for key in range(1, module.MOST_SETTINGS + 1):
        press.setting(key, kinds=KINDS, make=nothing, rests_on=press)
    assert press.setting(0, kinds=KINDS, make=nothing, rests_on=press) is not first


def test_one_whose_time_was_over_goes_on_when_it_is_asked_for(
    searches: Searches, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(module, "SECONDS", 0.0)
    press = Press()
    setting = press.setting("key", kinds=KINDS, make=nothing, rests_on=press)
    press.set_on(setting, key="force", searches=searches)
    monkeypatch.setattr(module, "SECONDS", SOON)
    for _ in asked_again(setting):
        press.set_on(setting, key="force", searches=searches)
    assert setting.is_whole


def test_what_failed_is_said_once_and_tried_again(searches: Searches) -> None:
    press, failures = Press(), [OSError("no disk")]

    def failing(kind: PaperKind) -> OnePaper:
        if failures:
            raise failures.pop()
        return nothing(kind)

    def asked() -> None:
        for _ in asked_again(setting):
            press.set_on(setting, key="force", searches=searches)

    setting = press.setting("key", kinds=KINDS, make=failing, rests_on=press)
    with pytest.raises(OSError, match="no disk"):
        asked()
    asked()
    assert setting.is_whole
