"""New projects and the shipped ones."""

from dataclasses import replace
from typing import Any

import pytest

from workbench.circuit.ladders import Topology, recognise
from workbench.circuit.linearity import linearity
from workbench.circuit.network import Driver, Load
from workbench.circuit.series import Series, is_in
from workbench.circuit.solution import solve_levels
from workbench.circuit.wish import LadderWish, Shape
from workbench.errors import EditError
from workbench.files.assets import asset_path
from workbench.files.project_file import read_project
from workbench.pipeline.run import Pipeline
from workbench.project.document import Channel
from workbench.project.templates import TEMPLATES, Template, Wishes, default_wiring, make_project
from workbench.timing.search import find_mode

MODE = find_mode("640x480@60")


def alike(shape: Shape = Shape.WEIGHTED, **wish: Any) -> Wishes:
    """Return the same wish for all three channels."""
    one = LadderWish(shape, **wish)
    return one, one, one


@pytest.mark.parametrize("template", TEMPLATES, ids=lambda template: template.title)
def test_the_shipped_file_is_the_template(template: Template) -> None:
    assert read_project(asset_path(f"projects/{template.file}")) == template.project()


@pytest.mark.parametrize("template", TEMPLATES, ids=lambda template: template.title)
def test_every_template_has_a_right_white_at_one_monitor(template: Template) -> None:
    project = template.project()
    for channel in Channel:
        levels = solve_levels(project.channels[channel], project.driver, replace(project.load, monitors=1))
        assert 0.665 <= levels.volts_by_code[-1] <= 0.770  # DAC table, see workbench.checks.limits
        assert levels.problems == ()


def test_no_file_lies_in_assets_that_is_no_template() -> None:
    shipped = {path.name for path in asset_path("projects").iterdir()}

    assert shipped == {template.file for template in TEMPLATES}


def test_every_template_says_itself_in_one_sentence() -> None:
    for template in TEMPLATES:
        assert template.description.endswith(".")
        assert template.description.count(".") == template.description.count(". ") + 1
    assert len({template.title for template in TEMPLATES}) == len(TEMPLATES)


def test_one_template_is_segmented() -> None:
    (clock,) = (each for each in TEMPLATES if each.wishes[0].shape is Shape.SEGMENTED)
    network = clock.project().channels.red

    assert recognise(network) is Topology.SEGMENTED
    legs = [part.ohms for part in network.resistors][: network.n_thermometer_pins]
    assert len(legs) == 3
    assert len(set(legs)) == 1
    line = linearity(solve_levels(network, Driver(), Load()).volts_by_code)
    assert line.max_dnl_lsb < 0.25


def test_one_template_has_a_long_cable_and_a_monitor_too_many() -> None:
    (second,) = (each for each in TEMPLATES if each.cable is not None)
    project = second.project()

    result = Pipeline().run(project)

    assert result.channels.red.levels.volts_by_code[-1] == pytest.approx(0.415, abs=5e-4)
    step = result.channels.red.step
    assert step.first_ghost_ratio == pytest.approx(-0.18, abs=0.01)
    # Own arithmetic: there and back, 2 × 10 m at 0.66 of light.
    assert step.first_ghost_s == pytest.approx(2 * 10.0 / (0.66 * 299792458.0), rel=0.01)
    assert {"full-scale", "load"} <= {finding.id for finding in result.findings}


def test_pins_count_on_from_red_to_sync() -> None:
    wiring = default_wiring((3, 3, 2))

    assert wiring.red == ("P0", "P1", "P2")
    assert wiring.blue == ("P6", "P7")
    assert (wiring.h, wiring.v) == ("P8", "P9")


def test_given_values_are_taken_as_they_are() -> None:
    project = make_project(MODE, alike(bits=3, values=(500.0, 1000.0, 2000.0)))

    assert [part.ohms for part in project.channels.blue.resistors] == [500.0, 1000.0, 2000.0]
    assert project.linked


@pytest.mark.parametrize("shape", Shape)
def test_sized_values_bring_white_to_700_millivolts(shape: Shape) -> None:
    project = make_project(MODE, alike(shape, bits=4))

    levels = solve_levels(project.channels.red, project.driver, project.load)
    assert levels.volts_by_code[-1] == pytest.approx(0.7)
    assert [len(project.wiring[channel]) for channel in Channel] == [project.channels.red.n_pins] * 3


def test_a_series_is_kept_to() -> None:
    wish = LadderWish(bits=3, series=Series.E12, shunt_ohms=150.0)
    project = make_project(MODE, (wish, wish, replace(wish, bits=2)))

    legs = [part for part in project.channels.red.resistors if part.id != "RS"]
    assert all(is_in(part.ohms, Series.E12) for part in legs)
    assert (project.series, project.linked) == (Series.E12, False)


@pytest.mark.parametrize(
    ("wish", "sentence"),
    [
        (LadderWish(bits=9), "a channel has 1 to 8 bits, not 9"),
        (LadderWish(bits=0), "a channel has 1 to 8 bits, not 0"),
        (LadderWish(bits=3, values=(1e3,)), "a weighted ladder of 3 bits takes 3 values, not 1"),
        (LadderWish(Shape.R2R, 3, values=(1.0, 2.0, 3.0)), "an R-2R ladder takes R, or R and 2R, not 3"),
        (LadderWish(Shape.SEGMENTED, 1), "not 2 of 1"),
        (
            LadderWish(Shape.SEGMENTED, 4, values=(1e3, 2e3)),
            "takes 3 values .one of its equal legs first., not 2",
        ),
        (LadderWish(Shape.EQUAL, 3, values=(1e3, 2e3)), "a ladder of equal parts takes one value, not 2"),
        (LadderWish(Shape.EQUAL, 8, values=(1e6,)), "R1 would take 128 parts"),
        (LadderWish(bits=1, values=(0.0,)), "cannot be 0 Ω"),
    ],
)
def test_impossible_wishes_are_refused(wish: LadderWish, sentence: str) -> None:
    with pytest.raises(EditError, match=sentence):
        make_project(MODE, (wish, wish, wish))


def test_weak_pins_are_said() -> None:
    with pytest.raises(EditError, match="no resistors bring white to the wanted level from 500 mV"):
        make_project(MODE, alike(), driver=Driver(supply_volts=0.5))
    with pytest.raises(EditError, match="pins of 2 kΩ"):
        make_project(MODE, alike(), driver=Driver(high_ohms=2e3, low_ohms=2e3), load=Load())
