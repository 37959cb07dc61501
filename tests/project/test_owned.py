from workbench.circuit.fit.drawer import Drawer, OwnedPart
from workbench.project.owned import Need, missing_words, needs, owned_words


def test_needs_are_counted_over_all_channels(project):
    drawer = Drawer((OwnedPart(500.0, 2), OwnedPart(1e3)))

    found = needs(project, drawer)

    assert found == (Need(500.0, 3, 2), Need(1e3, 3, None), Need(2e3, 3, 0))
    assert [need.lacking for need in found] == [1, 0, 3]


def test_what_is_missing_is_said(project):
    drawer = Drawer((OwnedPart(500.0, 2), OwnedPart(1e3)))

    assert missing_words(project, drawer) == "Missing for this board: 1 × 500 Ω, 3 × 2 kΩ."


def test_a_full_drawer_is_said(project):
    drawer = Drawer((OwnedPart(500.0, 3), OwnedPart(1e3), OwnedPart(2e3, 30)))

    assert missing_words(project, drawer) == "The drawer has every resistor of this board."


def test_badges_say_how_many():
    found = [owned_words(Need(500.0, 3, owned)) for owned in (12, 3, 1, 0, None)]

    assert found == [
        "12 in the drawer",
        "3 in the drawer",
        "1 of 3 in the drawer",
        "not in the drawer",
        "in the drawer",
    ]
