"""Edits of the picture: test card, image, colour, repeats, the code in blanking, the scanline shown."""

from dataclasses import replace

from workbench.errors import EditError
from workbench.picture.scene import MOST_TRANSFER, REPEATS, Card, Dither, Fit, Image, Measure
from workbench.project.document import Channel, Project

__all__ = [
    "set_blanking_code",
    "set_card",
    "set_colour",
    "set_dither",
    "set_fit",
    "set_repeats",
    "set_scanline",
    "set_transfer",
    "show_image",
    "step_scanline",
]


def set_card(project: Project, card: Card) -> Project:
    """Show a test card, in place of the one or of the image that is shown."""
    return replace(project, picture=replace(project.picture, card=card, image=None))


def show_image(project: Project, image: Image) -> Project:
    """Show an image in place of the test card."""
    return replace(project, picture=replace(project.picture, image=image))


def set_fit(project: Project, fit: Fit, *, smooth: bool | None = None) -> Project:
    """Choose how an image is brought to the size of the mode."""
    picture = replace(project.picture, fit=fit)
    return replace(project, picture=picture if smooth is None else replace(picture, smooth=smooth))


def set_dither(project: Project, dither: Dither, measure: Measure | None = None) -> Project:
    """Choose how a value between two levels is shown, and in what means are taken."""
    picture = replace(project.picture, dither=dither)
    return replace(project, picture=picture if measure is None else replace(picture, measure=measure))


def set_transfer(project: Project, transfer: tuple[float, ...]) -> Project:
    """Send an image through a curve over values from 0 to 1, evenly spaced; an empty one leaves it. [1]"""
    if len(transfer) == 1 or len(transfer) > MOST_TRANSFER:
        raise EditError(f"a transfer table has 2 to {MOST_TRANSFER} values, or none")
    if not all(0.0 <= value <= 1.0 for value in transfer):
        raise EditError("the values of a transfer table lie between 0 and 1")
    return replace(project, picture=replace(project.picture, transfer=transfer))


def set_colour(project: Project, colour: tuple[float, float, float]) -> Project:
    """Give the solid card another colour: red, green, blue as parts of full scale. [1]"""
    if not all(0.0 <= part <= 1.0 for part in colour):
        raise EditError("a colour's parts lie between 0 and 1: black is 0, full scale is 1")
    return replace(project, picture=replace(project.picture, colour=colour))


def set_repeats(project: Project, *, pixels: int | None = None, lines: int | None = None) -> Project:
    """Send each column of the picture as 1, 2 or 4 pixels, each row as 1, 2 or 4 lines. [1]"""
    picture = project.picture
    for count in (pixels, lines):
        if count is not None and count not in REPEATS:
            raise EditError(f"a picture is sent once, doubled or four times over, not {count} times")
    return replace(
        project,
        picture=replace(
            picture,
            repeat_pixels=pixels or picture.repeat_pixels,
            repeat_lines=lines or picture.repeat_lines,
        ),
    )


def set_blanking_code(project: Project, channel: Channel, code: int) -> Project:
    """Let a channel show another code outside the active picture; black is 0. [1]"""
    highest = project.channels[channel].n_codes - 1
    if not 0 <= code <= highest:
        raise EditError(f"the {channel.value} code in blanking lies between 0 and {highest}, not {code}")
    codes = [*project.picture.blanking]
    codes[list(Channel).index(channel)] = code
    red, green, blue = codes
    return replace(project, picture=replace(project.picture, blanking=(red, green, blue)))


def set_scanline(project: Project, scanline: int) -> Project:
    """Show another scanline, counted from 1 at the first line of the picture. [1]"""
    total = project.mode.v.total
    if not 1 <= scanline <= total:
        raise EditError(f"{project.mode.name} has scanlines 1 to {total}, not {scanline}")
    return replace(project, scanline=scanline)


def step_scanline(project: Project, lines: int) -> Project:
    """Move the scanline down (or, below 0, up) by some lines; it stops at the frame's ends. [1]"""
    return replace(project, scanline=min(max(project.scanline + lines, 1), project.mode.v.total))
