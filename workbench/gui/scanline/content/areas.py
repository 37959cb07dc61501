"""What the stretches of a line or frame are called, and which pixels a part moves."""

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from workbench.circuit.codes import pin_states
from workbench.circuit.network import Network, PartId
from workbench.gui.scanline.content.parts import pin_of_part
from workbench.picture.source import PictureCodes
from workbench.project.document import Project
from workbench.timing.mode import Axis, Region

__all__ = ["Area", "frame_areas", "line_areas", "moved_stretches", "region_spans", "stretches"]

Stretch = tuple[int, int]
"""First count, and the one after the last, from the start of the front porch."""


@dataclass(frozen=True, slots=True)
class Area:
    """A stretch of the time axis and its name, in counts from the start of the front porch."""

    first: int
    after: int
    name: str
    blanking: bool = False


def region_spans(axis: Axis) -> list[tuple[Region, int, int]]:
    """Return the regions of a line or frame with their first count and the one after the last."""
    starts = (0, *axis.edges[:-1])
    return list(zip(Region, starts, axis.edges, strict=True))


def _blanking_areas(axis: Axis) -> list[Area]:
    return [
        Area(first, after, region.value, blanking=True)
        for region, first, after in region_spans(axis)
        if region is not Region.ACTIVE and after > first
    ]


def line_areas(project: Project, picture: PictureCodes) -> tuple[Area, ...]:
    """Return the areas of the scanline: its blanking, and what is shown in the picture."""
    mode, row = project.mode, project.scanline - 1
    areas = _blanking_areas(mode.h)
    if row < mode.v.active:
        start = mode.h.blanking
        areas += [Area(start + label.start, start + label.stop, label.text) for label in picture.labels(row)]
    else:
        region = mode.v.region(row - mode.v.active)
        areas.append(Area(mode.h.blanking, mode.h.total, f"vertical {region.value}: no picture"))
    return tuple(areas)


def frame_areas(project: Project) -> tuple[Area, ...]:
    """Return the areas of the frame."""
    v = project.mode.v
    return (
        *_blanking_areas(v),
        Area(v.blanking, v.total, "lines of the picture, the highest and lowest level of each"),
    )


def stretches(lit: NDArray[np.bool_]) -> list[Stretch]:
    """Return the runs of true."""
    steps = np.diff(np.concatenate(([0], lit.astype(np.int8), [0])))
    first, after = np.flatnonzero(steps == 1), np.flatnonzero(steps == -1)
    return list(zip(first.tolist(), after.tolist(), strict=True))


def moved_stretches(network: Network, codes: NDArray[np.intp], part: PartId) -> list[Stretch]:
    """Return the pixels whose code raises the pin of a part's leg.

    Parameters
    ----------
    network : Network
        The channel's network.
    codes : int array, shape (n_pixels,)
        The channel's codes of the line. [1]
    part : PartId
        A part of the network; one that is not in the leg of a single pin moves nothing by itself.
    """
    pin = pin_of_part(network, part)
    return [] if pin is None else stretches(pin_states(network)[codes, pin] > 0.0)
