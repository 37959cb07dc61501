"""The drawing of a scanline: well formed, on the page, readable without colour."""

import itertools
import re
import xml.etree.ElementTree as ET

import pytest

from tests.exports.boards import solved
from workbench.exports.scanline_svg import scanline_svg
from workbench.picture.scene import Card, Picture

SVG = "{http://www.w3.org/2000/svg}"


def drawn(**settings):
    return ET.fromstring(scanline_svg(solved(**settings)))


def traces(svg):
    return [path for path in svg.iter(f"{SVG}path") if path.get("class") == "trace"]


def points(path):
    return [tuple(map(float, pair.split())) for pair in re.split("[ML]", path.get("d"))[1:]]


def test_five_traces_are_told_apart_by_name_and_dashes():
    svg = drawn()

    texts = [text.text for text in svg.iter(f"{SVG}text")]
    assert {"red", "green", "blue", "H sync", "V sync"} <= set(texts)
    colours, syncs = traces(svg)[:3], traces(svg)[3:]
    assert len({path.get("stroke-dasharray") for path in colours}) == 3
    assert len({path.get("stroke-dasharray") for path in syncs}) == 2


def test_regions_are_named_with_their_widths():
    texts = [text.text for text in drawn().iter(f"{SVG}text")]

    for expected in ("front porch", "back porch", "96 px, 3.813 µs", "640 px, 25.422 µs"):
        assert expected in texts


@pytest.mark.parametrize("card", [Card.COLOUR_BARS, Card.CHECKERBOARD], ids=lambda card: card.value)
def test_everything_lies_on_the_page(card):
    svg = drawn(picture=Picture(card))
    width, height = float(svg.get("width")), float(svg.get("height"))

    for path in traces(svg):
        assert all(0 < x < width and 0 < y < height for x, y in points(path))
    for text in svg.iter(f"{SVG}text"):
        assert float(text.get("y")) < height


def test_no_pixel_of_a_fine_pattern_is_lost():
    red = traces(drawn(picture=Picture(Card.STRIPES)))[0]
    heights = [y for _, y in points(red)]
    middle = (max(heights) + min(heights)) / 2

    crossings = sum((a < middle) != (b < middle) for a, b in itertools.pairwise(heights))

    assert crossings == 640 - 1 + 1  # up and down 320 times; the last pixel of the line is black


def test_white_is_drawn_at_its_voltage():
    svg = drawn(picture=Picture(Card.SOLID))
    ticks = {t.text: float(t.get("y")) - 4 for t in svg.iter(f"{SVG}text") if "figure dim" in t.get("class")}
    top = min(y for _, y in points(traces(svg)[0]))

    # ticks of the last colour lane win in the dictionary; all lanes are equal, so shift to the first
    first = min(float(t.get("y")) - 4 for t in svg.iter(f"{SVG}text") if t.text == "0.8 V")
    per_volt = (ticks["0.2"] - ticks["0.6"]) / 0.4
    assert (first - top) / per_volt + 0.8 == pytest.approx(0.7431, abs=0.001)


def test_a_name_with_markup_is_text():
    svg = drawn(name='tide & "slip" <1>')

    assert svg.find(f"{SVG}title").text == 'tide & "slip" <1>: scanline 1 of 525'
