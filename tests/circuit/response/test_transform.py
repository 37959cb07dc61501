import numpy as np
import pytest

from workbench.circuit.response.transform import Grid


def through(grid, answer, samples):
    """Return what an answer makes of samples that start and end at rest."""
    changes = np.diff(samples, prepend=0.0)
    return np.cumsum(np.fft.irfft(np.fft.rfft(changes) * answer, grid.n_samples))


@pytest.mark.parametrize("lag_s", [0.0, 1e-12, 0.3e-9, 1e-9, 7e-9])
def test_a_lag_on_samples_is_exact_for_a_ramp_that_ends_on_one(lag_s):
    grid = Grid(2048, 0.1e-9)
    time_s = 0.1e-9 * np.arange(2048)

    found = through(grid, grid.lagging(np.array([lag_s]))[1], np.clip(time_s / 2e-9, 0, 1))

    def slope(time):
        after = np.maximum(time, 0.0)
        return after + lag_s * np.expm1(-after / lag_s) if lag_s else after

    np.testing.assert_allclose(found, (slope(time_s) - slope(time_s - 2e-9)) / 2e-9, atol=1e-12)


def test_the_row_without_a_lag_changes_nothing():
    assert (Grid(16, 1e-9).lagging(np.array([1e-9]))[0] == 1).all()


def test_an_answer_on_samples_looks_above_the_highest_frequency_of_the_grid():
    # A lag the general way comes near the exact one, where its own answer, cut off, does not.
    grid = Grid(512, 0.1e-9)
    lag = grid.sampled(lambda omega: 1 / (1 + 1j * omega * 0.2e-9))

    exact = grid.lagging(np.array([0.2e-9]))[1]
    assert np.abs(lag - exact).max() < 0.02
    assert np.abs(1 / (1 + 1j * grid.omega * 0.2e-9) - exact).max() > 0.1
