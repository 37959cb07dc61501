import math

import numpy as np
import pytest

from workbench.circuit.response.laplace import ramp_answers


def answers(time_s, lags_s, rise_s):
    return ramp_answers(
        lambda omega: np.stack([1 / (1 + 1j * omega * lag) for lag in lags_s]), time_s, rise_s
    )


def test_a_step_through_a_lag():
    time_s = np.geomspace(1e-12, 1e-7, 60)

    np.testing.assert_allclose(answers(time_s, [1e-9], 0.0)[0], -np.expm1(-time_s / 1e-9), atol=1e-6)


@pytest.mark.parametrize("rise_s", [1e-10, 2e-9])
def test_a_ramp_through_a_lag_and_through_none(rise_s):
    time_s = np.concatenate(([-1e-9, 0.0], np.linspace(1e-11, 60e-9, 3000)))

    lagging, plain = answers(time_s, [3e-9, 0.0], rise_s)

    def slope(time):
        after = np.maximum(time, 0.0)
        return after + 3e-9 * np.expm1(-after / 3e-9)

    # Late, a ramp is a step at its middle.
    np.testing.assert_allclose(lagging, (slope(time_s) - slope(time_s - rise_s)) / rise_s, atol=5e-5)
    np.testing.assert_allclose(plain, np.clip(time_s / rise_s, 0, 1), atol=1e-6)


def test_a_step_through_the_skin_effect_is_seen_over_nine_decades():
    k = 4e-11
    time_s = np.geomspace(1e-12, 1e-3, 50)

    found = ramp_answers(lambda omega: np.exp(-np.sqrt(1j * k * omega))[None], time_s, 0.0)[0]

    expected = [math.erfc(math.sqrt(k / time) / 2) for time in time_s]
    np.testing.assert_allclose(found, expected, atol=1e-6)
