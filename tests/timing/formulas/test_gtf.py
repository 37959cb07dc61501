import pytest

from workbench.errors import TimingError
from workbench.timing.formulas.gtf import DEFAULT_CURVE, GtfCurve, gtf
from workbench.timing.mode import Polarity


def test_default_curve_is_30_percent_less_300_per_khz() -> None:
    assert (DEFAULT_CURVE.offset_percent, DEFAULT_CURVE.gradient_percent_per_khz) == (30, 300)


def test_hits_the_wanted_refresh() -> None:
    assert gtf(1024, 768, 72.5).frame_rate_hz == pytest.approx(72.5, rel=1e-8)


def test_a_secondary_curve_swaps_the_polarities_and_blanks_less() -> None:
    default, secondary = gtf(1024, 768, 75), gtf(1024, 768, 75, curve=GtfCurve(c_percent=30))

    assert (default.h.polarity, default.v.polarity) == (Polarity.NEGATIVE, Polarity.POSITIVE)
    assert (secondary.h.polarity, secondary.v.polarity) == (Polarity.POSITIVE, Polarity.NEGATIVE)
    assert secondary.h.blanking < default.h.blanking


def test_lines_too_long_for_the_curve_are_refused() -> None:
    with pytest.raises(TimingError, match="too long for GTF's blanking curve"):
        gtf(320, 100, 60)
