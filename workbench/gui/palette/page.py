"""The Palette page: the colours of the board, one of them in figures, the greys, the picture's error."""

from PySide6.QtCore import QRectF
from PySide6.QtGui import QColor, QGuiApplication, QPainter, QPaintEvent, QPen, QResizeEvent
from PySide6.QtWidgets import QWidget

from workbench.circuit.solution import Levels
from workbench.gui.bench import Bench
from workbench.gui.jobs import Job
from workbench.gui.palette.greys import Greys, grey_words
from workbench.gui.palette.grid import ColourGrid
from workbench.gui.widgets import Button, Words
from workbench.gui.widgets.caption import that_fits
from workbench.gui.widgets.control import outlined
from workbench.picture.colour import lab_from_light
from workbench.picture.dither import Levels3
from workbench.picture.light import light_from_volts, srgb_bytes
from workbench.picture.palette import Palette, PictureError, palette, picture_error
from workbench.picture.scene import Card
from workbench.picture.source import PictureCodes
from workbench.pipeline.result import Result
from workbench.project.document import Channel, Project
from workbench.project.edits.picture import set_card, set_colour
from workbench.units import format_fixed

__all__ = ["PalettePage"]

_ASIDE = 470


class PalettePage(QWidget):
    """Shows what colours a project's board can make."""

    def __init__(self, bench: Bench, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.bench = bench
        self.setAccessibleName("Palette")
        self._shown: tuple[Levels, ...] = ()
        self._levels: Levels3 | None = None
        self.palette_shown: Palette | None = None
        self._compared: PictureCodes | None = None
        self._job: Job | None = None
        self._one_words: tuple[str, ...] = ("",)
        self._edge = 0
        self.grid = ColourGrid(bench, self)
        self.title = Words(bench, "Colours", size=1.1, weight=600, parent=self)
        self.counts = Words(bench, parent=self)
        self.greys = Greys(bench, self)
        self.grey_line = Words(bench, size=0.95, parent=self)
        self.one = Words(bench, mono=True, parent=self)
        self.one_more = Words(bench, size=0.9, role="dim", parent=self)
        self.send = Button(bench, "Show as solid colour", parent=self)
        self.copy_button = Button(bench, "Copy", parent=self)
        self.error = Words(bench, size=0.95, parent=self)
        for words in (self.counts, self.grey_line, self.error):
            words.setWordWrap(True)
        self.grid.looked_at.connect(lambda _colour: self._tell())
        self.send.clicked.connect(self._send)
        self.copy_button.clicked.connect(self.copy)
        bench.theme_changed.connect(self._arrange)

    def show_result(self, _project: Project, result: Result) -> None:
        """Show a result's colours."""
        solved = tuple(result.channels[channel].levels for channel in Channel)
        if solved != self._shown:
            self._shown = solved
            red, green, blue = (levels.volts_by_code for levels in solved)
            self._levels = (red, green, blue)
            self.palette_shown = palette(self._levels)
            self.grid.show_levels(self._levels)
            self.greys.show_palette(self.palette_shown)
            self.grey_line.say(grey_words(self.palette_shown))
            self.counts.say(self._counted(self.palette_shown))
            self.grid.look_at(self.grid.colour)
        self._compare(result)
        self._tell()
        self._arrange()

    def copy(self) -> None:
        """Copy the figures of the page as text."""
        said = (self.counts.text(), self.grey_line.text(), self.error.text())
        one = f"{self.one.text()}  {self._one_words[0]}"
        QGuiApplication.clipboard().setText("\n".join((*said, one)) + "\n")
        self.bench.notice("Copied the palette's figures.")

    # Figures --------------------------------------------------------------------------------

    @staticmethod
    def _counted(shown: Palette) -> str:
        red, green, blue = shown.seen_levels
        combinations, colours = _grouped(shown.combinations), _grouped(shown.colours)
        return (
            f"{combinations} combinations of codes; a display tells {colours} colours apart: "
            f"{red} of red × {green} of green × {blue} of blue."
        )

    def _tell(self) -> None:
        """Say what the colour that is looked at is."""
        if self._levels is None:
            return
        volts = [float(v[code]) for v, code in zip(self._levels, self.grid.colour, strict=True)]
        light = [float(light_from_volts(v)) for v in volts]
        lab = lab_from_light(light)
        self.one.say("  ".join(f"{code:>3}" for code in self.grid.colour))
        chroma = float((lab[1] ** 2 + lab[2] ** 2) ** 0.5)
        said = ", ".join(format_fixed(v, "V") for v in volts)
        short = f"{said} · L* {lab[0]:.0f}"
        self._one_words = (
            f"{said} · lightness L* {lab[0]:.0f} · chroma {chroma:.0f}",
            f"{short} · chroma {chroma:.0f}",
            short,
        )
        self._fit_words()
        self.grid.setAccessibleDescription(f"codes {self.one.text()}, {self._one_words[0]}")
        self.update()

    def _fit_words(self) -> None:
        """Say the figures of the colour that is looked at as fully as there is room."""
        self.one_more.say(that_fits(self._one_words, self.one_more.font(), self.one_more.width()))

    def _compare(self, result: Result) -> None:
        """Begin to work out how far an image that is sent is from the one that was wanted."""
        codes, levels = result.picture, self._levels
        if codes is self._compared or levels is None:
            return
        self._compared = codes
        if self._job is not None:
            self._job.cancel()
        if codes.wanted(0, 0) is None:
            self.error.say("A test card is made of codes: there is nothing it could be off from.")
            return
        self.error.say("Comparing the picture with what was wanted …")

        def work(progress) -> PictureError | None:
            wanted = codes.wanted_frame()
            return None if wanted is None else picture_error(wanted, codes.frame(), levels, progress=progress)

        self._job = job = Job(self.bench, work, self)
        job.done.connect(self._take_error)
        job.failed.connect(self.error.say)
        job.start()

    def _take_error(self, found: PictureError | None) -> None:
        if found is not None:
            column, row = found.worst_at
            self.error.say(
                f"The picture as sent is off by ΔE 2000 of {found.mean:.1f} in the mean, at worst "
                f"{found.worst:.1f} in column {column} of scanline {row + 1}. Single pixels count; dither "
                "mends their mean."
            )
            self._arrange()

    def _send(self) -> None:
        """Show the colour that is looked at on the whole screen."""
        if self._levels is None:
            return
        red, green, blue = (
            code / max(1, len(volts) - 1) for code, volts in zip(self.grid.colour, self._levels, strict=True)
        )

        def edit(project: Project) -> Project:
            return set_colour(set_card(project, Card.SOLID), (red, green, blue))

        self.bench.apply("Show a solid colour", edit, origin=self)

    # Layout ---------------------------------------------------------------------------------

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self._arrange()

    def _arrange(self) -> None:
        px, width, height = self.bench.px, self.width(), self.height()
        pad = px(20)
        aside = min(px(_ASIDE), width // 2)
        self._edge = width - aside - 2 * pad
        edge = px(8)
        self.grid.setGeometry(pad - edge, px(6), self._edge - 2 * (pad - edge), height - px(10))
        left = self._edge + pad
        hint = self.copy_button.sizeHint()
        self.title.setGeometry(left, px(10), px(200), px(26))
        self.copy_button.setGeometry(width - pad - hint.width(), px(8), hint.width(), hint.height())
        top = px(40)
        high = self.counts.heightForWidth(aside)
        self.counts.setGeometry(left, top, aside, high)
        top += high + px(8)
        hint, beside = self.send.sizeHint(), self.copy_button.sizeHint().width() + px(10)
        self._patch = QRectF(left, top + px(2), px(52), px(38))
        inner = left + px(64)
        self.one.setGeometry(inner, top, aside - px(64), px(22))
        self.one_more.setGeometry(inner, top + px(22), aside - px(64), px(20))
        self._fit_words()
        self.send.setGeometry(width - pad - beside - hint.width(), px(8), hint.width(), hint.height())
        top += px(52)
        low = height < px(300)
        high = px(62 if low else 74)
        self.greys.setGeometry(left, top, aside, high)
        top += high + px(2)
        for words in (self.grey_line, self.error):
            tall = max(words.heightForWidth(aside), 0 if low else px(36))
            words.setGeometry(left, top, aside, tall)
            top += tall + px(6)
        self.update()

    def paintEvent(self, _event: QPaintEvent) -> None:
        theme, px = self.bench.theme, self.bench.px
        with QPainter(self) as painter:
            painter.fillRect(self.rect(), theme.color("panel"))
            painter.setPen(theme.color("hairline"))
            painter.drawLine(self._edge, 0, self._edge, self.height())
            if self._levels is None:
                return
            light = [
                float(light_from_volts(float(v[c])))
                for v, c in zip(self._levels, self.grid.colour, strict=True)
            ]
            red, green, blue = (int(byte) for byte in srgb_bytes(light))
            outlined(painter, self._patch, px(4), QColor(red, green, blue), QPen(theme.color("outline"), 1.1))


def _grouped(count: int) -> str:
    """Return a count with thin spaces between its thousands."""
    return f"{count:,}".replace(",", "\u2009")
