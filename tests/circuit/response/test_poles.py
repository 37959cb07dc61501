import numpy as np
import pytest

from workbench.circuit.response.poles import Poles

TWO = Poles(
    np.array([1e-9, 5e-9]), np.array([[0.1, 0.3, 0.2], [0.2, 0.0, -0.1]]), np.array([10.0, 20.0, 5.0])
)
OMEGA = 2 * np.pi * np.geomspace(1e6, 1e10, 40)


def of(shares, lags_s):
    return shares @ Poles(lags_s, shares, shares).lagging(OMEGA)


@pytest.mark.parametrize("lag_s", [0.0, 1e-13, 0.4e-9, 1e-9, 5e-9, 3e-8])
def test_one_more_lag_multiplies_the_answer(lag_s):
    behind = TWO.through(lag_s, 0.8)

    more = 0.8 / (1 + 1j * OMEGA * lag_s)
    np.testing.assert_allclose(
        of(behind.shares, behind.lags_s), of(TWO.shares, TWO.lags_s) * more, rtol=1e-5, atol=1e-8
    )
    np.testing.assert_allclose(
        of(behind.impedance, behind.lags_s), of(TWO.impedance, TWO.lags_s) * more, rtol=1e-5, atol=1e-8
    )


def test_a_lag_behind_resistors():
    behind = Poles(np.empty(0), np.array([[0.5]]), np.array([40.0])).through(2e-9, 1.0)

    assert behind.lags_s.tolist() == [2e-9]
    assert behind.shares.tolist() == [[0.0, 0.5]]
