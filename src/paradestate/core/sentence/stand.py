"""What one stand pattern comes to, in English."""

from fractions import Fraction

from paradestate.core.abreast import Abreast
from paradestate.core.fit import Fit, Fits
from paradestate.core.money import half_up, minor_text
from paradestate.core.outline import decimal_text
from paradestate.core.ratio import Ratio
from paradestate.core.sentence.wording import counted, listed, several
from paradestate.core.stand_account import Calling, StandAccount, Unplaced

OPEN_BELOW, CLOSE_ABOVE = Fraction(1, 10), Fraction(1, 5)
"""Shares of a base covered that people find neither sparse nor dense (common taste, no source)."""


def crowding_words(share: Fraction) -> str:
    """How crowded a stand is: `usual order, 14.1% of the base`."""
    if share > 1:
        order = "more than there is"
    elif share > CLOSE_ABOVE:
        order = "close order"
    else:
        order = "open order" if share < OPEN_BELOW else "usual order"
    return f"{order}, {tenth(share * 100)}% of the base"


def tenth(number: Fraction) -> str:
    """A number rounded half up to one decimal."""
    return minor_text(half_up(number * 10), places=1)


def hundredth(number: Fraction) -> str:
    """A number rounded half up to two decimals."""
    return minor_text(half_up(number * 100), places=2)


def chain_words(account: StandAccount) -> str:
    """How the number that is raised comes about; empty where there is nothing to multiply."""
    chain = account.chain
    return f"{account.must} = {chain}" if " x " in chain or " + " in chain else ""


def ratio_words(ratio: Ratio) -> str:
    """Men to a figure, exact: `2.5`, `1 2/3`, or the least and most."""
    least, most = _mixed(ratio.least), _mixed(ratio.most)
    return least if least == most else f"{least} to {most}"


def _mixed(number: Fraction) -> str:
    """A decimal where that ends, else a whole number and a fraction."""
    text = decimal_text(number)
    if "/" not in text:
        return text
    whole, rest = divmod(number, 1)
    return f"{whole} {rest}" if whole else text


def room_words(account: StandAccount) -> str:
    """Whether its figures have room, and how that is known."""
    if isinstance(account.room, Fit):
        return _fit_words(account, account.room.fits)
    match account.room:
        case Unplaced.NO_FIGURES:
            return "it holds no figures"
        case Unplaced.NO_BASE:
            return "it has no base to stand on"
        case Unplaced.NO_FOOTPRINT:
            return f"not known: {listed(account.unknown)} {_has(account)} no footprint in the files"
        case Unplaced.TOO_MANY:
            number = sum(account.stand.modelled.values())
            return f"not known: {number} figures found no place in columns, and no more was tried"


def _fit_words(account: StandAccount, fits: Fits) -> str:
    margins = margin_words(account)
    without = counted(account.without_place)
    match fits:
        case Fits.YES:
            return f"for all, with {margins}"
        case Fits.NO:
            return f"none for {without}: figures of more area than the base, which proves it"
        case Fits.NOT_FOUND:
            return f"none was found for {without} by trying, with {margins}; that is no proof"


def _has(account: StandAccount) -> str:
    return "has" if len(account.unknown) == 1 else "have"


def margin_words(account: StandAccount) -> str:
    """What is kept free: `1 mm at the edge and 1 mm between`."""
    stand = account.stand
    edge, gap = decimal_text(stand.edge), decimal_text(stand.gap)
    return f"{edge} mm at the edge and {gap} mm between"


def raised_words(account: StandAccount) -> str:
    """How many the force raises: `24 raised`, `1 wished`."""
    match account.calling:
        case Calling.MUST:
            return f"{account.must} raised"
        case Calling.WISHED:
            return f"{account.wished} wished"
        case Calling.SUPPORTING:
            return f"for {listed(account.asked_for_by)}"
        case Calling.NOBODY:
            return "not raised"


def lead_words(accounts: tuple[StandAccount, ...]) -> str:
    """Whether the figures of all these kinds have room, in one or two sentences."""
    short = [each.stand.name for each in accounts if each.without_place]
    unknown = [
        each.stand.name
        for each in accounts
        if each.room in {Unplaced.NO_FOOTPRINT, Unplaced.TOO_MANY}
    ]
    if short:
        said = f"On {listed(short)} no room was found for all figures."
    elif unknown:
        said = f"On {listed(unknown)} nobody knows whether there is room for all figures."
    else:
        said = "On each there is room for all its figures."
        if len(accounts) == 1:
            said = "On it there is room for all figures."
    return f"{several(len(accounts), 'kind')} of stand. {said}"


def line_words(line: Abreast) -> str:
    """How much of the table, and of the ground, the platoons of a body take in line."""
    verb = "covers" if len(line.platoons) == 1 else "cover"
    said = f"{line.name}: {several(len(line.platoons), 'platoon')} in line {verb} "
    said += f"{decimal_text(line.front)} mm"
    if line.table_width is not None:
        width = decimal_text(line.table_width)
        fits = "" if line.fits_the_table else ", more than there is"
        said += f" of the {width} mm of the table{fits}"
    if line.his_front is None:
        return f"{said}."
    theirs = decimal_text(line.his_front)
    difference = difference_words(line.his_front / line.front)
    return f"{said}. As many of his cover {theirs} mm, {difference}."


def difference_words(ratio: Fraction) -> str:
    """His front over ours, in per cent: `20% more`."""
    if ratio == 1:
        return "the same"
    percent = decimal_text(Fraction(half_up(abs(ratio - 1) * 1000), 10))
    return f"{percent}% {'more' if ratio > 1 else 'less'}"
