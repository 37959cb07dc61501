"""Starting from a template: how the menu calls it, and what the person prefers in it."""

from workbench.gui.mode_title import mode_title
from workbench.gui.settings import PIN_LIMIT, SERIES, TOTAL_LIMIT, Settings
from workbench.project.document import Channel, Project
from workbench.project.edits.drive import set_limits
from workbench.project.edits.naming import set_series
from workbench.project.templates import Template

__all__ = ["menu_title", "new_project"]


def menu_title(template: Template) -> str:
    """Return what a menu calls a template: its name, its bits and its mode."""
    project = template.project()
    bits = "·".join(str(project.channels[channel].bits) for channel in Channel)
    return f"{project.name}   {bits}, {mode_title(project.mode)}"


def new_project(template: Template, settings: Settings) -> Project:
    """Return a template with what the person prefers: their series, and their chip's limits."""
    project = template.project()
    if settings.keeps(SERIES):
        project = set_series(project, settings.get(SERIES))
    driver = project.driver
    pin = settings.get(PIN_LIMIT) if driver.pin_limit_amps is None else driver.pin_limit_amps
    total = settings.get(TOTAL_LIMIT) if driver.total_limit_amps is None else driver.total_limit_amps
    return set_limits(project, pin, total)
