"""The table of all codes on screen: numbers under each other, the grey, light on the held code."""

from PySide6.QtCore import QItemSelectionModel, QModelIndex, QPointF, QRect, QRectF, Qt
from PySide6.QtGui import (
    QColor,
    QFontMetricsF,
    QGuiApplication,
    QKeyEvent,
    QKeySequence,
    QPainter,
    QPen,
    QResizeEvent,
)
from PySide6.QtWidgets import (
    QAbstractItemView,
    QHeaderView,
    QStyledItemDelegate,
    QStyleOptionViewItem,
    QTableView,
    QWidget,
)

from workbench.checks.limits import LINEARITY
from workbench.circuit.linearity import EVEN_LSB
from workbench.gui.bench import Bench
from workbench.gui.levels.code_view import Hold
from workbench.gui.levels.figures import CodeFigures
from workbench.gui.levels.table import COLUMNS, CodeModel, Index, cell, table_text
from workbench.gui.widgets import draw_text
from workbench.gui.widgets.control import outlined

__all__ = ["CodeTable"]

_BITS, _STEP, _DNL, _EYE = 1, 4, 5, 8
_LEAST_MISSED = (_EYE, 6, 3, 7, _STEP, _DNL)
_WIDEST = ("code", "00000000", "0.0000", "0.000", "−0000.0", "−00.00", "−00.00", "100", "greyscale")
_RIGHTWARD = Qt.AlignmentFlag.AlignRight


class CodeDelegate(QStyledItemDelegate):
    """Paints the rows: numbers that stand under each other, the grey, light on the held code."""

    def __init__(self, bench: Bench, model: CodeModel, parent: QWidget) -> None:
        super().__init__(parent)
        self._bench, self._model = bench, model
        self.held: int | None = None
        self.restyle()

    def restyle(self) -> None:
        """Take the face of the numbers again; one face, so that a cell needs no measuring."""
        type_ = self._bench.type
        self._faces = {False: type_.mono(0.9), True: type_.mono(0.9, 600)}
        metrics = QFontMetricsF(self._faces[False])
        self._advance = metrics.horizontalAdvance("0")
        self._rise = round(metrics.capHeight() / 2)

    @property
    def widths(self) -> tuple[int, ...]:
        """Least width of every column. [px]"""
        measure = QFontMetricsF(self._bench.type.mono(0.9, 600))
        head = QFontMetricsF(self._bench.type.sans(0.86))
        pad = self._bench.px(18)
        texts = list(_WIDEST)
        figures = self._model.figures
        texts[_BITS] = "0" * (figures.bits if figures is not None else len(_WIDEST[_BITS]))
        return tuple(
            round(max(measure.horizontalAdvance(widest), head.horizontalAdvance(name))) + pad
            for widest, name in zip(texts, COLUMNS, strict=True)
        )

    def paint(self, painter: QPainter, option: QStyleOptionViewItem, index: Index) -> None:
        figures = self._model.figures
        if figures is None:
            return
        theme, px = self._bench.theme, self._bench.px
        box: QRect = option.rect
        code, column = index.row(), index.column()
        if code == self.held:
            painter.fillRect(box, theme.mixed("panel", "accent", 0.16))
            if column == 0:
                painter.fillRect(QRect(box.left(), box.top(), px(3), box.height()), theme.color("accent"))
        if column == _EYE:
            self._paint_grey(painter, QRectF(box), int(figures.grey[code]))
            return
        role, bold = self._look(figures, code, column)
        text = cell(figures, code, column)
        painter.setFont(self._faces[bold])
        painter.setPen(theme.color(role))
        right, middle = box.right() - px(10), box.center().y() + self._rise
        painter.drawText(QPointF(right - len(text) * self._advance, middle), text)

    def _paint_grey(self, painter: QPainter, box: QRectF, grey: int) -> None:
        px = self._bench.px
        patch = box.adjusted(px(10), px(4), -px(10), -px(4))
        line = QPen(self._bench.theme.color("outline"), 1.0)
        painter.save()
        outlined(painter, patch, px(3), QColor(grey, grey, grey), line)
        painter.restore()

    @staticmethod
    def _look(figures: CodeFigures, code: int, column: int) -> tuple[str, bool]:
        error = float(figures.dnl_lsb[code])
        if column in (_STEP, _DNL) and abs(error) > EVEN_LSB:
            return ("warns" if LINEARITY.holds(error) else "fails"), True
        return "text", column == 0


class CodeHeader(QHeaderView):
    """The heads of the columns, in the house's face."""

    def __init__(self, bench: Bench, parent: QWidget) -> None:
        super().__init__(Qt.Orientation.Horizontal, parent)
        self._bench = bench
        self.viewport().setAutoFillBackground(False)
        self.setSectionResizeMode(QHeaderView.ResizeMode.Fixed)
        self.setStretchLastSection(True)

    def paintSection(self, painter: QPainter, rect: QRect, logical: int) -> None:
        theme, px = self._bench.theme, self._bench.px
        box = QRectF(rect).adjusted(0, 0, -px(10), 0)
        draw_text(
            painter, box, COLUMNS[logical], self._bench.type.sans(0.86), theme.color("dim"), align=_RIGHTWARD
        )
        painter.setPen(theme.color("hairline"))
        painter.drawLine(rect.bottomLeft(), rect.bottomRight())


class CodeTable(QTableView):
    """The table of all codes; its current row is the held code."""

    def __init__(self, bench: Bench, hold: Hold, parent: QWidget) -> None:
        super().__init__(parent)
        self._bench, self._hold = bench, hold
        self.setAccessibleName("Table of codes")
        self.codes = CodeModel(self)
        self.setModel(self.codes)
        self.delegate = CodeDelegate(bench, self.codes, self)
        self.setItemDelegate(self.delegate)
        self.setHorizontalHeader(CodeHeader(bench, self))
        self.verticalHeader().hide()
        self.setSelectionMode(QAbstractItemView.SelectionMode.NoSelection)
        self.setShowGrid(False)
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.setTabKeyNavigation(False)
        self.clicked.connect(self._on_click)
        self.selectionModel().currentRowChanged.connect(self._on_row)
        bench.theme_changed.connect(self._restyle)
        self._restyle()

    def wanted_width(self) -> int:
        """Return the width in which every column fits. [px]"""
        return sum(self.delegate.widths) + self._bench.px(16)

    def whole_height(self, room: int) -> int:
        """Return the height in which only whole rows are seen, no more than there is. [px]"""
        fixed = self.horizontalHeader().height() + 2 * self.frameWidth()
        row = self.verticalHeader().defaultSectionSize()
        return fixed + max(0, room - fixed) // row * row

    def show_codes(self, figures: CodeFigures) -> None:
        """Show other figures."""
        before = self.codes.figures
        self.codes.show_codes(figures)
        if before is None or before.bits != figures.bits:
            self._fit()

    def show_held(self, code: int | None) -> None:
        """Light the row of the held code and bring it into sight."""
        if code == self.delegate.held:
            return
        self.delegate.held = code
        if code is not None and self.currentIndex().row() != code:
            index = self.codes.index(code, 0)
            self.selectionModel().setCurrentIndex(index, QItemSelectionModel.SelectionFlag.NoUpdate)
            self.scrollTo(index)
        self.viewport().update()

    def copy(self) -> None:
        """Copy the table as text."""
        if self.codes.figures is not None:
            QGuiApplication.clipboard().setText(table_text(self.codes.figures))
            codes = self.codes.figures.n_codes
            self._bench.notice(f"Copied {codes} codes as a table; Save as CSV … writes a file.")

    def keyPressEvent(self, event: QKeyEvent) -> None:
        if event.matches(QKeySequence.StandardKey.Copy):
            self.copy()
        elif event.key() == Qt.Key.Key_Escape and self.delegate.held is not None:
            self._hold(None)
        else:
            super().keyPressEvent(event)

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self._fit()
        if self.delegate.held is not None:
            self.scrollTo(self.codes.index(self.delegate.held, 0))

    def _fit(self) -> None:
        """Leave out the columns that have no room, the least missed first."""
        widths = self.delegate.widths
        for column, width in enumerate(widths):
            self.setColumnWidth(column, width)
        lacking = sum(widths) - self.viewport().width()
        for column in _LEAST_MISSED:
            self.setColumnHidden(column, lacking > 0)
            lacking -= widths[column] if lacking > 0 else 0

    def _on_row(self, current: QModelIndex, _previous: QModelIndex) -> None:
        # The keys move the current row; the program's own moves find the code held already.
        if current.isValid() and current.row() != self.delegate.held and self.hasFocus():
            self._hold(current.row())

    def _on_click(self, index: QModelIndex) -> None:
        # The lit row may be that of the pixel that is looked at: a click holds it.
        self._hold(index.row())

    def _restyle(self) -> None:
        px = self._bench.px
        self.delegate.restyle()
        self.horizontalHeader().setFixedHeight(px(26))
        self.verticalHeader().setDefaultSectionSize(px(23))
        self._fit()
