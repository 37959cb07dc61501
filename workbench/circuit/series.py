"""Preferred values of IEC 60063: the tables, and steps along them."""

from enum import Enum

__all__ = ["Series"]


class Series(Enum):
    """A series of preferred values, by its number of steps a decade."""

    E3 = 3
    E6 = 6
    E12 = 12
    E24 = 24
    E48 = 48
    E96 = 96
    E192 = 192
