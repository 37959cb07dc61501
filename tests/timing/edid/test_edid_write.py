from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from workbench.errors import TimingError
from workbench.timing.edid.read import read_edid
from workbench.timing.edid.values import AnalogInput, Limits, Product, SyncLevels
from workbench.timing.edid.write import Display, write_edid
from workbench.timing.formulas.cvt import cvt
from workbench.timing.formulas.gtf import GtfCurve
from workbench.timing.search import find_mode

ROWER = Product("ROW", code=17, serial=4, week=20, year=2024, name="Tide board")
FLAGS = st.booleans()
TEXTS = st.text(st.characters(min_codepoint=0x21, max_codepoint=0x7E), min_size=1, max_size=13)
PRODUCTS = st.builds(
    Product,
    maker=st.text("ABCDEFGHIJKLMNOPQRSTUVWXYZ", min_size=3, max_size=3),
    code=st.integers(0, 0xFFFF),
    serial=st.integers(0, 0xFFFFFFFF),
    week=st.integers(0, 54),
    year=st.integers(1990, 2245),
    name=TEXTS,
    serial_text=TEXTS,
)
INPUTS = st.builds(AnalogInput, st.sampled_from(SyncLevels), FLAGS, st.just(True), FLAGS, FLAGS, FLAGS)


@st.composite
def limits(draw: st.DrawFn) -> Limits:
    v = sorted(draw(st.tuples(st.integers(1, 254), st.integers(1, 254))))
    h = sorted(draw(st.tuples(st.integers(1, 254), st.integers(1, 254))))
    clock = draw(st.none() | st.integers(1, 254).map(lambda tens: tens * 10e6))
    curve = draw(
        st.none() | st.builds(GtfCurve, st.just(40.0), st.integers(0, 65535), st.just(128), st.just(20.0))
    )
    return Limits(*v, h[0] * 1e3, h[1] * 1e3, clock, gtf_curve=curve, gtf_start_hz=60e3 if curve else 0.0)


@given(PRODUCTS, INPUTS, limits(), st.tuples(st.integers(1, 255), st.integers(1, 255)))
def test_what_is_written_is_read(product, analog, monitor_limits, size_cm) -> None:
    mode = find_mode("1024x768@60")
    display = Display(product, (mode,), monitor_limits, analog, size_cm, gamma=2.2)

    edid = read_edid(write_edid(display))

    assert (edid.checksum_ok, edid.damages, edid.version) == (True, (), "1.3")
    assert (edid.product, edid.analog, edid.limits) == (product, analog, monitor_limits)
    assert (edid.size_cm, edid.gamma) == (size_cm, 2.2)
    assert [found.name for found in edid.modes] == ["1024x768@60"]


def test_each_mode_goes_where_it_costs_least() -> None:
    modes = [find_mode(name) for name in ("800x600@60", "640x480@60", "720x400@70", "1280x1024@60")]
    own = cvt(1000, 700, 60)
    own_name = f"1000x700@{own.field_rate_hz:.2f}"

    edid = read_edid(write_edid(Display(ROWER, (*modes, own))))

    assert [mode.name for mode in edid.detailed] == ["800x600@60", own_name]
    assert [mode.name for mode in edid.established] == ["720x400@70", "640x480@60"]
    assert [mode.name for mode in edid.standard] == ["1280x1024@60"]
    assert edid.damages == ()


@pytest.mark.parametrize(
    ("change", "part"),
    [
        ({"product": replace(ROWER, maker="Row")}, "three capital letters"),
        ({"product": replace(ROWER, maker="ROWS")}, "three capital letters"),
        ({"product": replace(ROWER, code=65536)}, "product code of 65536 does not fit"),
        ({"product": replace(ROWER, year=1989)}, "year of 1989"),
        ({"product": replace(ROWER, week=55)}, "week of 55"),
        ({"product": replace(ROWER, name="Fourteen signs")}, "13 plain letters"),
        ({"product": replace(ROWER, name="naïve")}, "13 plain letters"),
        ({"modes": ()}, "at least one mode"),
        ({"modes": tuple(cvt(width, 700, 60) for width in (1000, 1008, 1016, 1024))}, "5 are needed"),
        ({"gamma": 0.5}, "gamma of 0.5"),
        ({"size_cm": (256, 10)}, "picture side in cm of 256"),
        ({"limits": Limits(50, 300, 30e3, 70e3)}, "highest field rate of 300 Hz"),
        ({"limits": Limits(80, 60, 30e3, 70e3)}, "below its lowest"),
    ],
)
def test_what_does_not_fit_is_named(change, part: str) -> None:
    display = Display(ROWER, (find_mode("640x480@60"),))

    with pytest.raises(TimingError, match=part):
        write_edid(replace(display, **change))


def test_limits_are_widened_to_whole_units() -> None:
    display = Display(ROWER, (find_mode("640x480@60"),), Limits(59.9, 60.1, 31.4e3, 31.6e3, 25.2e6))

    assert read_edid(write_edid(display)).limits == Limits(59, 61, 31e3, 32e3, 30e6)
