"""The axes of the frame to scale."""

import pytest

from workbench.gui.timing.frame_axes import unit_for


@pytest.mark.parametrize(
    ("span_s", "name"),
    [(1.5, "s"), (16.7e-3, "ms"), (1e-3, "ms"), (31.8e-6, "µs"), (4e-8, "ns"), (4e-10, "ns")],
)
def test_an_axis_takes_the_unit_of_its_span(span_s, name):
    assert unit_for(span_s)[1] == name
