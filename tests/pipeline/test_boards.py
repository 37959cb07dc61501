"""The boards one would get: equal plans, equal boards; rounds that grow; a channel without levels."""

from dataclasses import replace

import pytest

from tests.exports.boards import board
from workbench.circuit.bands import Band
from workbench.circuit.network import Network
from workbench.errors import EditError
from workbench.pipeline.boards import board_plan, draw_boards
from workbench.progress import Cancelled, Watched
from workbench.project.document import Channel


def test_each_round_is_handed_on_and_the_last_is_whole():
    rounds = []

    whole = draw_boards(board_plan(board(), boards=300_000, seed=1), so_far=rounds.append)

    assert [run.boards for run in rounds] == [16_384, 262_144]
    assert not rounds[0].whole
    assert (whole.boards, whole.whole) == (300_000, True)
    assert whole.tolerances[Channel.RED].boards == 300_000


def test_equal_networks_share_their_boards():
    found = draw_boards(board_plan(board(), boards=100, seed=1)).tolerances

    assert found[Channel.RED] is found[Channel.BLUE]


def test_the_projects_tolerances_count():
    project = replace(board(), tolerances=replace(board().tolerances, resistors=Band(0.05)))
    wide = draw_boards(board_plan(project, boards=2000, seed=1)).tolerances[Channel.RED]
    own = draw_boards(board_plan(board(), boards=2000, seed=1)).tolerances[Channel.RED]

    assert wide.full_scale_volts.std == pytest.approx(5 * own.full_scale_volts.std, rel=0.05)


def test_no_tolerance_is_taken_that_a_project_would_not_take():
    project = replace(board(), tolerances=replace(board().tolerances, load=Band(0.6)))

    with pytest.raises(EditError, match=r"the load cannot be 60 %: .* between 0 % and 50 %"):
        board_plan(project, boards=100, seed=1)


def test_a_channel_without_levels_says_why_and_the_others_go_on():
    project = board()
    broken = Network(project.channels.red.pins, ())
    project = replace(project, channels=replace(project.channels, red=broken))

    found = draw_boards(board_plan(project, boards=100, seed=1))

    assert set(found.tolerances) == {Channel.GREEN, Channel.BLUE}
    assert "shows nothing that could vary" in found.problems[Channel.RED]


def test_progress_rises_to_the_end():
    told = []
    draw_boards(
        board_plan(board(), boards=300_000, seed=1),
        progress=Watched(lambda done, all_: told.append((done, all_))),
    )

    assert [done for done, _ in told] == sorted(done for done, _ in told)
    assert told[-1] == (300_000, 300_000)


def test_who_cancels_has_the_rounds_before():
    rounds = []

    def report(_done, _total):
        if rounds:
            watched.cancel()

    watched = Watched(report)
    with pytest.raises(Cancelled):
        draw_boards(board_plan(board(), boards=5_000_000, seed=1), progress=watched, so_far=rounds.append)
    assert [run.boards for run in rounds] == [16_384]
