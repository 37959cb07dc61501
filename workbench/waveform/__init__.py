"""Volts over time: the scanline at the monitor, whole frames, and what a monitor and the eye make of them.

Takes levels and pixel pulses from ``circuit``, counts from ``timing`` and codes from
``picture``; knows no project. Start with :mod:`scanline`. :mod:`kernel` holds the one idea
that makes it quick, :mod:`uneven` lets pixels start on the clocks of a fractional divider,
:mod:`frame` does every line, :mod:`seen` shows a frame as a monitor does (:mod:`monitor`,
:mod:`sampling`, :mod:`adjustment`, :mod:`verdict`), :mod:`working` explains one pixel,
:mod:`slips` breaks what a board is told, :mod:`eye` turns volts into light.
"""
