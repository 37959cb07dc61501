"""The command line: one command a file, one clear line on stderr when something is wrong.

May import everything below the window; the window itself is imported late, so that no headless
command loads Qt. Start reading in ``main.py`` (which command, which exit code), then ``report.py``.
"""

from workbench.cli.main import main

__all__ = ["main"]
