"""Edits of pins, load, cable and monitor."""

import pytest

from workbench.circuit.network import Cable, Driver, Load, Zeros
from workbench.errors import EditError
from workbench.project.document import Channel, MonitorRange, Project
from workbench.project.edits.drive import (
    set_cable,
    set_input_capacitance,
    set_limits,
    set_load,
    set_monitor,
    set_monitors,
    set_on_resistance,
    set_rise,
    set_skew,
    set_skews,
    set_supply,
    set_zeros,
)
from workbench.project.edits.ladders import remove_bit


def test_every_field_of_the_driver(project: Project) -> None:
    edited = set_supply(project, 5.0)
    edited = set_on_resistance(edited, 40.0, 55.0)
    edited = set_zeros(edited, Zeros.FLOATING)
    edited = set_rise(edited, 0.0)
    edited = set_limits(edited, 8e-3, 50e-3)

    assert edited.driver == Driver(5.0, 40.0, 55.0, Zeros.FLOATING, 0.0, 8e-3, 50e-3)
    assert set_on_resistance(edited, 30.0).driver.low_ohms == 30.0
    assert set_limits(edited, None, None).driver.pin_limit_amps is None


def test_every_field_of_the_load(project: Project) -> None:
    edited = set_input_capacitance(set_monitors(set_load(project, 82.0), 2), 10e-12)

    assert edited.load == Load(82.0, 2, 10e-12)
    assert set_load(edited, None).load.ohms is None


def test_a_cable_comes_and_goes(project: Project) -> None:
    cable = Cable(2.0)

    assert set_cable(project, cable).cable == cable
    assert set_cable(set_cable(project, cable), None) == project


@pytest.mark.parametrize(
    ("edit", "sentence"),
    [
        (lambda p: set_supply(p, 0.0), "the supply cannot be 0 V: a supply lies between 100 mV and 50 V"),
        (lambda p: set_on_resistance(p, -1.0), "the on-resistance high cannot be −1 Ω"),
        (lambda p: set_rise(p, float("nan")), "the rise time cannot be – s"),
        (lambda p: set_limits(p, 0.0, None), "the limit of one pin cannot be 0 A"),
        (lambda p: set_load(p, 0.0), "the load cannot be 0 Ω"),
        (lambda p: set_monitors(p, 0), "the number of monitors cannot be 0: .* between 1 and 8"),
        (lambda p: set_input_capacitance(p, 1.0), "the input capacitance cannot be 1 F"),
        (lambda p: set_cable(p, Cable(0.0)), "the cable cannot be 0 m"),
        (lambda p: set_cable(p, Cable(2.0, velocity=2.0)), "the cable's wave speed cannot be 2"),
        (lambda p: set_monitor(p, MonitorRange(70e3, 30e3, 50.0, 75.0)), "lowest rate is above its highest"),
    ],
)
def test_impossible_values_are_refused(project: Project, edit, sentence: str) -> None:
    with pytest.raises(EditError, match=sentence):
        edit(project)


def test_a_monitor_is_entered_and_forgotten(project: Project) -> None:
    monitor = MonitorRange(30e3, 70e3, 50.0, 75.0, 110e6)

    assert set_monitor(project, monitor).monitor == monitor
    assert set_monitor(set_monitor(project, monitor), None) == project


def test_a_pin_is_late_until_it_is_in_time_again(project: Project) -> None:
    late = set_skew(project, Channel.RED, 1, 4e-9)

    assert late.skews.red == (0.0, 4e-9)
    assert late.skews.green == ()
    assert set_skew(late, Channel.RED, 1, 0.0) == project


def test_impossible_skews_are_refused(project: Project) -> None:
    with pytest.raises(EditError, match="red has 3 pins, counted from 0: there is no 3"):
        set_skew(project, Channel.RED, 3, 1e-9)
    with pytest.raises(EditError, match="4 skews are too many"):
        set_skews(project, Channel.RED, (1e-9,) * 4)
    with pytest.raises(EditError, match="a skew is 0 or lies between 1 fs and 1 µs"):
        set_skew(project, Channel.RED, 0, -1e-9)


def test_the_skew_of_a_pin_goes_with_it(project: Project) -> None:
    late = set_skews(project, Channel.RED, (1e-9, 2e-9, 3e-9))

    assert remove_bit(late, Channel.RED).skews.red == (1e-9, 2e-9)
