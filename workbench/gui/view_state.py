"""What the person looks at and points at: shared by all panels, never saved in a project."""

from collections.abc import Mapping
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray
from PySide6.QtCore import QObject, Signal

from workbench.circuit.network import PartId
from workbench.project.document import Channel
from workbench.waveform.monitor import Monitor

__all__ = ["CodeBand", "ViewState"]


@dataclass(frozen=True, slots=True, eq=False)
class CodeBand:
    """Between which levels the boards of a channel lie, 98 of 100 of them."""

    low_volts: NDArray[np.float64]
    """Shape (n_codes,). [V]"""
    high_volts: NDArray[np.float64]
    """Shape (n_codes,). [V]"""


class ViewState(QObject):
    """Holds what is chosen, pointed at and held; every panel reads it and lights the same thing."""

    changed = Signal()
    """Anything below changed; panels repaint what they light."""

    def __init__(self, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._channel = Channel.RED
        self._chosen: PartId | None = None
        self._pointed: PartId | None = None
        self._held: dict[Channel, int] = {}
        self._floating: dict[Channel, frozenset[int]] = {}
        self._pixel: int | None = None
        self._monitor = Monitor()
        self._bands: Mapping[Channel, CodeBand] = {}

    @property
    def channel(self) -> Channel:
        """The channel that the network panel draws and that lies true in the plot."""
        return self._channel

    @property
    def chosen(self) -> PartId | None:
        """The part that was clicked, of the chosen channel."""
        return self._chosen

    @property
    def pointed(self) -> PartId | None:
        """The part under the pointer, of the chosen channel."""
        return self._pointed

    @property
    def pixel(self) -> int | None:
        """The place on the line under the *here* cursor, in pixels from the front porch's start."""
        return self._pixel

    @property
    def monitor(self) -> Monitor:
        """The monitor that looks at the picture, as the person set it."""
        return self._monitor

    @property
    def bands(self) -> Mapping[Channel, CodeBand]:
        """The bands of boards, drawn wherever levels are; empty while nobody looks at boards."""
        return self._bands

    def held(self, channel: Channel) -> int | None:
        """Return the code a person holds on the channel's pins; none while the picture drives them."""
        return self._held.get(channel)

    def floating(self, channel: Channel) -> frozenset[int]:
        """Return the pins that are let go while a code is held, counted from the most significant bit."""
        return self._floating.get(channel, frozenset())

    def show_bands(self, bands: Mapping[Channel, CodeBand]) -> None:
        """Draw the bands of other boards, or none."""
        if bands or self._bands:
            self._bands = dict(bands)
            self.changed.emit()

    def choose_channel(self, channel: Channel) -> None:
        """Draw another channel."""
        if channel is not self._channel:
            self._channel, self._chosen, self._pointed = channel, None, None
            self.changed.emit()

    def choose(self, part: PartId | None) -> None:
        """Choose a part of the drawn channel, or nothing."""
        if part != self._chosen:
            self._chosen = part
            self.changed.emit()

    def point(self, part: PartId | None) -> None:
        """Point at a part of the drawn channel, or at nothing."""
        if part != self._pointed:
            self._pointed = part
            self.changed.emit()

    def look_at(self, pixel: int | None) -> None:
        """Put the *here* cursor on a pixel of the line."""
        if pixel != self._pixel:
            self._pixel = pixel
            self.changed.emit()

    def set_monitor(self, monitor: Monitor) -> None:
        """Look at the picture with another monitor, or another setting of it."""
        if monitor != self._monitor:
            self._monitor = monitor
            self.changed.emit()

    def hold(
        self, channels: tuple[Channel, ...], code: int | None, floating: frozenset[int] = frozenset()
    ) -> None:
        """Hold a code on the pins of some channels, with some pins let go; ``None`` releases them."""
        before = dict(self._held), dict(self._floating)
        for channel in channels:
            self._held.pop(channel, None)
            self._floating.pop(channel, None)
            if code is not None:
                self._held[channel] = code
                self._floating[channel] = floating
        if before != (self._held, self._floating):
            self.changed.emit()
