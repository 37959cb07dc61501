import pytest

from workbench.gui.network.bands import DIGITS, bands
from workbench.gui.theme import BANDS


@pytest.mark.parametrize(
    ("ohms", "tolerance", "colours"),
    [
        # The three examples of IEC 60062 as given at tnlab.org.
        (75.0, 0.05, "violet green black gold"),
        (499.0, 0.01, "yellow white white black brown"),
        (4700.0, 0.05, "yellow violet red gold"),
        (510.0, 0.01, "green brown brown brown"),
        (0.5, 0.05, "green black silver gold"),
        (1e6, 0.10, "brown black green silver"),
    ],
)
def test_bands_of_known_values(ohms: float, tolerance: float, colours: str) -> None:
    assert " ".join(bands(ohms, tolerance)) == colours


@pytest.mark.parametrize(("ohms", "tolerance"), [(267.857, 0.01), (500.0, 0.03), (1e12, 0.01), (0.0, 0.01)])
def test_a_value_that_cannot_be_marked_has_no_bands(ohms: float, tolerance: float) -> None:
    assert bands(ohms, tolerance) == ()


def test_every_band_has_a_colour_of_its_own() -> None:
    assert set(DIGITS) <= set(BANDS)
    assert len(set(BANDS.values())) == len(BANDS)
