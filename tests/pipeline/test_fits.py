"""Values for a project: quicker rounds handed on first, a drawer too small told of by the last."""

from dataclasses import replace

import pytest

from tests.exports.boards import board
from workbench.circuit.fit.drawer import Drawer, OwnedPart
from workbench.circuit.series import Series
from workbench.errors import NetworkError
from workbench.pipeline.fits import find_fits, fit_plan
from workbench.progress import Cancelled, Watched

E12 = Drawer.of_series(Series.E12)


def test_fewer_parts_a_leg_are_handed_on_first():
    rounds = []

    whole = find_fits(fit_plan(board(), E12, 2), so_far=rounds.append)

    assert [run.most_parts for run in rounds] == [1]
    assert (rounds[0].whole, whole.whole) == (False, True)
    errors = [run.fit.candidates[0].worst_error_volts for run in (rounds[0], whole)]
    assert errors[1] < errors[0]


def test_who_does_not_listen_gets_the_last_round_only():
    assert find_fits(fit_plan(board(), E12, 2)).most_parts == 2


def test_two_parts_a_leg_may_suffice_where_one_does_not():
    """No single 1 kΩ makes a good ladder of three bits, but it can be made; of nothing it cannot."""
    project = board()
    drawer = Drawer((OwnedPart(1e3, 14), OwnedPart(2e3, 14)))

    found = find_fits(fit_plan(project, drawer, 2), so_far=lambda _run: None)

    assert found.whole
    assert len(found.fit.candidates) > 0


def test_a_drawer_too_small_is_said():
    drawer = Drawer((OwnedPart(1e3, 4),))

    with pytest.raises(NetworkError, match="4"):
        find_fits(fit_plan(board(), drawer, 1), so_far=lambda _run: None)


def test_equal_projects_have_equal_plans():
    assert fit_plan(board(), E12, 2) == fit_plan(replace(board(), name="other"), E12, 2)
    assert fit_plan(board(), E12, 2) != fit_plan(board(), E12, 3)


def test_it_can_be_cancelled():
    watched = Watched(lambda _done, _total: watched.cancel())

    with pytest.raises(Cancelled):
        find_fits(fit_plan(board(), E12, 3), progress=watched)
