"""The preferred values against the published tables of IEC 60063.

E3 to E24 and the rule for E48 and up: value tables at
qsl.net/g4usp/Components/Component%20preferred%20values.htm (E6, E12, E24, E48, E96), and
wikisum.wiki/wiki/E_series_of_preferred_numbers. The 9.20 of E192 is from memory.
"""

import pytest

from workbench.circuit.series import Series, series_values

TABLES = {
    Series.E3: "1.0 2.2 4.7",
    Series.E6: "1.0 1.5 2.2 3.3 4.7 6.8",
    Series.E12: "1.0 1.2 1.5 1.8 2.2 2.7 3.3 3.9 4.7 5.6 6.8 8.2",
    Series.E24: "1.0 1.1 1.2 1.3 1.5 1.6 1.8 2.0 2.2 2.4 2.7 3.0 "
    "3.3 3.6 3.9 4.3 4.7 5.1 5.6 6.2 6.8 7.5 8.2 9.1",
    Series.E48: "1.00 1.05 1.10 1.15 1.21 1.27 1.33 1.40 1.47 1.54 1.62 1.69 "
    "1.78 1.87 1.96 2.05 2.15 2.26 2.37 2.49 2.61 2.74 2.87 3.01 "
    "3.16 3.32 3.48 3.65 3.83 4.02 4.22 4.42 4.64 4.87 5.11 5.36 "
    "5.62 5.90 6.19 6.49 6.81 7.15 7.50 7.87 8.25 8.66 9.09 9.53",
}


@pytest.mark.parametrize("series", list(TABLES), ids=lambda series: series.name)
def test_published_table(series: Series) -> None:
    assert series_values(series) == tuple(float(value) for value in TABLES[series].split())


def test_finer_series_contain_the_coarser_by_every_second_value() -> None:
    assert series_values(Series.E96)[::2] == series_values(Series.E48)
    assert series_values(Series.E192)[::2] == series_values(Series.E96)


def test_e192_lists_920_where_the_formula_gives_919() -> None:
    assert series_values(Series.E192)[185] == 9.20
    assert round(10 ** (185 / 192), 2) == 9.19


def test_e24_is_a_table_of_its_own() -> None:
    assert 4.7 not in series_values(Series.E96)
    assert 7.5 in series_values(Series.E96)
