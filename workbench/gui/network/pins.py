"""What a person does to the pins: hold a code on them, or let one go."""

from PySide6.QtCore import QObject

from workbench.circuit.codes import pin_states, with_pin
from workbench.circuit.network import Zeros
from workbench.gui.bench import Bench
from workbench.gui.network.shown import PinState, Source, pick_code
from workbench.pipeline.result import Result
from workbench.project.document import Channel

__all__ = ["PinKeys"]


class PinKeys(QObject):
    """Forces pins of the drawn channel, of all three where they are linked; forgets on release.

    What is held lies in the view state, so the plot and the pages show it too.
    """

    def __init__(self, bench: Bench, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._bench = bench

    def code(self, channel: Channel, result: Result) -> tuple[int, Source]:
        """Return the code on a channel's pins, and where it comes from."""
        view = self._bench.view
        return pick_code(channel, result, view.held(channel), view.pixel)

    def floating(self, channel: Channel) -> frozenset[int]:
        """Return the pins that are let go, counted from the most significant bit."""
        return self._bench.view.floating(channel)

    def toggle(self, channel: Channel, result: Result, pin: int) -> None:
        """Force a 1 where a 0 is, and a 0 where a 1 is or nothing."""
        code, _ = self.code(channel, result)
        states = pin_states(result.project.channels[channel])
        high = bool(states[code, pin]) or pin in self.floating(channel)
        self.force(channel, result, pin, PinState.LOW if high else PinState.HIGH)

    def force(self, channel: Channel, result: Result, pin: int, state: PinState) -> None:
        """Hold the code that is on the pins now, with one pin in another state."""
        project = result.project
        code, _ = self.code(channel, result)
        floating = self.floating(channel) - {pin}
        if state is PinState.FLOATING and project.driver.zeros is Zeros.DRIVEN:
            floating |= {pin}
        code = with_pin(project.channels[channel], code, pin, high=state is PinState.HIGH)
        channels = tuple(Channel) if project.linked else (channel,)
        self._bench.view.hold(channels, code, floating)

    def release(self) -> None:
        """Give the pins of all channels back to the picture."""
        self._bench.view.hold(tuple(Channel), None)
