import pytest

from workbench.circuit.bands import Band, Distribution, Tolerances
from workbench.errors import EditError
from workbench.project.edits.tolerances import Varied, band_of, set_distribution, set_half_width


@pytest.mark.parametrize("varied", Varied)
def test_each_band_is_changed_alone(project, varied):
    changed = set_half_width(project, varied, 0.05)

    assert band_of(changed.tolerances, varied).half_width == 0.05
    others = [other for other in Varied if other is not varied]
    assert [band_of(changed.tolerances, v) for v in others] == [band_of(Tolerances(), v) for v in others]


def test_nothing_typed_lets_each_resistor_have_its_own(project):
    changed = set_half_width(set_half_width(project, Varied.RESISTORS, 0.05), Varied.RESISTORS, None)

    assert changed == project


def test_nothing_typed_is_exact_for_the_others(project):
    assert set_half_width(project, Varied.SUPPLY, None).tolerances.supply == Band(0.0)


def test_the_distribution_keeps_the_band(project):
    changed = set_distribution(set_half_width(project, Varied.LOAD, 0.1), Varied.LOAD, Distribution.NORMAL)

    assert changed.tolerances.load == Band(0.1, Distribution.NORMAL)


@pytest.mark.parametrize("half_width", [-0.01, 1.0, float("nan")])
def test_what_is_no_tolerance_is_refused_by_name(project, half_width):
    with pytest.raises(EditError, match="tolerance of the on-resistance"):
        set_half_width(project, Varied.ON_RESISTANCE, half_width)
