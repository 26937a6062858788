"""The whole force in sentences, in the order of the format."""

from collections.abc import Iterator
from dataclasses import dataclass

from paradestate.core.force import Force
from paradestate.core.game import Game
from paradestate.core.place import KeyPath
from paradestate.core.sentence import (
    campaign,
    club,
    loss_limit,
    purchase,
    scenario,
    setting,
    support,
    troops,
)
from paradestate.core.sentence.wording import listed, window_words
from paradestate.core.support.entry import Asking


@dataclass(frozen=True, slots=True, kw_only=True)
class Sentence:
    """What one entry says, and its key path."""

    path: KeyPath
    text: str


def sentences(force: Force) -> tuple[Sentence, ...]:
    """Every entry of a force as a sentence."""
    found = (*_opening(force), *_troops(force), *_purchases(force), *_points(force))
    return tuple(Sentence(path=path, text=text) for path, text in (*found, *_settings(force)))


Said = Iterator[tuple[KeyPath, str]]


def _opening(force: Force) -> Said:
    yield ("title",), f"{force.title}."
    if force.about:
        yield ("about",), f"About: {force.about}"
    if force.drawn_from:
        yield ("drawn from",), f"Drawn from: {listed(force.drawn_from)}."
    if force.private:
        yield ("private",), "Private: it is never shared or published."
    if force.aim is not None:
        yield ("aim",), setting.aim_sentence(force.aim)
    if not force.covers.is_open:
        yield ("covers",), f"The folder knows dates{window_words(force.covers)}."


def _troops(force: Force) -> Said:
    for figure in force.figures.values():
        yield ("figures", figure.name), troops.figure_sentence(figure)
    for stand in force.stands.values():
        yield ("stands", stand.name), troops.stand_sentence(stand)
    for formation in force.formations.values():
        yield ("formations", formation.name), troops.formation_sentence(formation)
    if force.raise_ is not None:
        yield ("raise",), troops.raise_sentence(force.raise_)


def _purchases(force: Force) -> Said:
    for kind, stages in force.stock.items():
        yield ("stock", kind), purchase.stock_sentence(kind, stages)
    for stand, stages in force.stock_stands.items():
        yield ("stock stands", stand), purchase.stock_sentence(f"{stand} stand", stages)
    for source in force.sources.values():
        yield ("sources", source.name), purchase.source_sentence(source)
        for pack in source.packs.values():
            path = ("sources", source.name, "packs", pack.name)
            yield path, purchase.pack_sentence(pack, currency=source.currency)


def _points(force: Force) -> Said:
    for game in force.games.values():
        yield ("games", game.name), support.game_sentence(game)
        yield from _scenario(game)
    if force.formation_cost:
        yield ("formation cost",), support.formation_cost_sentence(force.formation_cost)
    for grade in force.grades.values():
        yield ("grades", grade.name), support.grade_sentence(grade)
    for entry in force.supporting_troops.values():
        yield ("supporting troops", entry.name), support.entry_sentence(entry)
    if force.asking is Asking.ALL_DECLARED_FIRST:
        yield ("asking",), "Those who need a roll are all declared before the first roll."
    for number, limit in enumerate(force.limits, start=1):
        yield ("limits", str(number)), support.group_limit_sentence(limit)
    if force.reserves is not None:
        yield ("reserves",), support.reserves_sentence(force.reserves)
    for worth in force.worths.values():
        yield ("worths", worth.entry), support.worth_sentence(worth)


def _scenario(game: Game) -> Said:
    for formation, strength in game.strengths.items():
        path = ("games", game.name, "strengths", formation)
        yield path, scenario.strength_sentence(formation, strength, game=game.name)
    for name, arrival in game.arrivals.items():
        path = ("games", game.name, "arrivals", name)
        yield path, scenario.arrival_sentence(name, arrival, game=game.name)


def _between_games(force: Force) -> Said:
    for path, text in campaign.campaign_sentences(force.campaign):
        yield ("campaign", *path), text
    for path, text in club.club_sentences(force.club):
        yield ("club", *path), text


def _settings(force: Force) -> Said:
    for text in setting.sentences_of_bench(force.bench):
        yield ("bench",), text
    yield from _between_games(force)
    if force.states:
        yield ("states",), f"States at the table: {listed(force.states)}."
    for path, text in loss_limit.loss_limits_sentences(force.loss_limits):
        yield ("loss limits", *path), text
    for text in setting.marks_sentences(force.marks):
        yield ("marks",), text
    if force.opponent is not None:
        yield ("opponent",), setting.opponent_sentence(force.opponent)
    for tray in force.trays.values():
        yield ("trays", tray.name), setting.tray_sentence(tray)
    for tray_name, places in force.packed.items():
        yield ("packed", tray_name), setting.packed_sentence(tray_name, places)
    if force.table is not None:
        yield ("table",), setting.table_sentence(force.table)
    if force.by_hand:
        yield ("by hand",), f"By hand, not checked by machine: {force.by_hand}."
