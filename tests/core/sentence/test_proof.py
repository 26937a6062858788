"""What the author of a list is told."""

from dataclasses import replace
from fractions import Fraction

from paradestate.core.sentence.proof import Matter, matters, matters_by_kind, place_words
from paradestate.core.support.chances import chances
from paradestate.core.support.price_table import price_doubts
from paradestate.core.support.proof import Dominance, GameProof, InBest, ListProof, Reach
from tests.core.support.test_proof import GAME, OFFERS, entry

CLEAN = replace(GAME, entries=(), cheapest=1, unspent=(0, 0), has_worths=False)


def said(*games: GameProof) -> list[str]:
    return list(matters(ListProof(games=games, refused={})))


def test_a_clean_list_has_nothing_to_look_at() -> None:
    assert said(CLEAN) == []


def test_all_that_is_to_be_looked_at() -> None:
    assert said(GAME) == [
        "Mule: never available; .",
        "Horse: in no best force, whatever the points.",
        "Gun: in every best force, whatever the points.",
        "No worth is said of cart: by themselves they don't make a force better or worse.",
        "Evening: no legal force spends all of 1 point (1 of 2 numbers of points).",
        "Evening: fewer than 2 points buy nothing.",
    ]


def test_a_price_that_contradicts_itself_is_said_once_for_all_games() -> None:
    table = replace(OFFERS["gun"], cost={1: 3, 2: 5, 3: 9}, most=2)
    doubted = replace(entry("gun"), doubts=price_doubts(table))
    game = replace(CLEAN, entries=(doubted,))
    assert said(game, game) == [
        "Gun: 3 cost 9, but 2 + 1 cost 8. Nobody would pay the higher price."
    ]


def test_reasons_are_said_game_by_game_where_they_differ() -> None:
    dear = replace(entry("gun", reach=Reach.NEVER_AFFORDABLE), reason="it needs 9 points")
    away = replace(entry("gun", reach=Reach.NEVER_AVAILABLE), reason="only in attack")
    other = replace(CLEAN.terms.game, name="raid")
    first = replace(CLEAN, entries=(dear,))
    second = replace(CLEAN, entries=(entry("cart"), away), terms=replace(CLEAN.terms, game=other))
    assert said(first, second) == [
        "Gun: never affordable in evening; it needs 9 points.",
        "Gun: never available in raid; only in attack.",
    ]


def test_what_is_to_be_looked_at_stands_under_headings_with_its_entry() -> None:
    kinds = dict(matters_by_kind(ListProof(games=(GAME,), refused={})))
    assert list(kinds) == ["Never taken", "In the best forces", "Points that nobody can spend"]
    assert kinds["Never taken"] == (Matter(sentence="Mule: never available; .", entry="mule"),)
    assert [each.entry for each in kinds["In the best forces"]] == ["horse", "gun", ""]


def test_a_doubt_about_prices_brings_its_entry_along() -> None:
    table = replace(OFFERS["gun"], cost={1: 3, 2: 5, 3: 9}, most=2)
    doubted = replace(entry("gun"), doubts=price_doubts(table))
    game = replace(CLEAN, entries=(doubted,))
    ((heading, (matter,)),) = matters_by_kind(ListProof(games=(game,), refused={}))
    assert heading == "Prices that contradict one another"
    assert matter.priced == doubted


def test_points_that_lapse_in_several_games_are_said_once() -> None:
    raid = replace(CLEAN.terms, game=replace(CLEAN.terms.game, name="raid"))
    game = replace(CLEAN, cheapest=2)
    assert said(game, replace(game, terms=raid)) == [
        "Evening and raid: fewer than 2 points buy nothing."
    ]


def test_a_number_that_never_comes() -> None:
    never = replace(entry("gun"), never_allowed=(2, 3))
    assert said(replace(CLEAN, entries=(never,))) == ["Gun: its roll never allows 2 or 3 of it."]


def test_what_another_makes_needless_in_every_game() -> None:
    better = Dominance(by="horse", is_alike=False)
    needless = replace(entry("gun"), prices={1: 2}, dominated=better)
    game = replace(CLEAN, entries=(needless,))
    assert said(game) == ["Gun: horse costs no more and gives all that it gives."]
    alike = replace(needless, dominated=replace(better, is_alike=True))
    assert said(replace(CLEAN, entries=(alike,))) == ["Gun: nothing tells it from horse."]
    needed = replace(CLEAN, entries=(replace(needless, dominated=None),))
    assert said(game, needed) == []


def test_wasted_points_by_the_dice() -> None:
    game = replace(CLEAN, unspent=(0, 3), cheapest=4, allowance=chances({0: 3, 1: 1}))
    assert said(game) == [
        "Evening: no legal force spends all of 1 point (1/4, 25 in 100).",
        "Evening: fewer than 4 points buy nothing.",
    ]


def test_where_an_entry_stands_among_best_forces() -> None:
    both = entry("gun", InBest.EVERY, InBest.SOME)
    assert place_words(both, GAME) == "every 50 in 100, some 50 in 100"
    assert place_words(entry("gun", InBest.NONE), GAME) == "none"
    assert place_words(entry("gun", None, None), GAME) == "-"
    rare = replace(GAME, allowance=chances({0: 1}))
    assert place_words(entry("gun", InBest.EVERY), rare) == "every"
    assert place_words(both, replace(GAME, has_worths=False)) == ""
    assert place_words(entry("gun"), GAME) == ""
    assert Fraction(1, 2) == both.chance_of(InBest.SOME, allowance=None)


def test_what_the_rules_put_into_every_force_is_no_news_of_the_best() -> None:
    needed = entry("gun", InBest.EVERY, InBest.EVERY)
    levels = tuple(replace(level, holding=level.legal) for level in needed.levels)
    assert said(replace(GAME, entries=(replace(needed, levels=levels),))) == said(
        replace(GAME, entries=())
    )
