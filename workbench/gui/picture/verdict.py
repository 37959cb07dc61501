"""The words under the picture: what the monitor takes the signal for."""

from PySide6.QtCore import QRectF, Qt
from PySide6.QtGui import QFont, QFontMetricsF, QPainter, QPaintEvent
from PySide6.QtWidgets import QWidget

from workbench.gui.bench import Bench
from workbench.gui.picture.images import ENLARGED, Side
from workbench.gui.picture.monitor_panel import LEAVES_OUT
from workbench.gui.widgets import Sign, draw_sign
from workbench.waveform.verdict import Standing

__all__ = ["Verdict", "wordings"]

_FLAGS = int(Qt.TextFlag.TextWordWrap | Qt.AlignmentFlag.AlignVCenter)


def wordings(
    standing: Standing, sentence: str, side: Side, moved: tuple[int, int] = (0, 0)
) -> tuple[str, ...]:
    """Return how a picture came about, longest wording first.

    Parameters
    ----------
    standing : Standing
    sentence : str
        The monitor's verdict.
    side : Side
        Which picture is shown.
    moved : tuple of 2 int
        Pixels and lines by which a monitor that adjusted itself moved the picture. [1]
    """
    if side is Side.SENT:
        return "settled levels, no cable, a perfect display", "settled levels"
    how = f"difference, {ENLARGED} times; " if side is Side.APART else ""
    named = "" if standing is Standing.SHOWN else f"{standing.value}. "
    whole = f"{how}a model: {named}{sentence}"
    briefly = f"{how}a model: {named}{sentence.partition(':')[0].partition(' (')[0]}"
    last = (f"{how}a model: {standing.value}", standing.value)
    if not any(moved):
        return whole, briefly, *last
    across, down = (abs(by) for by in moved)
    by = f"moved by {across} px and {down} lines"
    return (
        f"{how}a model: it adjusted itself and took bright edges for the picture's: {by}, as dark borders "
        f"make it do. {named}{sentence}",
        f"{how}a model: it took bright edges for the picture's: {by}, as dark borders make it do",
        f"{how}it took bright edges for the picture's: {by}",
        by,
    )


class Verdict(QWidget):
    """Says what the monitor takes the signal for, and that it is a model; shorter where room is short."""

    def __init__(self, bench: Bench, parent: QWidget) -> None:
        super().__init__(parent)
        self._bench = bench
        self._sign: Sign | None = None
        self._wordings: tuple[str, ...] = ("",)
        self.setToolTip(LEAVES_OUT)

    @property
    def text(self) -> str:
        """All that is to be said, whether it has room or not."""
        return self._wordings[0]

    @property
    def shown(self) -> str:
        """What has room."""
        metrics, room = QFontMetricsF(self._face()), self._room()
        for words in self._wordings:
            if (
                metrics.boundingRect(QRectF(0, 0, room.width(), 10_000), _FLAGS, words).height()
                <= room.height()
            ):
                return words
        return self._wordings[-1]

    def show_verdict(
        self, standing: Standing, sentence: str, side: Side, moved: tuple[int, int] = (0, 0)
    ) -> None:
        """Say how the picture came about."""
        plain = side is Side.SENT or (standing is Standing.SHOWN and not any(moved))
        self._sign = None if plain else Sign.WARNS
        self._wordings = wordings(standing, sentence, side, moved)
        self.setAccessibleName(self.text)
        self.setToolTip(f"{self.text}\n{LEAVES_OUT}")
        self.update()

    def _face(self) -> QFont:
        return self._bench.type.sans(0.86)

    def _room(self) -> QRectF:
        left = 0 if self._sign is None else self._bench.px(22)
        return QRectF(left, 0, self.width() - left, self.height())

    def paintEvent(self, _event: QPaintEvent) -> None:
        theme, px = self._bench.theme, self._bench.px
        with QPainter(self) as painter:
            if self._sign is not None:
                side = px(15)
                painter.setRenderHint(QPainter.RenderHint.Antialiasing)
                draw_sign(painter, QRectF(0, (self.height() - side) / 2, side, side), self._sign, theme)
            painter.setFont(self._face())
            painter.setPen(theme.color("dim"))
            painter.drawText(self._room(), _FLAGS, self.shown)
