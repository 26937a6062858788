"""Forces written and read again."""

from random import Random

import yaml
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from paradestate.core.ceiling import ceiling
from paradestate.core.establishment import establishment
from paradestate.core.finding import stops
from paradestate.core.force import Force
from paradestate.core.strength import strength
from paradestate.text.folder import read_files
from paradestate.text.writing import PlainDumper, force_text
from tests.forces import marenz
from tests.text.forces import forces


def read_again(text: str) -> Force:
    reading = read_files({"force.yaml": text.encode()})
    assert stops(reading.findings) == (), text
    return reading.force


def test_the_example_reads_the_same_when_it_is_written() -> None:
    assert read_again(force_text(marenz())) == marenz()


@settings(suppress_health_check=[HealthCheck.too_slow, HealthCheck.data_too_large])
@given(forces())
def test_any_force_reads_the_same_when_it_is_written(force: Force) -> None:
    assert read_again(force_text(force)) == force


def shuffled(value: object, lot: Random) -> object:
    """The same mappings with their keys in another order; lists keep theirs."""
    if isinstance(value, dict):
        keys = list(value)
        lot.shuffle(keys)
        return {key: shuffled(value[key], lot) for key in keys}
    return [shuffled(item, lot) for item in value] if isinstance(value, list) else value


@settings(max_examples=25)
@given(st.randoms(use_true_random=False))
def test_a_permuted_file_gives_the_same_answers(lot: Random) -> None:
    written = yaml.load(force_text(marenz()), Loader=yaml.BaseLoader)  # noqa: S506 - text only
    force = read_again(yaml.dump(shuffled(written, lot), Dumper=PlainDumper, sort_keys=False))
    made, again = establishment(marenz())[0], establishment(force)[0]
    assert made is not None
    assert again is not None
    assert again.must == made.must
    assert again.wished == made.wished
    assert again.rollup.chains == made.rollup.chains
    assert strength(force, again).deficiency == strength(marenz(), made).deficiency
    assert ceiling(force, again) == ceiling(marenz(), made)
