"""Job cards and colour cards for programs; times are minutes, fractions as strings."""

from collections.abc import Mapping

from paradestate.cli.bench_supplies_json import cautions_json
from paradestate.cli.count_json import fraction_json
from paradestate.core.bench import Coat
from paradestate.core.work.coats import Part
from paradestate.core.work.job_card import ColourCard, JobCard
from paradestate.journeys.paper.papers import Papers


def cards_json(cards: Papers) -> dict[str, object]:
    """The cards with the keys that programs rely on."""
    return {
        "cards": [_job(card) for card in cards.jobs],
        "colours": [_colours(card) for card in cards.colours],
        "cautions": cautions_json(),
    }


def _job(card: JobCard) -> Mapping[str, object]:
    return {
        "batch": card.rung.number,
        "pattern": card.rung.pattern,
        "minutes": fraction_json(card.rung.minutes),
        "set_up": fraction_json(card.rung.set_up),
        "stands": [
            {
                "name": stand.name,
                "to_reach": [
                    stage
                    for stage, done in zip(card.stages, stand.is_done, strict=True)
                    if not done
                ],
                "lacking": dict(stand.lacking),
            }
            for stand in card.stands
        ],
        "parts": [{**_part(each.part), "kinds": list(each.kinds)} for each in card.parts],
        "dry": {stage: fraction_json(minutes) for stage, minutes in card.dry.items()},
        "takes_turns_with": card.rung.takes_turns_with,
        "completes": list(card.rung.completes),
    }


def _colours(card: ColourCard) -> Mapping[str, object]:
    return {
        "kind": card.kind,
        "figures": card.number,
        "patterns": list(card.patterns),
        "parts": [_part(part) for part in card.parts],
    }


def _part(part: Part) -> Mapping[str, object]:
    return {"part": part.name, "coats": [_coat(coat) for coat in part.coats]}


def _coat(coat: Coat) -> Mapping[str, object]:
    return {"colour": coat.colour, "coats": coat.coats, "share": fraction_json(coat.share)}
