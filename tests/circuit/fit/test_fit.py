from dataclasses import replace
from itertools import permutations, product

import numpy as np
import pytest

from workbench.circuit.fit.drawer import Drawer, OwnedPart
from workbench.circuit.fit.fit import Aim, best_first, find_fit
from workbench.circuit.ladders import Topology, r2r, recognise, segmented, weighted
from workbench.circuit.linearity import linearity
from workbench.circuit.network import Driver, Load, Network, Resistor, Zeros
from workbench.circuit.series import Series
from workbench.circuit.solution import solve_levels
from workbench.circuit.wish import LadderWish, Shape, make_ladder
from workbench.errors import NetworkError
from workbench.progress import Cancelled, Watched

E24 = Drawer.of_series(Series.E24)


def ladder(bits, **options):
    return weighted(bits, [500.0 * 2**i for i in range(bits)], **options)


def counted(**counts):
    return Drawer(tuple(OwnedPart(float(name[1:]), count) for name, count in counts.items()))


def fit(networks, drawer, **options):
    return find_fit(networks, options.pop("driver", Driver()), options.pop("load", Load()), drawer, **options)


def level_error(network, driver=None):
    volts = solve_levels(network, driver or Driver(), Load()).volts_by_code
    return np.abs(volts - np.linspace(0, 0.7, len(volts))).max()


def test_figures_are_those_of_the_networks():
    best = fit([ladder(4)] * 3, E24).candidates[0]

    levels = solve_levels(best.networks[0], Driver(), Load())
    line = linearity(levels.volts_by_code)
    assert best.worst_error_volts == level_error(best.networks[0])
    assert best.full_scale_volts == levels.volts_by_code[-1]
    assert (best.max_inl_lsb, best.max_dnl_lsb) == (line.max_inl_lsb, line.max_dnl_lsb)
    assert best.source_ohms == levels.source_ohms
    assert best.worst_total_current_amps == pytest.approx(3 * levels.supply_amps.max())
    assert best.n_parts == 12
    assert best.mismatch == 0.0


def test_channels_of_different_width_are_each_fitted():
    best = fit([ladder(3), ladder(3), ladder(2)], E24).candidates[0]

    assert [len(legs) for legs in best.legs] == [3, 3, 2]
    alone = [fit([ladder(bits)], E24).candidates[0].worst_error_volts for bits in (3, 2)]
    assert best.worst_error_volts == max(alone)


def test_the_pins_resistance_is_reckoned_with():
    driver = Driver(high_ohms=40, low_ohms=40)
    found = fit([ladder(4)], Drawer.of_series(Series.E96), driver=driver)

    assert found.proved_best
    assert found.candidates[0].worst_error_volts == level_error(found.candidates[0].networks[0], driver)
    unaware = fit([ladder(4)], Drawer.of_series(Series.E96)).candidates[0].networks[0]
    assert found.candidates[0].worst_error_volts < level_error(unaware, driver) / 5


@pytest.mark.parametrize("driver", [Driver(high_ohms=40, low_ohms=20), Driver(zeros=Zeros.FLOATING)])
def test_nothing_is_proved_where_the_pins_are_not_linear(driver):
    found = fit([ladder(3)], E24, driver=driver)

    assert not found.proved_best
    assert found.gap_volts > 0.0
    assert found.candidates[0].worst_error_volts == level_error(found.candidates[0].networks[0], driver)


def test_shunt_and_series_resistor_keep_their_values():
    network = ladder(4, shunt_ohms=130.0, series_ohms=10.0)
    best = fit([network], Drawer.of_series(Series.E96)).candidates[0]

    assert [part.ohms for part in best.networks[0].resistors[-2:]] == [130.0, 10.0]
    assert best.worst_error_volts < 0.01


def test_more_parts_a_leg_come_nearer():
    errors = [fit([ladder(4)], E24, most_parts=most).candidates[0].worst_error_volts for most in (1, 2)]

    assert errors[1] < errors[0] / 10


def test_candidates_trade_error_for_parts():
    candidates = fit([ladder(5)], E24, most_parts=2).candidates

    few = next(candidate for candidate in candidates if candidate.aim is Aim.PARTS)
    assert few.n_parts == 5 < candidates[0].n_parts
    errors = [candidate.worst_error_volts for candidate in candidates]
    assert errors == sorted(errors)
    assert len({candidate.networks for candidate in candidates}) == len(candidates)


@pytest.mark.parametrize("aim", Aim)
def test_the_first_candidate_is_the_best_at_what_was_asked(aim):
    candidates = fit([ladder(5)], E24, most_parts=2, aim=aim).candidates

    figure = {
        Aim.LEVEL: lambda c: c.worst_error_volts,
        Aim.DNL: lambda c: c.max_dnl_lsb,
        Aim.MATCHING: lambda c: c.mismatch,
        Aim.SOURCE: lambda c: abs(c.source_ohms - 75),
        Aim.CURRENT: lambda c: c.worst_total_current_amps,
        Aim.PARTS: lambda c: c.n_parts,
    }[aim]
    assert figure(candidates[0]) == min(figure(candidate) for candidate in candidates)


def used(candidate):
    values = [part.ohms for legs in candidate.legs for leg in legs for part in leg.parts]
    return {ohms: values.count(ohms) for ohms in values}


def test_a_drawer_is_shared_by_the_channels():
    drawer = counted(_470=2, _510=2, _1000=9, _2000=2, _2200=2)
    found = fit([ladder(3)] * 3, drawer, most_parts=2)

    for candidate in found.candidates:
        taken = used(candidate)
        assert all(taken.get(part.ohms, 0) <= part.count for part in drawer.parts)


def test_a_shared_drawer_is_fitted_as_well_as_it_can_be():
    # Two channels of two bits from seven parts: every way to hand them out is tried.
    parts = [(390.0, 1), (430.0, 1), (470.0, 1), (820.0, 2), (910.0, 1), (1000.0, 1)]
    drawer = Drawer(tuple(OwnedPart(*part) for part in parts))
    best = np.inf
    for legs in product(range(len(parts)), repeat=4):
        if all(legs.count(i) <= count for i, (_, count) in enumerate(parts)):
            ohms = [parts[i][0] for i in legs]
            best = min(best, max(level_error(weighted(2, ohms[:2])), level_error(weighted(2, ohms[2:]))))

    found = fit([ladder(2)] * 2, drawer)

    assert found.candidates[0].worst_error_volts == pytest.approx(best)
    assert found.proved_best


def test_enough_parts_for_all_is_as_good_as_an_endless_drawer():
    endless = Drawer(tuple(OwnedPart(part.ohms) for part in E24.parts))
    plenty = Drawer(tuple(OwnedPart(part.ohms, 30) for part in E24.parts))

    first, second = (fit([ladder(4)] * 3, drawer).candidates[0] for drawer in (endless, plenty))

    assert first.worst_error_volts == second.worst_error_volts


def test_measured_values_are_what_counts():
    drawer = Drawer((OwnedPart(982.0, 1, nominal_ohms=1e3), OwnedPart(417.9, 1, nominal_ohms=430.0)))

    best = fit([ladder(2)], drawer).candidates[0]

    assert [leg.ohms for leg in best.legs[0]] == [417.9, 982.0]


def test_one_value_only():
    """Own arithmetic of the trade: 1 k only: MSB two in parallel, then one, LSB two in series; 0.686 V."""
    best = fit([ladder(3)], counted(_1000=5), most_parts=2).candidates[0]

    assert [leg.ohms for leg in best.legs[0]] == [500.0, 1000.0, 2000.0]
    assert best.full_scale_volts == pytest.approx(0.686, abs=5e-4)


def test_an_r2r_ladder_takes_one_r_and_one_2r():
    found = fit([r2r(4, 250.0)], E24)

    best = min(
        level_error(r2r(4, a.ohms, b.ohms))
        for a in E24.parts
        for b in E24.parts
        if 150 < a.ohms < 400 < b.ohms < 700
    )
    assert found.proved_best
    assert len(found.candidates[0].legs[0]) == 2
    assert found.candidates[0].worst_error_volts == pytest.approx(best)


def test_an_r2r_ladder_takes_many_of_each():
    with pytest.raises(NetworkError, match="takes 3 alike and 5 alike"):
        fit([r2r(4, 250.0)], counted(_270=4, _510=4))

    assert fit([r2r(4, 250.0)], counted(_270=4, _510=5)).candidates[0].n_parts == 8


BRIDGED = Network(
    ("bit1", "bit0"),
    (
        *ladder(2).resistors,
        Resistor("R9", "bit1", "x", 1e3),
        Resistor("R8", "bit0", "x", 1e3),
        Resistor("R7", "x", "out", 1e3),
    ),
)


@pytest.mark.parametrize(
    ("networks", "drawer", "load", "words"),
    [
        (
            [BRIDGED],
            E24,
            Load(),
            "weighted, segmented and R-2R ladders, and this network is none of these: give each",
        ),
        ([ladder(3)], E24, Load(ohms=None), "load"),
        ([ladder(3)] * 3, counted(_1000=8), Load(), "holds 8 resistors, but 9 legs"),
        ([ladder(2)], Drawer(()), Load(), "empty"),
    ],
    ids=["custom", "no load", "too few parts", "empty"],
)
def test_what_cannot_be_fitted_is_refused_with_a_reason(networks, drawer, load, words):
    with pytest.raises(NetworkError, match=words):
        fit(networks, drawer, load=load)


def test_a_supply_too_low_gets_the_best_there_is():
    best = fit([ladder(2)], E24, driver=Driver(0.6)).candidates[0]

    assert np.isfinite(best.worst_error_volts)
    assert best.worst_error_volts >= 0.1


def test_progress_may_cancel():
    progress = Watched(lambda *_: None)
    progress.cancel()

    with pytest.raises(Cancelled):
        fit([ladder(5)], E24, progress=progress)


def test_channels_alike_have_whites_alike():
    # Of each value there is only enough for one or two channels, so that they must differ.
    drawer = Drawer(tuple(OwnedPart(part.ohms, 2) for part in E24.parts if 300 <= part.ohms <= 5e3))

    candidates = fit([ladder(3)] * 3, drawer, most_parts=2, aim=Aim.MATCHING).candidates

    level = min(candidates, key=lambda candidate: candidate.worst_error_volts)
    assert candidates[0].mismatch < level.mismatch or len(candidates) == 1
    assert candidates[0].mismatch < 0.002


def test_channels_are_matched_where_the_best_levels_would_part_them():
    """Two good top legs for three channels: the best levels use both, equal channels use the third value."""
    rest = [OwnedPart(1000.0, 3), OwnedPart(2000.0, 3)]
    drawer = Drawer((OwnedPart(487.0, 2), OwnedPart(475.0, 3), *rest))
    channels = [weighted(3, [500.0, 1e3, 2e3])] * 3

    found = find_fit(channels, Driver(), Load(), drawer, aim=Aim.MATCHING)

    matched, best = found.candidates[0], best_first(found.candidates, Aim.LEVEL)[0]
    assert matched.mismatch == 0.0
    assert {leg.ohms for legs in matched.legs for leg in legs[:1]} == {475.0}
    assert best.worst_error_volts <= matched.worst_error_volts


def test_the_order_follows_the_aim():
    channels = [weighted(4, [500.0, 1e3, 2e3, 4e3])] * 3
    found = find_fit(channels, Driver(), Load(), Drawer.of_series(Series.E12), most_parts=2)

    by_parts = best_first(found.candidates, Aim.PARTS)
    assert [c.n_parts for c in by_parts] == sorted(c.n_parts for c in by_parts)
    by_current = best_first(found.candidates, Aim.CURRENT)
    amps = [c.worst_total_current_amps for c in by_current]
    assert amps == sorted(amps)


def test_a_candidate_says_whether_a_step_goes_down():
    fine = fit([ladder(3)], counted(_510=1, _1000=1, _2000=1)).candidates[0]
    falls = fit([ladder(3)], counted(_1000=3)).candidates[0]
    down = fit([ladder(3)], counted(_1500=1, _1200=1, _1000=1)).candidates[0]

    assert fine.monotonic
    assert not falls.monotonic
    assert not down.monotonic


def test_segmented_legs_need_not_be_equal_and_rise_in_their_best_order():
    found = fit([segmented(3, 2, (1e3, 2e3))], E24)

    best = found.candidates[0]
    ohms = [leg.ohms for leg in best.legs[0]]
    assert found.proved_best
    assert recognise(best.networks[0]) is Topology.SEGMENTED
    assert [part.ohms for part in best.networks[0].resistors] == ohms
    assert best.worst_error_volts == level_error(best.networks[0])
    others = (level_error(segmented_of(each, ohms[3:])) for each in permutations(ohms[:3]))
    assert best.worst_error_volts == pytest.approx(min(others))
    equal = (level_error(segmented(3, 2, (a.ohms, b.ohms))) for a in E24.parts for b in E24.parts)
    assert best.worst_error_volts < 0.8 * min(equal)


def segmented_of(rising, tail):
    network = segmented(2 + len(tail), 2, (1e3, *tail))
    legs = [replace(part, ohms=ohms) for part, ohms in zip(network.resistors, (*rising, *tail), strict=True)]
    return replace(network, resistors=tuple(legs))


def test_every_leg_of_a_segmented_ladder_takes_a_part():
    network = segmented(4, 2, (1e3, 2e3, 4e3))

    with pytest.raises(NetworkError, match="holds 4 resistors, but 5 legs"):
        fit([network], counted(_1000=4))

    best = fit([network], counted(_1000=3, _2000=1, _3900=1)).candidates[0]
    assert used(best) == {1000.0: 3, 2000.0: 1, 3900.0: 1}


def test_channels_of_every_kind_share_a_drawer():
    drawer = counted(_240=2, _470=3, _510=1, _750=2, _820=2, _1000=2, _2000=1)
    channels = [segmented(2, 2, (1e3,)), ladder(2), r2r(2, 250.0)]

    found = fit(channels, drawer)

    kinds = [recognise(network) for network in found.candidates[0].networks]
    assert kinds == [Topology.SEGMENTED, Topology.WEIGHTED, Topology.R2R]
    built = [part.ohms for network in found.candidates[0].networks for part in network.resistors]
    assert all(built.count(part.ohms) <= part.count for part in drawer.parts)


def test_a_matched_ladder_stays_matched():
    network = make_ladder(LadderWish(Shape.SEGMENTED, 5, series=Series.E24, matched=True), Driver(), Load())
    shunt = next(part for part in network.resistors if part.id == "RS")

    best = fit([network], E24, most_parts=2).candidates[0]

    assert shunt in best.networks[0].resistors
    assert best.source_ohms == pytest.approx(75.0, abs=0.2)
    assert best.full_scale_volts == pytest.approx(0.7, abs=2e-3)


def test_resistors_that_stay_are_set_aside():
    network = weighted(1, [270.0], shunt_ohms=270.0)

    with pytest.raises(
        NetworkError, match="holds 0 resistors besides those that keep their values, but 1 leg needs one"
    ):
        fit([network], counted(_270=1))

    assert used(fit([network], counted(_270=1, _330=1)).candidates[0]) == {330.0: 1}


def test_a_ladder_of_one_value_is_fitted_as_a_weighted_one():
    network = make_ladder(LadderWish(Shape.EQUAL, 3, values=(1e3,)), Driver(), Load())

    singles, again = fit([network], E24).candidates[0], fit([network], counted(_1000=5), most_parts=2)

    assert singles.n_parts == 3
    assert [leg.ohms for leg in again.candidates[0].legs[0]] == [500.0, 1000.0, 2000.0]
