"""CVT and GTF against published results, the DMT's own CVT modes, and known wrong results."""

import csv
from collections.abc import Callable
from pathlib import Path

import pytest

from workbench.timing.formulas.cvt import cvt, cvt_rb, cvt_rb2
from workbench.timing.formulas.gtf import gtf
from workbench.timing.mode import Mode
from workbench.timing.standards import DMT, dmt_mode

FORMULAS: dict[str, Callable[[int, int, float], Mode]] = {
    "cvt": cvt,
    "cvt_rb": cvt_rb,
    "cvt_rb2": cvt_rb2,
    "gtf": gtf,
}
# How far a published clock may be off, because it was printed to 10 kHz; RB v2 was cut, GTF rounded.
CLOCK_SLACK_HZ = {"cvt": 0, "cvt_rb": 0, "cvt_rb2": 10_000, "gtf": 6_000}


def rows(name: str) -> list[dict[str, str]]:
    lines = (Path(__file__).parent / "data" / name).read_text(encoding="utf-8").splitlines()
    return list(csv.DictReader(line for line in lines if not line.startswith("#")))


def made(row: dict[str, str]) -> Mode:
    return FORMULAS[row["formula"]](int(row["width"]), int(row["height"]), float(row["refresh"]))


def counts(mode: Mode) -> tuple[object, ...]:
    h, v = mode.h, mode.v
    h_counts = (h.total, h.front_porch, h.sync, h.back_porch)
    return *h_counts, v.total, v.front_porch, v.sync, v.back_porch, h.polarity.value, v.polarity.value


def published(row: dict[str, str]) -> tuple[object, ...]:
    names = ("h_total", "h_front", "h_sync", "h_back", "v_total", "v_front", "v_sync", "v_back")
    return *(int(row[name]) for name in names), row["hpol"], row["vpol"]


def case(row: dict[str, str]) -> str:
    return f"{row['formula']} {row['width']}x{row['height']}@{row['refresh']}"


@pytest.mark.parametrize("row", rows("cvt_gtf_published.csv"), ids=case)
def test_published_result(row: dict[str, str]) -> None:
    mode = made(row)

    assert counts(mode) == published(row)
    assert abs(mode.pixel_clock_hz - 1000 * int(row["pixel_clock_khz"])) <= CLOCK_SLACK_HZ[row["formula"]]


@pytest.mark.parametrize("row", rows("cvt_gtf_traps.csv"), ids=case)
def test_known_wrong_result_is_not_ours(row: dict[str, str]) -> None:
    """Widely copied lines with sync 8 pixels late, a clock 0.25 MHz low, or no GTF at all."""
    mode = made(row)
    names = ("h_total", "h_front", "h_sync", "h_back", "v_total", "v_front", "v_sync", "v_back", "hpol")
    ours = dict(zip(names, counts(mode), strict=False)) | {"pixel_clock_khz": mode.pixel_clock_hz / 1000}

    for difference in row["differs_from_standard_formula"].split("; "):
        field, _, values = difference.partition(": published ")
        wrong, _, right = values.partition(", formula ")
        if field == "hpol":
            assert ours[field] == right != wrong
        else:
            assert ours[field] == pytest.approx(float(right), abs=0.5)
            assert abs(float(wrong) - float(right)) >= 1


CVT_CODED = "17 18 19 1c 1d 1e 2a 2b 2c 2f 30 31 3a 3b 3c 45 46 47 4d 4e 4f"
RB_CODED = "0d 14 16 1a 1b 1f 22 26 28 29 2d 2e 32 38 39 3d 40 43 44 48 4b 4c 50"


@pytest.mark.parametrize(
    ("formula", "number"),
    [
        *((cvt, int(text, 16)) for text in CVT_CODED.split()),
        *((cvt_rb, int(text, 16)) for text in RB_CODED.split()),
    ],
    ids=lambda value: f"0x{value:02x}" if isinstance(value, int) else value.__name__,
)
def test_the_dmt_modes_marked_as_cvt(formula: Callable[[int, int, float], Mode], number: int) -> None:
    standard = dmt_mode(number)
    rate_hz = float(standard.name.partition("@")[2].removesuffix("RB"))

    mode = formula(standard.h.active, standard.v.active, rate_hz)

    assert (mode.h, mode.v, mode.pixel_clock_hz) == (standard.h, standard.v, standard.pixel_clock_hz)


@pytest.mark.parametrize(("number", "video"), [(0x57, False), (0x58, True)])
def test_the_dmt_modes_of_reduced_blanking_2(number: int, video: bool) -> None:
    assert cvt_rb2(4096, 2160, 60, video=video).pixel_clock_hz == dmt_mode(number).pixel_clock_hz
    assert cvt_rb2(4096, 2160, 60, video=video).v == dmt_mode(number).v


def test_every_120_hz_mode_of_the_dmt_is_checked() -> None:
    at_120 = [f"{number:02x}" for number, mode in enumerate(DMT, 1) if "@120RB" in mode.name]

    assert set(at_120) <= set(RB_CODED.split())
    assert len(at_120) == 16
