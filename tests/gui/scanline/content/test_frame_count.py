"""Counting a frame between events."""

from workbench.gui.scanline.content.frame_count import FrameCount
from workbench.picture.scene import Card, Picture
from workbench.picture.source import card_source


def test_it_is_complete_after_a_while_without_waiting(qtbot) -> None:
    count = FrameCount()

    counts = count.ask(card_source(Picture(card=Card.ALL_CODES), 640, 480, (8, 8, 8)))
    qtbot.waitUntil(lambda: counts.complete, timeout=5000)

    assert counts.counts[0].sum() == 640 * 480


def test_the_same_frame_is_counted_once(qtbot) -> None:
    count = FrameCount()
    first = count.ask(card_source(Picture(), 640, 480, (5, 5, 5)))
    qtbot.waitUntil(lambda: first.complete, timeout=5000)

    with qtbot.assertNotEmitted(count.progressed, wait=30):
        again = count.ask(card_source(Picture(), 640, 480, (5, 5, 5)))

    assert again is first


def test_another_card_is_counted_anew(qtbot) -> None:
    count = FrameCount()
    first = count.ask(card_source(Picture(), 640, 480, (5, 5, 5)))
    second = count.ask(card_source(Picture(card=Card.STRIPES), 640, 480, (5, 5, 5)))
    qtbot.waitUntil(lambda: second.complete, timeout=5000)

    assert second is not first
