from tests.exports.boards import solved
from workbench.circuit.network import Load
from workbench.gui.levels.figures import code_figures
from workbench.gui.levels.table import COLUMNS, CodeModel


def test_the_model_is_a_sound_table(qtmodeltester):
    model = CodeModel()
    model.show_codes(code_figures(solved().channels.red))

    qtmodeltester.check(model)
    assert (model.rowCount(), model.columnCount()) == (32, len(COLUMNS))


def test_an_edit_changes_cells_and_not_the_shape(qtbot):
    model = CodeModel()
    model.show_codes(code_figures(solved().channels.red))

    changed = code_figures(solved(load=Load(82.0)).channels.red)

    with qtbot.waitSignal(model.dataChanged), qtbot.assertNotEmitted(model.modelReset):
        model.show_codes(changed)
