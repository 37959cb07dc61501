"""How a flat monitor samples a line whose pixel clock it cannot see.

It multiplies the line rate by the line total it believes in and samples the line at that clock.
Where its total is not the source's, samples drift from the middle of the pixels to their edges and
back: soft vertical bands.
"""

from dataclasses import dataclass

from workbench.timing.mode import Mode

__all__ = ["BLACK_DELAY", "BLACK_LENGTH", "BlackWindow", "SoftBands", "black_window", "soft_bands"]

# One receiver's published clamp setting, in its sampling clocks from the end of H sync. Both counts
# are registers; other receivers and settings differ.
BLACK_DELAY = 9
"""Sampling clocks from the end of H sync to the start of the black-level window. [1]"""
BLACK_LENGTH = 20
"""Sampling clocks of the black-level window. [1]"""


@dataclass(frozen=True, slots=True)
class SoftBands:
    """Where samples fall on the edges of pixels instead of their middles."""

    per_line: int
    """Bands in a whole line; 0 where samples and pixels keep step. [1]"""
    spacing_px: float
    """Distance from band to band, in the source's pixels; infinite without bands. [px]"""
    centres_px: tuple[float, ...]
    """Middle of each band inside the picture, from the picture's left edge. [px]"""


@dataclass(frozen=True, slots=True)
class BlackWindow:
    """When a receiver takes the level of black, and whether the back porch lasts as long."""

    start_s: float
    """From the end of H sync. [s]"""
    end_s: float
    back_porch_s: float
    fits: bool
    """Whether the window ends no later than the back porch."""


def soft_bands(mode: Mode, assumed_total: int) -> SoftBands:
    """Return the soft bands of a mode on a monitor that assumes another line total.

    Parameters
    ----------
    assumed_total : int
        Samples the monitor takes in a whole line, ``1 <= assumed_total``. [1]

    Notes
    -----
    With a whole number n of samples a pixel there are no bands (n = 2 is a picture of half the
    resolution). Otherwise samples drift against pixels by ``assumed_total - n × total`` pixels' worth
    a line, once for every band. The monitor is taken to have put its sampling phase right at the
    picture's left edge, as automatic adjustment looks for it; with another phase all bands move.

    Examples
    --------
    >>> from workbench.timing.search import find_mode
    >>> soft_bands(find_mode("640x480@60"), 802).centres_px
    (200.0, 600.0)
    """
    total = mode.h.total
    samples_a_pixel = max(1, round(assumed_total / total))
    per_line = abs(assumed_total - samples_a_pixel * total)
    if per_line == 0:
        return SoftBands(0, float("inf"), ())
    spacing_px = total / per_line
    inside = int(mode.h.active / spacing_px + 0.5)
    return SoftBands(per_line, spacing_px, tuple((band + 0.5) * spacing_px for band in range(inside)))


def black_window(mode: Mode, assumed_total: int) -> BlackWindow:
    """Return when a receiver that assumes a line total takes the level of black.

    Examples
    --------
    >>> from workbench.timing.search import find_mode
    >>> window = black_window(find_mode("640x480@60"), 800)
    >>> round(window.start_s * 1e6, 3), round(window.end_s * 1e6, 3), window.fits
    (0.357, 1.152, True)
    """
    sample_s = mode.line_s / assumed_total
    return BlackWindow(
        start_s=BLACK_DELAY * sample_s,
        end_s=(BLACK_DELAY + BLACK_LENGTH) * sample_s,
        back_porch_s=mode.h.back_porch * mode.pixel_s,
        fits=(BLACK_DELAY + BLACK_LENGTH) * mode.h.total <= mode.h.back_porch * assumed_total,
    )
