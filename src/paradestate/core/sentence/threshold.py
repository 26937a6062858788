"""Where the goods of a source stand to the values from which it charges otherwise, in words."""

from collections.abc import Iterator

from paradestate.core.money import Currency, money_text
from paradestate.core.number import percent_text
from paradestate.core.sentence.wording import listed
from paradestate.core.threshold import Standing, Threshold


def threshold_words(threshold: Threshold, *, currency: Currency) -> str:
    """What holds from a value on: `£40: carriage free`."""
    said = []
    if threshold.sends:
        said.append("sends from here")
    if threshold.discount_rate is not None:
        said.append(f"{percent_text(threshold.discount_rate)} off")
    if threshold.carriage is not None:
        charged = money_text(threshold.carriage, currency)
        said.append(f"carriage {charged}" if threshold.carriage else "carriage free")
    return f"{short_money(threshold.at, currency)}: {listed(said)}"


def short_money(amount: int, currency: Currency) -> str:
    """Money without idle noughts: `£40`."""
    return money_text(amount, currency).removesuffix(".00")


def standing_words(standing: Standing, *, currency: Currency) -> str:
    """Where the goods stand, in a sentence, such as `Goods £50.00, on the line`."""
    goods, above, short = standing.goods, standing.above, standing.short
    said = [f"Goods {money_text(goods, currency)}"]
    if above == 0:
        said.append("on the line")
    elif above is not None:
        said.append(f"{money_text(above, currency)} above the line")
    if short is not None:
        line = "the line" if above is None else "the next"
        said.append(f"{money_text(short, currency)} below {line}")
    return f"{', '.join(said)}."


def at_other_goods(standing: Standing, *, currency: Currency) -> Iterator[str]:
    """What goods on the other side of the nearest lines would cost."""
    below, following, short = standing.just_below, standing.following, standing.short
    if below is not None:
        yield (
            f"At {money_text(below.goods, currency)} of goods it would cost "
            f"{money_text(below.total, currency)}."
        )
    if following is not None and short is not None:
        yield (
            f"With {money_text(short, currency)} more, at {short_money(following.at, currency)} of "
            f"goods, it would cost {money_text(following.charge.total, currency)}."
        )
