"""Quantities in and out: typed text to SI numbers, SI numbers to text.

Reading is strict: the whole text is understood or a sentence says why not. A comma is a
decimal comma or is refused, never dropped. Everything inside the program is in SI base units;
prefixes exist only here.

>>> parse_quantity("4k7", "Ω")
4700.0
>>> parse_quantity("1k||1k", "Ω")
500.0
>>> format_quantity(4700, "Ω")
'4.7 kΩ'
>>> format_fixed(31.7776e-6, "s", prefix="µ")
'31.778 µs'
"""

import math
import re
from functools import lru_cache
from typing import ClassVar

from quantiphy import Quantity

from workbench.errors import QuantityError

__all__ = [
    "format_fixed",
    "format_percent",
    "format_quantity",
    "format_significant",
    "parse_current",
    "parse_list",
    "parse_quantity",
    "split_values",
]

_POWERS = {"f": -15, "p": -12, "n": -9, "u": -6, "µ": -6, "m": -3, "k": 3, "K": 3, "M": 6, "G": 9, "T": 12}
_SPELLINGS = {
    "Ω": ("Ω", "ohms", "ohm", "R"),
    "V": ("V",),
    "A": ("A",),
    "W": ("W",),
    "F": ("F",),
    "s": ("s",),
    "Hz": ("Hz",),
    "m": ("m",),
    "%": ("%",),
}
_EXAMPLES = {
    "Ω": "4k7",
    "V": "3.3",
    "A": "4m",
    "W": "0.25",
    "F": "12p",
    "s": "2n",
    "Hz": "25.175M",
    "m": "2",
    "%": "1",
}
_NOUNS = {
    "Ω": "a resistance",
    "V": "this voltage",
    "A": "this current",
    "W": "a power rating",
    "F": "a capacitance",
    "s": "this time",
    "Hz": "a rate",
    "m": "a length",
    "%": "this percentage",
}

_MINUS = "\u2212"
_LONGEST = 80
_TIDY = str.maketrans({_MINUS: "-", "\u03bc": "µ", "\u2126": "Ω"} | dict.fromkeys("\u00a0\u2009\u202f", " "))
_SUFFIX = r"\s*(?P<suffix>[^0-9\s.,+-]*(?:\s+[^0-9\s.,+-]+)?)"
_NUMBER = re.compile(r"(?P<number>[0-9]+(?:[.,][0-9]*)?|[.,][0-9]+)(?P<power>[eE][+-]?[0-9]+)?" + _SUFFIX)
_BARE = re.compile(r"[+-]?(?:[0-9]+(?:[.,][0-9]*)?|[.,][0-9]+)")
_MARKED = re.compile(r"(?P<whole>[0-9]*)(?P<mark>[^\W\d_])(?P<part>[0-9]+)" + _SUFFIX)
_OPERATORS = re.compile(r"(\|\||\(|\)|(?<![eE])\+)")


def parse_quantity(text: str, unit: str, *, zero: bool = False, negative: bool = False) -> float:
    """Read a typed value.

    Takes plain numbers (``4700``, ``1e3``), a decimal point or comma, a prefix with or without
    the unit (``4.7k``, ``4,7 kΩ``, ``5 k Ω``, ``39.7 ns``), the letter in the decimal place (``4k7``,
    ``0R5``, ``3V3``) [1]_, and for resistances parts in parallel and in series (``1k||1k``,
    ``820+150``; parallel binds closer, brackets help).

    Parameters
    ----------
    text : str
        What was typed.
    unit : str
        One of ``Ω V A W F s Hz m %``. A percentage comes back as a part of one.
    zero : bool
        Whether 0 is a value here.
    negative : bool
        Whether a value below 0 is one here.

    Returns
    -------
    float
        Finite value in the SI base unit.

    Raises
    ------
    QuantityError
        If any of the text is not understood, or the value is not possible; says why.

    References
    ----------
    .. [1] IEC 60062, letter and digit code; read at en.wikipedia.org/wiki/IEC/EN_60062.
    """
    tidy = text.translate(_TIDY).strip()
    if not tidy:
        raise QuantityError(f"there is no value: type one like {_EXAMPLES[unit]}")
    if len(tidy) > _LONGEST:
        raise QuantityError(f"a value has at most {_LONGEST} characters: type one like {_EXAMPLES[unit]}")
    if unit == "Ω" and len(tokens := _tokens(tidy)) > 1:
        value = _sum(tokens)
        if tokens:
            raise QuantityError(f"“{tidy}” is not understood after “{tidy.rpartition(tokens[0])[0]}”")
        return value
    return _checked(_number(tidy, unit), tidy, unit, zero=zero, negative=negative)


def split_values(text: str) -> tuple[str, ...]:
    """Split a list from the command line, where a comma separates.

    Raises
    ------
    QuantityError
        If a value is missing between two commas.
    """
    items = tuple(item.strip() for item in text.split(","))
    if not all(items):
        raise QuantityError(f"a value is missing in “{text}”: separate values by one comma, as in 500,1k,2k")
    return items


def parse_list(text: str, unit: str, *, zero: bool = False) -> tuple[float, ...]:
    """Read a comma-separated list of values; see :func:`split_values` and :func:`parse_quantity`."""
    return tuple(parse_quantity(item, unit, zero=zero) for item in split_values(text))


def parse_current(text: str) -> float:
    """Read a current; a bare number is in milliamperes, like every current that is shown. [A]

    Raises
    ------
    QuantityError
        As :func:`parse_quantity`.

    Examples
    --------
    >>> parse_current("20"), parse_current("20 mA"), parse_current("0.02 A")
    (0.02, 0.02, 0.02)
    """
    bare = bool(_BARE.fullmatch(text.strip()))
    return parse_quantity(f"{text.strip()} mA" if bare else text, "A")


def format_quantity(value: float, unit: str, digits: int = 4) -> str:
    """Return a value with the prefix that suits it, as ``4.7 kΩ``; trailing zeros are dropped.

    ``digits`` counts significant digits. The minus is U+2212; an infinite value shows as ``∞``
    and one that is no number as a dash.
    """
    if not math.isfinite(value):
        return f"{_unbounded(value)} {unit}"
    return _rendered(value, unit, digits, strip_zeros=True)


def format_fixed(value: float, unit: str, *, prefix: str = "", decimals: int = 3) -> str:
    """Return a value with a fixed prefix and number of decimals, for columns: ``0.743 V``."""
    if not math.isfinite(value):
        return f"{_unbounded(value)} {prefix}{unit}"
    scale = 10.0 ** _POWERS[prefix] if prefix else 1.0
    return f"{_plain(value / scale, decimals)} {prefix}{unit}".rstrip()


def format_significant(value: float, unit: str, digits: int = 4) -> str:
    """Return a value with the prefix that suits it and its trailing zeros kept: ``5.540 mA``; ``0 A``."""
    if not math.isfinite(value):
        return f"{_unbounded(value)} {unit}"
    if value == 0.0:
        return f"0 {unit}"
    return _rendered(value, unit, digits, strip_zeros=False)


def format_percent(part: float, decimals: int = 1) -> str:
    """Return a part of one as a percentage: ``0.005`` is ``0.5 %``; trailing zeros are dropped."""
    if not math.isfinite(part):
        return f"{_unbounded(part)} %"
    text = _plain(part * 100.0, decimals)
    return f"{text.rstrip('0').rstrip('.') if '.' in text else text} %"


class _Readable(Quantity):
    """A quantity in our notation."""

    minus = _MINUS
    output_sf = "TGMkmunpf"
    map_sf: ClassVar = {"u": "µ"}


@lru_cache(maxsize=4096)
def _rendered(value: float, unit: str, digits: int, *, strip_zeros: bool) -> str:
    # Kept, since most of the some fifty values that are shown anew after an edit are the old ones.
    return str(_Readable(value, unit).render(prec=digits - 1, strip_zeros=strip_zeros))


def _unbounded(value: float) -> str:
    return "–" if math.isnan(value) else "∞" if value > 0 else f"{_MINUS}∞"


def _plain(value: float, decimals: int) -> str:
    text = f"{value:.{decimals}f}"
    if not text.strip("-0."):
        text = text.lstrip("-")
    return text.replace("-", _MINUS)


def _tokens(text: str) -> list[str]:
    return [token.strip() for token in _OPERATORS.split(text.lstrip("+")) if token.strip()]


def _sum(tokens: list[str]) -> float:
    """Take a sum of parallel groups off the front of the tokens. [Ω]"""
    ohms = _parallel(tokens)
    while tokens and tokens[0] == "+":
        tokens.pop(0)
        ohms += _parallel(tokens)
    return ohms


def _parallel(tokens: list[str]) -> float:
    ohms = _operand(tokens)
    while tokens and tokens[0] == "||":
        tokens.pop(0)
        other = _operand(tokens)
        ohms = 1.0 / (1.0 / ohms + 1.0 / other)
    return ohms


def _operand(tokens: list[str]) -> float:
    if not tokens or tokens[0] in ("||", "+", ")"):
        raise QuantityError("a value is missing beside || or +: write both, as in 1k||1k or 820+150")
    token = tokens.pop(0)
    if token != "(":
        return _checked(_number(token, "Ω"), token, "Ω", zero=False, negative=False)
    ohms = _sum(tokens)
    if not tokens or tokens.pop(0) != ")":
        raise QuantityError("a bracket is open: write both, as in (820+150)||1k")
    return ohms


def _number(text: str, unit: str) -> float:
    """Read one number with its prefix and unit; the sign is kept, the range is not judged."""
    sign, body = (-1.0, text[1:].lstrip()) if text[0] == "-" else (1.0, text.removeprefix("+").lstrip())
    if plain := _NUMBER.fullmatch(body):
        _refuse_grouping(plain["number"])
        power = _power("".join(plain["suffix"].split()), unit, text)
        if plain["power"]:
            if plain["suffix"] in _POWERS and plain["suffix"] != unit:
                raise QuantityError(f"“{text}” has a power of ten and a prefix: write one of them")
            power += int(plain["power"][1:][:6])
        return sign * float(f"{plain['number'].replace(',', '.')}e{power}")
    if (marked := _MARKED.fullmatch(body)) and marked["mark"] in {*_POWERS, *_SPELLINGS[unit]}:
        mark, suffix = marked["mark"], marked["suffix"]
        figure = f"{marked['whole'] or '0'}.{marked['part']}"
        if suffix and (suffix == mark or suffix not in _SPELLINGS[unit] or suffix == "R"):
            raise _twice(mark, suffix, figure, unit)
        return sign * float(f"{figure}e{0 if mark in _SPELLINGS[unit] else _POWERS[mark]}")
    raise _unreadable(text, body, unit)


def _power(suffix: str, unit: str, text: str) -> int:
    """Return the power of ten that a suffix such as ``k``, ``ns`` or ``Ω`` stands for."""
    base = -2 if unit == "%" else 0
    if not suffix or suffix in _SPELLINGS[unit]:
        return base
    if unit != "%":
        for spelling in ("", *_SPELLINGS[unit]):
            prefix = suffix.removesuffix(spelling)
            if suffix.endswith(spelling) and prefix in _POWERS and spelling != "R":
                return _POWERS[prefix]
    raise QuantityError(
        f"“{suffix}” in “{text}” is no unit of {_NOUNS[unit]}: type a value like {_EXAMPLES[unit]}"
    )


def _refuse_grouping(number: str) -> None:
    whole, comma, part = number.partition(",")
    if comma and len(part) == 3 and 1 <= len(whole) <= 3 and whole.strip("0"):
        decimal = f"{whole}.{part}".rstrip("0").rstrip(".")
        raise QuantityError(f"{number} may mean {decimal} or {whole}{part}: write one of them")


def _twice(mark: str, suffix: str, figure: str, unit: str) -> QuantityError:
    shown = figure.replace(".", mark).replace("K", "k")
    if suffix[0] == mark:
        prefix = "" if mark in _SPELLINGS[unit] else mark.replace("K", "k")
        return QuantityError(f"the unit {mark} stands twice: {figure} {prefix}{unit} is written {shown}")
    return QuantityError(f"{mark} and {suffix} both stand for the unit: write one of them, as in {shown}")


def _unreadable(text: str, body: str, unit: str) -> QuantityError:
    example = f"type a value like {_EXAMPLES[unit]}"
    if body.lower() in ("nan", "inf", "infinity", "∞"):
        return QuantityError(f"“{text}” is not a number: {example}")
    if sum(map(body.count, ".,")) > 1:
        return QuantityError(f"“{text}” has more than one point or comma: write it without separators")
    if re.search(r"\d\s+\d", body):
        return QuantityError(f"“{text}” has a space inside the number: write it without")
    return QuantityError(f"“{text}” is not understood: {example}")


def _checked(value: float, text: str, unit: str, *, zero: bool, negative: bool) -> float:
    if math.isinf(value):
        raise QuantityError(f"“{text}” is too large: type a value like {_EXAMPLES[unit]}")
    if value < 0.0 and not negative:
        bound = "must not be below 0" if zero else "must be above 0"
        raise QuantityError(f"“{text}” is not possible: {_NOUNS[unit]} {bound}")
    if value == 0.0 and not (zero or negative):
        raise QuantityError(
            f"“{text}” is not possible: {_NOUNS[unit]} must be above 0, as in {_EXAMPLES[unit]}"
        )
    return value + 0.0
