"""Where uneven pixels start on the screen."""

import numpy as np

from workbench.gui.scanline.content.scales import TimeScale
from workbench.gui.scanline.content.shown import Shown

__all__ = ["uneven_places"]


def uneven_places(shown: Shown, time: TimeScale, least: float) -> tuple[float, ...]:
    """Return where the pixels in sight start, the first always of an even number. [px]

    Empty where pixels are even, or narrower than ``least``.
    """
    if shown.starts is None or time.x(shown.count_s) - time.x(0.0) < least:
        return ()
    first = max(0, int(time.first_s / shown.count_s) - 2) // 2 * 2
    after = min(len(shown.starts), int(time.last_s / shown.count_s) + 3)
    return tuple(float(time.x(start * shown.count_s)) for start in np.asarray(shown.starts[first:after]))
