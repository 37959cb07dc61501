"""What a monitor makes of a frame: black taken from the back porch, gain, sampling, light.

A model, and a friendly one. It knows the coupling capacitor and its clamp, the receiver's sampling
clock with its own idea of the line's total, a tube's bandwidth, clipping, and the power of 2.2. It
leaves out: noise, jitter of the sampling clock, the droop of a line between two clamps, sharpening,
scaling to another number of dots, the geometry of a tube, the pattern of its phosphors.

References
----------
.. [1] Coupling of 47 nF, and the clamp on the back porch rather than on the sync tip: data sheets of
       analog receivers for flat panels.
.. [2] Black sampled from 9 pixels after the trailing edge of H sync, for 20 pixels: one published
       receiver; both counts are registers, others differ.
.. [3] Sampling clock from H sync by a whole number, the line total the receiver believes in; its phase
       adjustable over a pixel: data sheet of an analog receiver.
.. [4] Video preamplifier of a tube, 140 MHz class: 3.2 ns rise, 4 ns fall (data sheet).
.. [5] H and V sync thresholds 0.8 and 2.0 V: display-controller installation guide (TTL levels).
"""

from dataclasses import dataclass
from enum import Enum

from workbench.picture.light import FULL_SCALE_VOLTS
from workbench.timing.mode import Mode
from workbench.timing.sampling import BLACK_DELAY, BLACK_LENGTH

__all__ = ["Monitor", "Screen"]


class Screen(Enum):
    """How a monitor turns a line into a row."""

    TUBE = "tube"
    PANEL = "flat panel"


@dataclass(frozen=True, slots=True)
class Monitor:
    """A monitor and how it is set."""

    screen: Screen = Screen.PANEL
    assumed: Mode | None = None
    """The mode it takes the signal for; none if it knows the very mode that is sent."""
    auto_adjust: bool = False
    """Whether it looks for the picture's edges and for the best phase in what is sent just now. It
    rests on bright edges, so a person lets it do that on a test card, and it remembers."""
    phase: float = 0.75
    """Instant of sampling within a pixel when it is not adjusted, ``0 … 1``: late, where pixels have
    settled, as one that was adjusted on fine detail. Our own. [1]"""
    full_volts: float = FULL_SCALE_VOLTS
    """Voltage above black that is shown as white, ``0 < full_volts``. [V]"""
    clamp_start: int = BLACK_DELAY
    """Pixels from the trailing edge of H sync to the sampling of black. [1] [2]_"""
    clamp_pixels: int = BLACK_LENGTH
    """Pixels for which black is sampled, ``1 <= clamp_pixels``. [1] [2]_"""
    coupling_farads: float = 47e-9
    """Coupling capacitor. [F] [1]_"""
    clamp_ohms: float = 100.0
    """Resistance through which the clamp charges it; an assumption, no source. [Ω]"""
    rise_s: float = 3.2e-9
    """Rise time of a tube's amplifier, 10 to 90 %. [s] [4]_"""

    def mode(self, sent: Mode) -> Mode:
        """Return the mode the picture is shown in."""
        return self.assumed or sent
