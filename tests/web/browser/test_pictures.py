"""Pictures of few colours are the pictures that they were made from, and the docs have theirs."""

import base64
from pathlib import Path

import numpy as np
from playwright.sync_api import Browser

from tests.web.browser.pictures import IN_DOCS, KEPT, PIXELS
from tests.web.browser.small_png import MOST_COLOURS, Pixels, small_png

LARGEST = 200_000
"""Bytes of a picture in the docs."""


def read_back(browser: Browser, data: bytes) -> Pixels:
    page = browser.new_page()
    width, height, text = page.evaluate(
        PIXELS, f"data:image/png;base64,{base64.b64encode(data).decode()}"
    )
    page.close()
    return np.frombuffer(base64.b64decode(text), np.uint8).reshape(height, width, 4)[:, :, :3]


def test_a_picture_of_few_colours_stays_as_it_is(browser: Browser) -> None:
    pixels = np.zeros((7, 5, 3), np.uint8)
    pixels[2:4, 1:3] = (75, 44, 134)
    pixels[6, 4] = (252, 253, 250)
    assert (read_back(browser, small_png(pixels)) == pixels).all()


def test_of_many_colours_the_usual_ones_stay_and_the_others_are_near(browser: Browser) -> None:
    greys = np.arange(256, dtype=np.uint8)
    pixels = np.repeat(np.repeat(greys[None, :, None], 4, axis=0), 3, axis=2)
    pixels = np.concatenate([pixels, np.full((40, 256, 3), 128, np.uint8)])
    back = read_back(browser, small_png(pixels))
    assert (back[4:] == 128).all()
    assert len(np.unique(back.reshape(-1, 3), axis=0)) == MOST_COLOURS


def test_the_pictures_of_the_docs_are_there_and_small() -> None:
    assert {path.name for path in KEPT.iterdir()} == {f"{name}.png" for name in IN_DOCS}
    assert [path.name for path in Path(KEPT).iterdir() if path.stat().st_size > LARGEST] == []
