"""A panel goes when it is deleted, and hears nothing of its bench afterwards."""

import gc
import weakref

import shiboken6
from PySide6.QtCore import QCoreApplication, QEvent

from workbench.gui.scanline import ScanlinePanel
from workbench.gui.settings import THEME
from workbench.gui.theme import ThemeName


def test_a_deleted_panel_is_gone(make_bench) -> None:
    bench = make_bench()
    panel = ScanlinePanel(bench)
    panel.show_result(bench.session.project, bench.live.result)
    seen = weakref.ref(panel)

    panel.deleteLater()
    QCoreApplication.sendPostedEvents(None, QEvent.Type.DeferredDelete)
    assert not shiboken6.isValid(panel)
    del panel
    gc.collect()

    assert seen() is None


def test_the_bench_goes_on_without_it(make_bench) -> None:
    bench = make_bench()
    panel = ScanlinePanel(bench)
    panel.show_result(bench.session.project, bench.live.result)
    panel.deleteLater()
    QCoreApplication.sendPostedEvents(None, QEvent.Type.DeferredDelete)

    bench.settings.set(THEME, ThemeName.PAPER)
    bench.view.look_at(123)
    bench.project_large(on=True)

    assert bench.view.pixel == 123
