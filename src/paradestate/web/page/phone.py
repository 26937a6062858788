"""The computer's own page about phones: how one is let in, which are, and how one is put out.

It isn't there for a phone: nobody who came in by it can let in another.
"""

from starlette.exceptions import HTTPException
from starlette.responses import Response

from paradestate.web.phone.listener import PhoneListener
from paradestate.web.phone.pairing import SECONDS
from paradestate.web.visit import Visit

PATH = "/phone"
AUTHORITY = "/authority.crt"
"""On the phone's own listener."""
MINUTE = 60


def show(visit: Visit) -> Response:
    """What can reach this computer, the word if one is good, and the devices."""
    phone = visit.site.phone
    if phone is None:
        return visit.page("phone_off.html", folder=visit.site.folder)
    word = phone.pairing.word
    return visit.page(
        "phone.html",
        phone=phone,
        devices=phone.devices.all(),
        today=visit.today,
        word=word,
        code=None if word is None else phone.code(word),
        minutes_left=-(-phone.pairing.seconds_left // MINUTE),
        minutes=SECONDS // MINUTE,
    )


def authority(visit: Visit) -> Response:
    """What a paired phone installs, so that its browser trusts this computer and keeps its page."""
    return Response(visit.site.authority, media_type="application/x-x509-ca-cert")


def new_word(visit: Visit) -> Response:
    """Makes a word that lets one phone in."""
    _listener(visit).pairing.begin()
    return visit.to(PATH)


def end_word(visit: Visit) -> Response:
    """Takes the word back."""
    _listener(visit).pairing.end()
    return visit.to(PATH)


def remove(visit: Visit) -> Response:
    """Puts a device out."""
    _listener(visit).devices.remove(visit.form.text("device"))
    return visit.to(f"{PATH}#devices")


ACTIONS = {"word": new_word, "no-word": end_word, "remove": remove}


def _listener(visit: Visit) -> PhoneListener:
    if visit.site.phone is None:
        raise HTTPException(409, "No phone can reach this computer. Nothing was changed.")
    return visit.site.phone
