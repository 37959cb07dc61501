import pytest

from workbench.timing.offsets import offset_words, ppm_figure


@pytest.mark.parametrize(
    ("ppm", "decimals", "words"),
    [
        (0.0, 2, "0 ppm"),
        (-0.001, 2, "0 ppm"),
        (993.05, 2, "+993.05 ppm"),
        (-6951.34, 0, "−6951 ppm"),
        (9_999.0, 0, "+9999 ppm"),
        (10_000.0, 2, "+1.0 %"),
        (-587_577.0, 0, "−58.8 %"),
    ],
)
def test_small_offsets_are_told_in_ppm_and_large_ones_in_percent(ppm, decimals, words) -> None:
    assert offset_words(ppm, decimals=decimals) == words


@pytest.mark.parametrize(
    ("ppm", "words"),
    [(0.2, "0"), (-0.004, "0"), (993.05, "+993"), (-168_532.4, "−168\u202f532"), (7.0, "+7")],
)
def test_a_figure_of_a_column_has_sign_and_thousands_apart(ppm, words):
    assert ppm_figure(ppm) == words
