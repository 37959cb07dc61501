import pytest

from workbench.progress import SILENT, Cancelled, Watched


def test_each_step_is_reported():
    seen = []

    Watched(lambda *step: seen.append(step)).step(1, 3)

    assert seen == [(1, 3)]


def test_a_cancelled_step_ends_the_work():
    progress = Watched(lambda *_: None)
    progress.cancel()

    with pytest.raises(Cancelled):
        progress.step(2, 3)


def test_work_that_nobody_watches_goes_on():
    SILENT.step(1, 3)
