"""Pixel pulses in closed form: a trapezoid through one RC, for tests that need no network."""

import numpy as np


def ramp_through_rc(t, rise_s, tau_s):
    """Return the response of one RC to a ramp 0 → 1 of length ``rise_s`` that starts at t = 0."""
    during = (t - tau_s * -np.expm1(-t / tau_s)) / rise_s
    after = 1.0 - tau_s / rise_s * np.expm1(rise_s / tau_s) * np.exp(-t / tau_s)
    return np.where(t <= 0.0, 0.0, np.where(t <= rise_s, during, after))


def rc_pulse(weights_volts, *, tau_s, rise_s=2e-9, pixel_s=40e-9, samples=16, n_after=8):
    """Return pulses of shape (n_pins, n_after, samples), one time constant a pin."""
    t = np.arange(n_after * samples) * (pixel_s / samples)
    taus = np.broadcast_to(tau_s, len(weights_volts))
    rows = [
        weight * (ramp_through_rc(t, rise_s, tau) - ramp_through_rc(t - pixel_s, rise_s, tau))
        for weight, tau in zip(weights_volts, taus, strict=True)
    ]
    return np.reshape(rows, (len(rows), n_after, samples))
