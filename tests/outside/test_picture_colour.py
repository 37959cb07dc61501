"""Colour differences against published pairs and against a reference library."""

import warnings

import numpy as np
import pytest

from workbench.picture.colour import delta_e_2000, lab_from_light, lab_from_srgb
from workbench.picture.light import light_from_srgb, srgb_from_light

# The library warns that it cannot plot here, and changes how numpy prints numbers.
with np.printoptions(), warnings.catch_warnings():
    warnings.simplefilter("ignore")
    import colour

# Sharma, Wu, Dalal (2005), table 1: L*, a*, b* of two colours and their difference.
SHARMA = """
50.0000 2.6772 -79.7751 50.0000 0.0000 -82.7485 2.0425
50.0000 3.1571 -77.2803 50.0000 0.0000 -82.7485 2.8615
50.0000 2.8361 -74.0200 50.0000 0.0000 -82.7485 3.4412
50.0000 -1.3802 -84.2814 50.0000 0.0000 -82.7485 1.0000
50.0000 -1.1848 -84.8006 50.0000 0.0000 -82.7485 1.0000
50.0000 -0.9009 -85.5211 50.0000 0.0000 -82.7485 1.0000
50.0000 0.0000 0.0000 50.0000 -1.0000 2.0000 2.3669
50.0000 -1.0000 2.0000 50.0000 0.0000 0.0000 2.3669
50.0000 2.4900 -0.0010 50.0000 -2.4900 0.0009 7.1792
50.0000 2.4900 -0.0010 50.0000 -2.4900 0.0010 7.1792
50.0000 2.4900 -0.0010 50.0000 -2.4900 0.0011 7.2195
50.0000 2.4900 -0.0010 50.0000 -2.4900 0.0012 7.2195
50.0000 -0.0010 2.4900 50.0000 0.0009 -2.4900 4.8045
50.0000 -0.0010 2.4900 50.0000 0.0010 -2.4900 4.8045
50.0000 -0.0010 2.4900 50.0000 0.0011 -2.4900 4.7461
50.0000 2.5000 0.0000 50.0000 0.0000 -2.5000 4.3065
50.0000 2.5000 0.0000 73.0000 25.0000 -18.0000 27.1492
50.0000 2.5000 0.0000 61.0000 -5.0000 29.0000 22.8977
50.0000 2.5000 0.0000 56.0000 -27.0000 -3.0000 31.9030
50.0000 2.5000 0.0000 58.0000 24.0000 15.0000 19.4535
50.0000 2.5000 0.0000 50.0000 3.1736 0.5854 1.0000
50.0000 2.5000 0.0000 50.0000 3.2972 0.0000 1.0000
50.0000 2.5000 0.0000 50.0000 1.8634 0.5757 1.0000
50.0000 2.5000 0.0000 50.0000 3.2592 0.3350 1.0000
60.2574 -34.0099 36.2677 60.4626 -34.1751 39.4387 1.2644
63.0109 -31.0961 -5.8663 62.8187 -29.7946 -4.0864 1.2630
61.2901 3.7196 -5.3901 61.4292 2.2480 -4.9620 1.8731
35.0831 -44.1164 3.7933 35.0232 -40.0716 1.5901 1.8645
22.7233 20.0904 -46.6940 23.0331 14.9730 -42.5619 2.0373
36.4612 47.8580 18.3852 36.2715 50.5065 21.2231 1.4146
90.8027 -2.0831 1.4410 91.1528 -1.6435 0.0447 1.4441
90.9257 -0.5406 -0.9208 88.6381 -0.8985 -0.7239 1.5381
6.7747 -0.2908 -2.4247 5.8714 -0.0985 -2.2286 0.6377
2.0776 0.0795 -1.1350 0.9033 -0.0636 -0.5514 0.9082
"""
PAIRS = np.array([line.split() for line in SHARMA.split("\n") if line], float)


def test_the_34_published_pairs():
    differences = delta_e_2000(PAIRS[:, :3], PAIRS[:, 3:6])

    np.testing.assert_allclose(differences, PAIRS[:, 6], atol=5e-5)


def test_a_difference_is_the_same_both_ways():
    there, back = delta_e_2000(PAIRS[:, :3], PAIRS[:, 3:6]), delta_e_2000(PAIRS[:, 3:6], PAIRS[:, :3])

    np.testing.assert_allclose(there, back, atol=1e-12)


@pytest.mark.parametrize("scale", [1.0, 30.0, 100.0])
def test_random_pairs_against_a_reference_library(scale):
    rng = np.random.default_rng(7)
    first = rng.uniform([0, -100, -100], [100, 100, 100], (500, 3))
    second = first + rng.uniform(-scale, scale, (500, 3))

    expected = colour.delta_E(first, second, method="CIE 2000")

    np.testing.assert_allclose(delta_e_2000(first, second), expected, atol=1e-9)


def test_srgb_curve_and_lab_against_a_reference_library():
    values = np.random.default_rng(3).integers(0, 256, (400, 3))
    space = colour.RGB_COLOURSPACES["sRGB"]

    np.testing.assert_allclose(srgb_from_light(light_from_srgb(values / 255)), values / 255, atol=1e-12)
    np.testing.assert_allclose(light_from_srgb(values / 255), space.cctf_decoding(values / 255), atol=1e-6)
    xyz = colour.RGB_to_XYZ(values / 255, space, apply_cctf_decoding=True)
    lab = colour.XYZ_to_Lab(xyz, space.whitepoint)
    # The matrix of the standard has four figures, that of the library more.
    np.testing.assert_allclose(lab_from_srgb(values), lab, atol=0.05)


def test_white_is_100_and_neutral():
    np.testing.assert_allclose(lab_from_light([1.0, 1.0, 1.0]), [100.0, 0.0, 0.0], atol=1e-9)
