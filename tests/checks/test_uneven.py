"""Findings on the pixels of a fractional divider."""

from workbench.checks import Severity


def test_even_pixels_raise_nothing(board, found):
    assert found(board(), "uneven-pixels") is None


def test_steady_lines_are_a_note_with_the_length_of_a_clock(board, found):
    finding = found(board(pixel_divider=5.25), "uneven-pixels")

    # 1 / (25.175 MHz * 5.25) = 7.566 ns, 1 / 5.25 = 19.05 %; 800 * 5.25 is whole.
    assert finding.severity is Severity.INFO
    assert "5 or 6 system clocks, uneven by 7.57 ns (19.05 % of a pixel), all lines alike" in finding.headline


def test_lines_of_two_lengths_are_a_warning(board, found):
    finding = found(board(pixel_divider=5.30078125), "uneven-pixels")

    assert finding.severity is Severity.WARN
    assert "lines differ by one clock too" in finding.headline
