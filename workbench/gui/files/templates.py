"""The projects that ship with the program, to start from."""

from dataclasses import dataclass
from functools import lru_cache
from pathlib import Path

from workbench.files.assets import asset_path
from workbench.files.project_file import SUFFIX, read_project
from workbench.gui.cards.modes import mode_title
from workbench.gui.settings import PIN_LIMIT, SERIES, TOTAL_LIMIT, Settings
from workbench.project.document import Channel, Project
from workbench.project.edits.drive import set_limits
from workbench.project.edits.naming import set_series

__all__ = ["FIRST", "Template", "new_project", "open_template", "templates"]

FIRST = "tide-board"
"""The template that a first start shows."""


@dataclass(frozen=True, slots=True)
class Template:
    """A project to start from, and how the menu calls it."""

    id: str
    title: str
    path: Path


@lru_cache(maxsize=1)
def templates() -> tuple[Template, ...]:
    """Return what ships with the program, the first one first."""
    found = []
    for path in sorted(asset_path("projects").glob(f"*{SUFFIX}")):
        project = read_project(path)
        bits = "·".join(str(project.channels[channel].bits) for channel in Channel)
        found.append(Template(path.stem, f"{project.name}   {bits}, {mode_title(project.mode)}", path))
    return tuple(sorted(found, key=lambda template: template.id != FIRST))


def open_template(template_id: str) -> Project:
    """Return the project of a template."""
    return read_project(asset_path(f"projects/{template_id}{SUFFIX}"))


def new_project(template_id: str, settings: Settings) -> Project:
    """Return a template with what the person prefers: their series, and their chip's limits."""
    project = open_template(template_id)
    if settings.keeps(SERIES):
        project = set_series(project, settings.get(SERIES))
    driver = project.driver
    pin = settings.get(PIN_LIMIT) if driver.pin_limit_amps is None else driver.pin_limit_amps
    total = settings.get(TOTAL_LIMIT) if driver.total_limit_amps is None else driver.total_limit_amps
    return set_limits(project, pin, total)
