"""Which deliberate faults are on, and the run of the engine with them."""

from collections.abc import Callable
from dataclasses import dataclass, replace

from PySide6.QtCore import QObject, Signal

from workbench.bringup.faults import Fault, Setup, switched_on
from workbench.errors import EditError
from workbench.pipeline.result import Result
from workbench.pipeline.run import Pipeline
from workbench.project.document import Channel, Project
from workbench.waveform.monitor import Monitor

__all__ = ["FaultSwitch", "InForce"]


@dataclass(frozen=True, slots=True)
class InForce:
    """A fault that is switched on, and the channel it sits in."""

    fault: Fault
    channel: Channel

    @property
    def words(self) -> str:
        """Return its name, with the channel where it sits in one."""
        return f"{self.fault.name} ({self.channel.value})" if self.fault.one_channel else self.fault.name


class FaultSwitch(QObject):
    """Holds the faults that are on; puts them between the project and the engine.

    The session never hears of them, so they can neither be saved nor undone: what is designed
    stays as it is, and what is shown is the broken board.
    """

    changed = Signal()

    def __init__(self, run: Callable[..., Result] | None = None, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._run = run or Pipeline().run
        self._on: tuple[InForce, ...] = ()
        self._refused: dict[str, str] = {}

    @property
    def on(self) -> tuple[InForce, ...]:
        """The faults that are on, in the order in which they were switched on."""
        return self._on

    @property
    def refused(self) -> dict[str, str]:
        """Why a fault that is on does nothing on this board, by its id."""
        return self._refused

    def is_on(self, fault: Fault) -> bool:
        """Return whether a fault is on."""
        return any(each.fault.id == fault.id for each in self._on)

    def turn(self, fault: Fault, *, on: bool, channel: Channel = Channel.RED) -> None:
        """Switch a fault on, in a channel, or off; on again means in another channel."""
        others = tuple(each for each in self._on if each.fault.id != fault.id)
        wanted = (*others, InForce(fault, channel)) if on else others
        if wanted != self._on:
            self._on = wanted
            self.changed.emit()

    def end_all(self) -> None:
        """Switch every fault off."""
        if self._on:
            self._on = ()
            self.changed.emit()

    def setup(self, project: Project, monitor: Monitor | None = None) -> Setup:
        """Return a board with the faults in it; those that are not possible on it are left out."""
        made = Setup(project, monitor=monitor or Monitor())
        self._refused = {}
        for each in self._on:
            try:
                made = switched_on(made, [(each.fault, each.channel)])
            except EditError as reason:
                self._refused[each.fault.id] = str(reason)
        return made

    def run(self, project: Project) -> Result:
        """Run a project with the faults in it; without any it is the project itself that runs."""
        if not self._on:
            return self._run(project)
        broken = self.setup(project)
        result = self._run(broken.project, broken.slips, design=project)
        # A remedy would be an edit of the design, which is not what is broken.
        findings = tuple(replace(finding, remedy=None) for finding in result.findings)
        return replace(result, findings=findings)
