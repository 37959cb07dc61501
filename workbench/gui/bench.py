"""What every panel gets: the session, the live result, what is looked at, and how things look."""

from collections.abc import Callable
from dataclasses import dataclass, replace
from pathlib import Path
from typing import Protocol

from PySide6.QtCore import QObject, Signal
from PySide6.QtGui import QFont, QFontInfo

from workbench.errors import WorkbenchError
from workbench.gui.actions import Actions
from workbench.gui.faults.switch import FaultSwitch
from workbench.gui.live import LiveResult
from workbench.gui.settings import BASE_POINTS, THEME, Setting, Settings
from workbench.gui.theme import PROJECTOR, THEMES, Theme, Type
from workbench.gui.view_state import ViewState
from workbench.project.document import Channel, Project
from workbench.project.edits.channels import link_channels, unlink
from workbench.project.session import Session
from workbench.waveform.monitor import Monitor

__all__ = ["DESIGN_PX", "LINK_TIP", "PROJECTOR_PX", "Bench", "Dialogs", "Images", "Notice"]

LINK_TIP = (
    "While linked, an edit of one channel's network is made to all three. Linking gives the other two the "
    "values of the channel that is drawn."
)

DESIGN_PX = 14.0
"""Height of the base text for which sizes are written down in the panels. [px]"""

PROJECTOR_PX = 32.0
"""Height of the base text on a projector: 24 pt, so the last row can read it. [dots of the screen]"""


class Dialogs(Protocol):
    """How a panel asks for a file; the window's messages do it, tests put their own in place."""

    def open_path(self, title: str, folder: Path, kinds: str) -> Path | None:
        """Let the person choose a file to open; none if they change their mind."""

    def save_path(self, title: str, suggested: Path, kinds: str) -> Path | None:
        """Let the person choose where to write."""


class Images(Protocol):
    """How a panel brings an image into the project; the desk's loader does it."""

    def choose(self) -> None:
        """Ask for a file and show the image in it."""

    def load(self, path: Path) -> None:
        """Show the image in a file."""

    def paste(self) -> None:
        """Show the picture on the clipboard."""


@dataclass(frozen=True, slots=True)
class Notice:
    """One sentence shown inline, not modal; it fades by itself."""

    text: str
    warning: bool = False
    undo: bool = False
    """Whether it tells of the last step, and offers to take that back."""


class Bench(QObject):
    """Carries what the panels share; it draws nothing and computes nothing."""

    theme_changed = Signal()
    """Colours or type sizes are others: take ``theme`` and ``type`` again and repaint."""
    closing = Signal()
    """The window goes: work in other threads ends now."""
    noticed = Signal(object)
    """A :class:`Notice` to be shown inline."""

    def __init__(
        self,
        session: Session,
        live: LiveResult,
        settings: Settings,
        parent: QObject | None = None,
        *,
        faults: FaultSwitch | None = None,
    ) -> None:
        super().__init__(parent)
        self.faults = faults or FaultSwitch()
        """Deliberate faults; without a desk they are put into nothing."""
        self.images: Images | None = None
        """What brings images in; none while there is no window."""
        self.session = session
        self.live = live
        self.settings = settings
        self.view = ViewState(self)
        self.actions = Actions(self)
        self.dialogs: Dialogs | None = None
        """What asks for files; none while there is no window."""
        self._projecting, self._projector_px = False, PROJECTOR_PX
        self._theme, self._type = self._chosen_look()
        settings.changed.connect(self._on_setting)

    @property
    def theme(self) -> Theme:
        """The colours in force."""
        return self._theme

    @property
    def type(self) -> Type:
        """The faces and sizes in force."""
        return self._type

    @property
    def monitor(self) -> Monitor:
        """The monitor that looks at the picture; deliberate faults may set it otherwise than chosen."""
        return self.faults.setup(self.session.project, self.view.monitor).monitor

    @property
    def projecting(self) -> bool:
        """Whether the bench is shown at projector size."""
        return self._projecting

    def px(self, design: float) -> int:
        """Return a length written for a base text of 14 px, at the size in force. [px]"""
        return round(design * self._type.base_px / DESIGN_PX)

    def project_large(self, *, on: bool, base_px: float = PROJECTOR_PX) -> None:
        """Show the same bench at projector size, or at the person's own size again.

        ``base_px`` is the height of the base text there. [px]
        """
        if on != self._projecting:
            self._projecting, self._projector_px = on, base_px
            self._take_look()

    def apply(
        self,
        label: str,
        edit: Callable[[Project], Project],
        *,
        merge: object = None,
        origin: object = None,
        quiet: str = "",
    ) -> bool:
        """Make an edit; say why not, inline, when it cannot be made.

        Returns whether the project took it.
        """
        try:
            self.session.apply(label, edit, merge=merge, origin=origin, quiet=quiet)
        except WorkbenchError as reason:
            self.notice(str(reason), warning=True)
            return False
        return True

    @property
    def link_words(self) -> str:
        """What :meth:`toggle_link` would do now, and whose values would win."""
        if self.session.project.linked:
            return "Let the channels part"
        return f"Link to {self.view.channel.value}'s values"

    def toggle_link(self) -> None:
        """Link the channels to the one that is drawn, whose network wins, or let them part."""
        before, source = self.session.project, self.view.channel
        if before.linked:
            if self.apply(self.link_words, unlink):
                self.notice("The channels are apart: an edit is made to the drawn one alone.", undo=True)
            return
        others = [c.value for c in Channel if before.channels[c] != before.channels[source]]
        if self.apply(self.link_words, lambda project: link_channels(project, source)) and others:
            took = f"{' and '.join(others)} took its values; undo brings theirs back"
            self.notice(f"Linked to {source.value}: {took}.", undo=True)

    def notice(self, text: str, *, warning: bool = False, undo: bool = False) -> None:
        """Show one sentence inline; with ``undo`` it is about the last step and can take it back."""
        self.noticed.emit(Notice(text, warning, undo))

    def _chosen_look(self) -> tuple[Theme, Type]:
        if self._projecting:
            part = self._projector_px / PROJECTOR_PX
            trace_px, wire_px = PROJECTOR.trace_px * part, PROJECTOR.wire_px * part
            theme = replace(PROJECTOR, trace_px=trace_px, wire_px=wire_px)
            return theme, Type.of(self._projector_px, least=1.0)
        font = QFont(Type.of(DESIGN_PX).sans_family)
        font.setPointSizeF(self.settings.get(BASE_POINTS))
        return THEMES[self.settings.get(THEME)], Type.of(float(QFontInfo(font).pixelSize()))

    def _take_look(self) -> None:
        look = self._chosen_look()
        if look != (self._theme, self._type):
            self._theme, self._type = look
            self.theme_changed.emit()

    def _on_setting(self, setting: Setting) -> None:
        if setting in (THEME, BASE_POINTS):
            self._take_look()
