"""Histograms say the worst there can be; bars say which resistor matters most."""

import pytest

from tests.gui.tolerance.doing import drawn, type_in
from workbench.project.edits.tolerances import Varied

pytestmark = pytest.mark.qt_log_ignore("propagateSizeHints", extend=True)


def test_under_a_histogram_stands_the_worst_and_not_the_end_of_its_scale(qtbot, page):
    shown = page()
    type_in(qtbot, shown.form.entries[Varied.RESISTORS], "5")
    drawn(qtbot, shown)

    white, dnl, _inl = shown.spreads
    worst = shown.drawn.max_dnl_lsb.worst_high
    assert dnl.ends == ("0.00", f"at worst {worst:.2f} LSB")
    assert f"{dnl.scale[1]:.2f}" != f"{worst:.2f}"
    spread = shown.drawn.full_scale_volts
    assert white.ends == (f"{spread.worst_low:.3f}", f"at worst {spread.worst_high:.3f} V")


def test_boards_that_are_all_alike_stand_at_their_place(qtbot, page):
    shown = page()
    type_in(qtbot, shown.form.entries[Varied.RESISTORS], "0")
    drawn(qtbot, shown)

    white, dnl, inl = shown.spreads
    for view in (dnl, inl):
        assert view.x_of(view.spread.worst_high) == pytest.approx(view.area.left(), abs=1.0)
        assert view.scale[1] >= 0.1
    assert white.x_of(white.spread.mean) == pytest.approx(white.area.center().x(), abs=2.0)
    low, high = white.scale
    assert f"{low:.3f}" != f"{high:.3f}"


@pytest.mark.parametrize("width", [1900, 1280], ids=["a column of their own", "under the figures"])
def test_bars_show_which_resistor_matters_most(page, width):
    shown = page(width=width)
    table = shown.table
    narrow = table.isColumnHidden(2)
    assert narrow == (width == 1280)

    def inked(row: int) -> int:
        """Return how many pixels of a row's bar are drawn."""
        box = table.visualRect(table.figures.index(row, 1 if narrow else 2))
        picture = table.viewport().grab().toImage()
        y = box.bottom() - 1 if narrow else box.center().y()
        ground = picture.pixelColor(box.left() + 2, y)
        return sum(picture.pixelColor(x, y) != ground for x in range(box.left(), box.right()))

    lengths = [inked(row) for row in range(5)]
    assert lengths == sorted(lengths, reverse=True)
    # 500 Ω … 8 kΩ: each moves white half as much as the one before.
    assert lengths[0] / lengths[1] == pytest.approx(2.0, rel=0.1)
