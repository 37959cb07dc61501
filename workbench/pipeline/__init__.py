"""From a project to one result, stage by stage.

May import everything below the files and views. Start in ``run.py``; ``result.py`` says
what comes out.
"""

from workbench.pipeline.result import ChannelResult, ChannelResults, PinTotals, Result
from workbench.pipeline.run import Pipeline, pin_totals

__all__ = ["ChannelResult", "ChannelResults", "PinTotals", "Pipeline", "Result", "pin_totals"]
