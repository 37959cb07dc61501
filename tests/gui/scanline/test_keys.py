"""Keys that count while the panel has the focus."""

import pytest


@pytest.mark.parametrize(
    ("text", "keys"),
    [("whole line", "Scanline: L"), ("go to a scanline", "Ctrl+G"), ("add a bit", "Network: B")],
)
def test_the_finder_says_whose_key_it_is(desk, text: str, keys: str) -> None:
    card = desk.cards.find(text)

    assert card.list.current.figures == keys
    card.close()
