"""The picture as a monitor shows it, and as it is sent, as PNG."""

from workbench.errors import FileError, TimingError
from workbench.exports.png import png
from workbench.pipeline.result import Result
from workbench.pipeline.screen import as_sent, look

__all__ = ["picture_png", "sent_png"]


def picture_png(result: Result) -> bytes:
    """Return the picture on the screen of a flat panel that adjusts itself.

    Raises
    ------
    TimingError
        If there is no picture; says what the monitor does instead.
    FileError
        If the project's image is missing.
    """
    _check_image(result)
    seen = look(result)
    if seen.seen is None:
        raise TimingError(
            f"There is no picture to export ({seen.verdict.standing.value}). {seen.verdict.sentence}"
        )
    return png(seen.seen.rgb)


def sent_png(result: Result) -> bytes:
    """Return the picture as sent: the settled levels on a perfect display."""
    _check_image(result)
    return png(as_sent(result))


def _check_image(result: Result) -> None:
    """Refuse to export the test card that stands in for an image."""
    if result.picture_problem is not None:
        raise FileError(result.picture_problem)
