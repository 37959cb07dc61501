"""Networks that make no sense and modes of a few pixels: shown as they are, never a crash."""

from collections.abc import Callable
from dataclasses import replace

import numpy as np
import pytest

from workbench.circuit.ladders import weighted
from workbench.circuit.network import Cable, Load, Network
from workbench.gui.scanline import ScanlinePanel
from workbench.gui.scanline.content.presets import Preset
from workbench.project.document import Channels, Project
from workbench.timing.custom import make_mode
from workbench.timing.mode import Axis, Polarity
from workbench.timing.search import find_mode

ONE = Axis(1, 0, 1, 0, Polarity.POSITIVE)


def with_network(project: Project, network: Network) -> Project:
    return replace(project, channels=Channels(network, network, network))


CHANGES: dict[str, Callable[[Project], Project]] = {
    "no resistors": lambda p: with_network(p, replace(p.channels.red, resistors=(), capacitors=())),
    "no pins": lambda p: with_network(p, Network((), ())),
    "one bit": lambda p: with_network(p, weighted(1, [350.0])),
    "two pixels": lambda p: replace(p, mode=make_mode(ONE, ONE, 100_000), scanline=1),
    "long lines": lambda p: replace(p, mode=find_mode("2560x1600@60"), scanline=1600),
    "echoes": lambda p: replace(p, cable=Cable(10.0), load=Load(ohms=1000.0)),
    "uneven pixels of one clock or two": lambda p: replace(p, pixel_divider=1.00390625),
    "two uneven pixels": lambda p: replace(
        p, mode=make_mode(ONE, ONE, 100_000), scanline=2, pixel_divider=333.5
    ),
}


@pytest.mark.parametrize("change", CHANGES.values(), ids=CHANGES.keys())
def test_every_preset_is_drawn(
    make_panel: Callable[..., ScanlinePanel], project: Project, change: Callable[[Project], Project]
) -> None:
    panel = make_panel(change(project))

    for preset in Preset:
        panel.choose_preset(preset)
        panel.grab()

    readout = panel.looking.readings.readout()
    assert np.isfinite((*readout.here.volts, *readout.there.volts)).all()
    low, high = panel.plot.colour.box.viewRange()[1]
    assert low < 0 < max(readout.here.volts[:3]) + 1e-9 <= high + 1e-9
