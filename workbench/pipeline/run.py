"""Run a project through the engine, each stage at most once for the same inputs."""

from collections.abc import Callable
from dataclasses import replace
from fractions import Fraction

import numpy as np
from numpy.typing import NDArray

from workbench.checks import run_checks
from workbench.checks.measures import Measures, owns_nothing
from workbench.circuit.ladders import recognise
from workbench.circuit.linearity import Linearity, linearity
from workbench.circuit.network import Cable, Driver, Load, Network
from workbench.circuit.response import Glitch, PixelPulse, glitches, pixel_pulse, step_figures
from workbench.circuit.solution import Levels, solve_levels
from workbench.picture.images import image_pixels
from workbench.picture.scene import Image
from workbench.picture.source import PictureCodes
from workbench.pipeline.memory import Memory
from workbench.pipeline.pictures import Pictures
from workbench.pipeline.result import ChannelResult, ChannelResults, PinTotals, Result
from workbench.project.document import Channel, Project, SyncLines
from workbench.timing.mode import Mode
from workbench.waveform.kernel import Kernel, pixel_kernel
from workbench.waveform.scanline import Scanline, line_codes, render_scanline, samples_per_pixel
from workbench.waveform.slips import NO_SLIPS, Slips, slipped_codes
from workbench.waveform.sync import SyncDrive, sync_high_volts
from workbench.waveform.uneven import FINER

__all__ = ["Pipeline", "board_kernel", "pin_totals", "sync_drive"]

ByteArray = NDArray[np.uint8]


class Pipeline:
    """Turns projects into results; its stages remember their last few answers.

    A stage's inputs are frozen values or the very objects that earlier stages gave, so whether
    something changed is one look into a dictionary.
    """

    def __init__(
        self,
        pixels: Callable[[Image], ByteArray] = image_pixels,
        *,
        hurried: bool = False,
        owns: Callable[[float], bool] = owns_nothing,
    ) -> None:
        """Remember nothing yet.

        Parameters
        ----------
        pixels : callable
            Finds the pixels of an image, or raises `FileError`.
        hurried : bool
            Whether rows of a picture that needs time may be near to the right ones until somebody
            has asked for its whole frame.
        owns : callable
            Tells whether a resistor of a value lies in the person's drawer. [Ω]
        """
        self._hurried, self._owns = hurried, owns
        self._recognise = Memory(recognise)
        self._levels = Memory(solve_levels)
        self._linearity = Memory(_linearity)
        self._step = Memory(step_figures)
        self._pulse = Memory(_pulse)
        self._glitch = Memory(_glitch)
        self._kernel = Memory(board_kernel)
        self._pictures = Pictures(pixels)
        self._scanline = Memory(_scanline)

    def run(self, project: Project, slips: Slips = NO_SLIPS, *, design: Project | None = None) -> Result:
        """Return everything that follows from a project.

        Parameters
        ----------
        project : Project
            Any valid project: networks that make no sense give findings, not errors.
        slips : Slips
            What the board does beside the design; levels and findings are those of the design.
        design : Project, optional
            The board that the picture's codes were made for, where ``project`` is a broken one.

        Returns
        -------
        Result
            Stages whose inputs did not change are the same objects as before.
        """
        channels = ChannelResults(*(self._channel(project, c) for c in Channel))
        pins = pin_totals(project, channels)
        picture, problem = self._picture(project, design or project)
        scanline = None if project.mode.interlaced else self._line(project, channels, picture, slips)
        findings = run_checks(project, Measures(channels, pins, self._owns))
        return Result(project, channels, pins, picture, scanline, findings, problem, slips)

    def forget_images(self) -> None:
        """Ask for the pixels of images anew: their files may be others now, or gone."""
        self._pictures.forget()

    def _channel(self, project: Project, channel: Channel) -> ChannelResult:
        network, skews_s = project.channels[channel], project.skews[channel]
        driver, load, cable, mode = project.driver, project.load, project.cable, project.mode
        samples = samples_per_pixel(mode) * (1 if project.pixel_divider is None else FINER)
        levels = self._levels(network, driver, load)
        return ChannelResult(
            network,
            self._recognise(network),
            levels,
            self._linearity(levels),
            self._step(network, driver, load, cable),
            self._pulse(network, driver, load, cable, mode.pixel_s, samples, skews_s),
            self._glitch(network, driver, load, cable, skews_s) if any(skews_s) else None,
        )

    def _picture(self, project: Project, design: Project) -> tuple[PictureCodes, str | None]:
        red, green, blue = (project.channels[c].bits for c in Channel)
        r, g, b = (self._levels(design.channels[c], design.driver, design.load) for c in Channel)
        codes, problem = self._pictures.codes(project.picture, project.mode, (red, green, blue), (r, g, b))
        if not (codes.settled or self._hurried):
            codes.frame()
        return codes, problem

    def _line(
        self, project: Project, channels: ChannelResults, picture: PictureCodes, slips: Slips
    ) -> Scanline:
        red, green, blue = (channels[c] for c in Channel)
        return self._scanline(
            project.mode,
            project.scanline,
            picture,
            picture.settled,
            tuple(self._kernel(c.levels, c.pulse, project.pixel_divider) for c in (red, green, blue)),
            sync_drive(project.driver, project.sync),
            slips,
        )


def _linearity(levels: Levels) -> Linearity:
    return linearity(levels.volts_by_code)


def _pulse(
    network: Network,
    driver: Driver,
    load: Load,
    cable: Cable | None,
    pixel_s: float,
    samples: int,
    skews_s: tuple[float, ...],
) -> PixelPulse:
    return pixel_pulse(network, driver, load, cable, pixel_s=pixel_s, samples=samples, skews_s=skews_s)


def board_kernel(levels: Levels, pulse: PixelPulse, divider: float | None) -> Kernel:
    """Return how a channel turns codes into volts, with the project's ``pixel_divider``."""
    kernel = pixel_kernel(levels.volts_by_code, levels.states, pulse.volts)
    return kernel if divider is None else replace(kernel, divider=Fraction(divider), finer=FINER)


def _glitch(
    network: Network, driver: Driver, load: Load, cable: Cable | None, skews_s: tuple[float, ...]
) -> Glitch | None:
    found = glitches(network, driver, load, cable, skews_s)
    return max(found, key=lambda glitch: abs(glitch.area_volt_s), default=None)


def _scanline(
    mode: Mode,
    number: int,
    picture: PictureCodes,
    _settled: bool,
    kernels: tuple[Kernel, ...],
    sync: SyncDrive,
    slips: Slips,
) -> Scanline:
    red, green, blue = kernels
    codes, before = (line_codes(mode, picture, n) for n in (number, number - 1))
    if slips != NO_SLIPS:
        codes, before = (
            slipped_codes(slips, line, picture.bits, mode.h.blanking) for line in (codes, before)
        )
    return render_scanline(mode, number, codes, before, kernels=(red, green, blue), sync=sync)


def sync_drive(driver: Driver, sync: SyncLines) -> SyncDrive:
    """Return what the two sync lines carry at the monitor."""
    h_volts, v_volts = (
        sync_high_volts(driver, line.series_ohms, line.input_ohms) for line in (sync.h, sync.v)
    )
    return SyncDrive(h_volts, v_volts, driver.rise_s)


def pin_totals(project: Project, channels: ChannelResults) -> PinTotals:
    """Return the worst currents of the colour pins over all codes.

    Notes
    -----
    The three channels show their codes independently, so all pins together are worst when each
    channel is at its own worst code. What one pin sinks another one sources: only what the
    supply delivers counts for the total, either direction for a single pin.
    """
    total_amps, worst_amps, worst_pin = 0.0, 0.0, ""
    for channel in Channel:
        pin_amps = channels[channel].levels.pin_amps
        if pin_amps.shape[1] == 0:
            continue
        total_amps += float(pin_amps.clip(min=0.0).sum(axis=1).max())
        by_pin = abs(pin_amps).max(axis=0)
        if by_pin.max() > worst_amps:
            worst_amps, worst_pin = float(by_pin.max()), project.wiring[channel][int(by_pin.argmax())]
    return PinTotals(total_amps, worst_amps, worst_pin)
