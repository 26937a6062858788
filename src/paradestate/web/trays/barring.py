"""The stand that is taken up, and the rule that keeps it from each other place."""

from collections.abc import Mapping

from paradestate.core.sentence.tray import barred_sentence
from paradestate.core.tray.ground import Ground
from paradestate.core.tray.moving import Barred, Move, Swap, Transfer, Trays, home, moved


def keys_of(ground: Ground) -> Mapping[str, int]:
    """Every stand to its number in the organisation, by which moves name it."""
    return {thing.name: key for key, thing in enumerate(ground.things, start=1)}


def taken_up(ground: Ground, trays: Trays, *, key: int) -> str:
    """The stand of that number; empty where there is none, or it lies in no tray."""
    name = ground.things[key - 1].name if 0 < key <= len(ground.things) else ""
    is_laid = any(each.thing.name == name for tray in trays.values() for each in tray.lying)
    return name if is_laid else ""


def swap_rules(ground: Ground, trays: Trays, *, name: str) -> Mapping[str, str]:
    """Every other stand to the rule that keeps it from changing places; empty where none does."""
    return {
        each.thing.name: _rule(ground, trays, move=Swap(one=name, other=each.thing.name))
        for tray in trays.values()
        for each in tray.lying
        if each.thing.name != name
    }


def transfer_rules(ground: Ground, trays: Trays, *, name: str) -> Mapping[str, str]:
    """Every other tray to the rule that keeps the stand out of it; empty where none does."""
    here = home(trays, name)
    return {
        tray: _rule(ground, trays, move=Transfer(thing=name, to=tray))
        for tray in trays
        if tray != here
    }


def _rule(ground: Ground, trays: Trays, *, move: Move) -> str:
    after = moved(ground, trays, move=move)
    return barred_sentence(after) if isinstance(after, Barred) else ""
