"""The door to the window: checks that one can open before Qt is asked, which would end the process."""

import gc
import os
import sys
from pathlib import Path

from workbench.gui.start.display import choose_platform, why_no_window

__all__ = ["run_window"]

BAD_INPUT = 2


def run_window(path: Path | None = None) -> int:
    """Open the window on a project file, or on the first template; return the exit code.

    Where no window can open, one sentence on stderr says why, and the code is 2.
    """
    # Qt would split every translucent fill over threads, ten times slower for what is drawn here.
    os.environ.setdefault("QT_NO_GUI_THREADPOOL", "1")
    reason = why_no_window()
    if reason is None:
        choose_platform()
        # Thousands of classes are made while the program loads, and none is garbage: looking for
        # some meanwhile takes a tenth of the start.
        gc.disable()
        try:
            from workbench.gui.start.program import run
        except ImportError as error:
            reason = (
                f"A library of the window cannot be loaded ({error}): install it (on Debian: "
                "apt install libegl1 libgl1 libglib2.0-0 libdbus-1-3 libfontconfig1 libxkbcommon0)."
            )
        else:
            gc.freeze()
            gc.enable()
            return run(path)
    sys.stderr.write(f"backporch: {reason}\n")
    return BAD_INPUT
