import pytest
from PySide6.QtCore import QPoint, Qt
from PySide6.QtGui import QGuiApplication

from workbench.gui.widgets import Sign
from workbench.gui.widgets.figure_table import Column, FigureRow, FigureTable

pytestmark = pytest.mark.qt_log_ignore("propagateSizeHints", extend=True)

COLUMNS = (Column("clock", "000.000"), Column("off", "−000 ppm"), Column("how", "words", takes_rest=True))
ROWS = [
    FigureRow(("25.175", "0 ppm", "exact"), "a", Sign.PASSES),
    FigureRow(("25.200", "−5 ppm", "near"), "b"),
]


@pytest.fixture
def table(qtbot, make_bench):
    shown = FigureTable(make_bench(), "Clocks", COLUMNS)
    qtbot.addWidget(shown)
    shown.resize(500, 200)
    with qtbot.waitExposed(shown):
        shown.show()
    shown.show_rows(ROWS, current=0)
    return shown


def test_arrows_move_the_light_and_enter_picks(table, qtbot):
    pointed, picked = [], []
    table.pointed.connect(pointed.append)
    table.picked.connect(picked.append)

    qtbot.keyClick(table, Qt.Key.Key_Down)
    qtbot.keyClick(table, Qt.Key.Key_Return)

    assert table.current == "b"
    assert (pointed, picked) == (["b"], ["b"])


def test_a_second_click_picks(table, qtbot):
    picked = []
    table.picked.connect(picked.append)
    place = table.visualRect(table.figures.index(1, 0)).center()

    qtbot.mouseClick(table.viewport(), Qt.MouseButton.LeftButton, pos=place)
    assert picked == []
    qtbot.mouseDClick(table.viewport(), Qt.MouseButton.LeftButton, pos=place)

    assert picked == ["b"]


def test_copy_gives_text_with_plain_minus(table, qtbot):
    qtbot.keyClick(table, Qt.Key.Key_C, Qt.KeyboardModifier.ControlModifier)

    assert QGuiApplication.clipboard().text() == (
        "clock\toff\thow\n25.175\t0 ppm\texact\n25.200\t-5 ppm\tnear\n"
    )


def test_the_last_column_gives_way_where_there_is_no_room(table):
    assert not table.isColumnHidden(2)

    table.resize(table.delegate.widths()[0] + table.delegate.widths()[1] + 30, 200)

    assert table.isColumnHidden(2)


def test_cells_speak_with_their_heads(table):
    index = table.figures.index(1, 1)

    assert index.data(Qt.ItemDataRole.AccessibleTextRole) == "off −5 ppm"


def test_no_rows_light_nothing(table, qtbot):
    table.show_rows([])
    qtbot.keyClick(table, Qt.Key.Key_Return)

    assert table.current is None
    assert table.rowAt(QPoint(5, 5).y()) == -1


FOLDING = (
    Column("clock", "000.000"),
    Column("how", "uneven by 00.00 ns", least="uneven"),
    Column("line", "000.000", spare=1),
    Column("field", "000.000", spare=2),
    Column("settings", "12 MHz × 126 / 6 / 2", takes_rest=True, least="12 MHz"),
)


@pytest.fixture
def folding(qtbot, make_bench):
    """Return a maker of a table of some width, and the names of the columns it shows."""

    def make(columns: tuple[Column, ...], width: int) -> tuple[FigureTable, list[str]]:
        table = FigureTable(make_bench(), "Clocks", columns)
        qtbot.addWidget(table)
        table.resize(width, 200)
        with qtbot.waitExposed(table):
            table.show()
        return table, [column.title for n, column in enumerate(columns) if not table.isColumnHidden(n)]

    return make


def test_a_narrow_table_cuts_and_then_leaves_out_what_can_be_spared(folding):
    least = folding(FOLDING, 900)[0].delegate.widths(least=True)
    folds = (
        (900, ["clock", "how", "line", "field", "settings"]),
        (sum(least) + 10, ["clock", "how", "line", "field", "settings"]),
        (sum(least) - 10, ["clock", "how", "line", "settings"]),
        (sum(least) - least[3] - 10, ["clock", "how", "settings"]),
    )

    for width, names in folds:
        table, shown = folding(FOLDING, width)
        assert shown == names
        assert not table.horizontalScrollBar().isVisible()


def test_a_column_without_a_least_text_goes_before_it_shows_letters_only(folding):
    columns = (*COLUMNS[:2], Column("how", "many words that say how", takes_rest=True))
    others = sum(folding(columns, 900)[0].delegate.widths()[:2])

    assert folding(columns, others + 60)[1] == ["clock", "off"]
    assert folding(columns, others + 120)[1] == ["clock", "off", "how"]
