import pytest

from workbench.errors import TimingError
from workbench.timing.clock.chip import Chip, Span, read_chip, read_span

TEXTS = {"reference": "12M", "multiply": "16..320", "divide": "1..7x1..7", "max_system": "133M"}


def test_reads_what_the_command_line_writes() -> None:
    chip = read_chip(**TEXTS, vco="750M..1600M", fraction_bits=8)

    assert chip == Chip(
        12_000_000,
        Span(16, 320),
        (Span(1, 7), Span(1, 7)),
        133_000_000,
        Span(750_000_000, 1_600_000_000),
        fraction_bits=8,
    )


@pytest.mark.parametrize(("text", "span"), [("7", Span(7, 7)), (" 1 .. 7 ", Span(1, 7)), ("1…7", Span(1, 7))])
def test_ways_to_write_a_range(text: str, span: Span) -> None:
    assert read_span(text, "divide") == span


@pytest.mark.parametrize(
    ("change", "part"),
    [
        ({"multiply": "320..16"}, "runs backwards"),
        ({"multiply": "0..4"}, "outside 1 … 1000000"),
        ({"multiply": ""}, "multiply range “” cannot be read"),
        ({"multiply": "a..b"}, "multiply range “a..b” cannot be read"),
        ({"divide": "1..7xx1"}, "divide range “” cannot be read"),
        ({"divide": "-1..7"}, "cannot be read"),
        ({"reference": "nan"}, "reference cannot be read"),
        ({"reference": "0"}, "reference cannot be read"),
        ({"reference": "20G"}, "above 10 GHz"),
        ({"reference": "0.1"}, "outside 1 Hz"),
        ({"max_system": "12V"}, "highest system clock cannot be read"),
        ({"vco": "750M"}, "write it as in 200M..900M"),
        ({"vco": "1600M..750M"}, "runs backwards"),
        ({"fraction_bits": 25}, "outside 0 … 24"),
        ({"fraction_bits": -1}, "outside 0 … 24"),
    ],
)
def test_refuses_with_one_sentence(change, part: str) -> None:
    with pytest.raises(TimingError, match=part):
        read_chip(**(TEXTS | change))
