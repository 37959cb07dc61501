"""The picture as a monitor shows it, and as it is sent, as PNG."""

from workbench.errors import FileError, TimingError
from workbench.exports.png import png
from workbench.pipeline.result import Result
from workbench.pipeline.screen import as_sent, look, verdict_on
from workbench.waveform.monitor import Monitor
from workbench.waveform.verdict import Standing

__all__ = ["picture_note", "picture_png", "sent_png"]


def picture_png(result: Result) -> bytes:
    """Return the picture on the screen of a flat panel that is set by its table of modes.

    Where the panel does not recognise the mode it is hatched: what a real one shows is a guess.

    Raises
    ------
    TimingError
        If there is no picture; says what the monitor does instead.
    FileError
        If the project's image is missing.
    """
    _check_image(result)
    seen = look(result)
    shown = seen.shown()
    if shown is None:
        raise TimingError(
            f"There is no picture to export ({seen.verdict.standing.value}). {seen.verdict.sentence}"
        )
    return png(shown)


def picture_note(result: Result) -> str:
    """Return what the panel makes of the signal, where that is not simply the mode; else nothing."""
    verdict = verdict_on(result, Monitor())
    return "" if verdict.standing is Standing.SHOWN else f"{verdict.standing.value}. {verdict.sentence}"


def sent_png(result: Result) -> bytes:
    """Return the picture as sent: the settled levels on a perfect display."""
    _check_image(result)
    return png(as_sent(result))


def _check_image(result: Result) -> None:
    """Refuse to export the test card that stands in for an image."""
    if result.picture_problem is not None:
        raise FileError(result.picture_problem)
