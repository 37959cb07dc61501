"""Slow work off the window's thread: one end, always; progress now and then; nothing left running."""

import threading
from collections.abc import Callable

import pytest

from workbench.errors import TimingError
from workbench.gui.jobs import Job
from workbench.progress import Progress


@pytest.fixture
def started(make_bench):
    """Return a starter of a job whose ends are noted; it is stopped after the test."""
    bench = make_bench()
    jobs: list[Job] = []

    def start(function: Callable[[Progress], object]) -> tuple[Job, list]:
        job = Job(bench, function)
        ends: list = []
        job.done.connect(lambda result: ends.append(("done", result)))
        job.failed.connect(lambda reason: ends.append(("failed", reason)))
        job.cancelled.connect(lambda: ends.append(("cancelled", None)))
        jobs.append(job)
        job.start()
        return job, ends

    yield start
    for job in jobs:
        job.stop()
    assert not [thread for thread in threading.enumerate() if thread.name == "backporch job"]


def endless(progress: Progress) -> None:
    while True:
        progress.step(1, 2)


def failing(_progress: Progress) -> None:
    raise TimingError("No mode is that long.")


def test_result_comes_once_in_the_windows_thread(qtbot, started):
    _, ends = started(lambda _progress: threading.current_thread().name)
    qtbot.waitUntil(lambda: bool(ends))

    assert ends == [("done", "backporch job")]


def test_a_reason_for_people_is_passed_on(qtbot, started):
    _, ends = started(failing)
    qtbot.waitUntil(lambda: bool(ends))

    assert ends == [("failed", "No mode is that long.")]


def test_a_fault_of_the_program_is_said_and_not_swallowed(qtbot, started):
    with qtbot.captureExceptions() as caught:
        _, ends = started(lambda _progress: 1 // 0)
        qtbot.waitUntil(lambda: bool(caught))

    assert ends[0][0] == "failed"
    assert caught[0][0] is ZeroDivisionError


def test_cancelled_work_ends_with_that_word_alone(qtbot, started):
    job, ends = started(endless)
    job.cancel()
    qtbot.waitUntil(lambda: bool(ends))

    assert ends == [("cancelled", None)]


def test_a_result_that_comes_after_the_wish_to_end_is_dropped(qtbot, started):
    gate = threading.Event()
    job, ends = started(lambda _progress: gate.wait(5))
    job.cancel()
    gate.set()
    qtbot.waitUntil(lambda: bool(ends))

    assert ends == [("cancelled", None)]


def test_progress_is_told_at_most_twenty_times_a_second_and_at_the_end(qtbot, started):
    told: list = []

    def work(progress: Progress) -> None:
        for done in range(1, 1001):
            progress.step(done, 1000)

    gate = threading.Event()

    def gated(progress: Progress) -> None:
        gate.wait(5)
        work(progress)

    job, ends = started(gated)
    job.progress.connect(lambda done, total: told.append((done, total)))
    gate.set()
    qtbot.waitUntil(lambda: bool(ends))

    assert told[-1] == (1000, 1000)
    assert len(told) < 50


def test_closing_the_window_ends_the_work(qtbot, make_desk):
    desk = make_desk(show=False)
    job = Job(desk.bench, endless)
    job.start()

    desk.window.close()

    assert not [thread for thread in threading.enumerate() if thread.name == "backporch job"]
