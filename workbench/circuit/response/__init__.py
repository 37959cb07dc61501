"""What an edge and a pixel become on the way from the pins to the monitor.

Start reading in ``path.py`` (network, cable and load as one transfer). Without a cable the answer is
a sum of exponentials, taken in closed form at the very instants asked for (``poles.py``). With one,
the first arrival is known at any instant too (``arrival.py``; ``laplace.py`` where the cable has loss), and
the echoes are summed in the frequency domain (``line.py``, ``echoes.py``) and brought back by an inverse
Fourier transform.
"""

from workbench.circuit.response.glitch import Glitch, glitches
from workbench.circuit.response.pulse import PixelPulse, pixel_pulse
from workbench.circuit.response.step import Step, step_figures

__all__ = ["Glitch", "PixelPulse", "Step", "glitches", "pixel_pulse", "step_figures"]
