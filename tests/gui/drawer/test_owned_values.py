"""What lies in the drawer, known to the findings of the whole window."""

import pytest

from workbench.circuit.fit.drawer import Drawer, OwnedPart
from workbench.files.drawer import write_drawer
from workbench.gui.drawer.own_drawer import own_drawer, usual_path

pytestmark = pytest.mark.qt_log_ignore("propagateSizeHints", extend=True)

MEASURED = Drawer((OwnedPart(500.0, 9), OwnedPart(4e3), OwnedPart(8e3, 3, nominal_ohms=8200.0)))


def complaints(desk) -> int:
    return sum(finding.id == "series" for finding in desk.live.result.findings)


def test_a_drawer_kept_from_last_time_is_known(qtbot, make_desk):
    usual_path().parent.mkdir(parents=True)
    write_drawer(MEASURED, usual_path())
    desk = make_desk()

    qtbot.waitUntil(lambda: complaints(desk) == 0)


def test_what_comes_into_the_drawer_ends_the_complaint_and_what_goes_brings_it_back(desk):
    desk.owned.look()
    own = own_drawer(desk.bench)

    own.put(MEASURED)
    assert complaints(desk) == 0

    own.take_back()
    assert complaints(desk) == 1
