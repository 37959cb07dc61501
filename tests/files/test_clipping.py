import pytest

from workbench.circuit.ladders import weighted
from workbench.circuit.network import GROUND, Capacitor, NodeId, PartId
from workbench.errors import FileError
from workbench.files.clipping import clipping_text, read_clipping
from workbench.project.edits.clippings import Clipping, clip

LADDER = weighted(3, [500.0, 1e3, 2e3], node_farads=30e-12)


def test_parts_come_back_from_their_text_as_they_were() -> None:
    clipping = clip(LADDER, ["R1", "C1"], ["bit2"])

    assert read_clipping(clipping_text(clipping)) == clipping


def test_a_part_has_a_line_in_the_words_of_the_project_file() -> None:
    text = clipping_text(clip(LADDER, ["R1"]))

    assert (
        '{"id": "R1", "a": "bit2", "b": "out", "ohms": 500, "tolerance": 0.01, "rating_watts": 0.25}' in text
    )


@pytest.mark.parametrize(
    ("text", "why"),
    [
        ("R1 500", "holds no parts"),
        ("", "holds no parts"),
        ("{}", "holds no parts"),
        ('{"format": "backporch-parts", "version": 2}', "another version"),
        ('{"format": "backporch-parts", "version": 1, "extra": 1}', "extra is not known"),
        ('{"format": "backporch-parts", "version": 1, "resistors": 3}', "must be a list"),
        ('{"format": "backporch-parts", "version": 1, "resistors": [', "cut off"),
    ],
)
def test_other_text_is_refused_in_a_sentence(text: str, why: str) -> None:
    with pytest.raises(FileError, match=why):
        read_clipping(text)


def test_values_out_of_range_are_refused() -> None:
    text = clipping_text(Clipping((), (Capacitor(PartId("C1"), NodeId("out"), GROUND, 5.0),)))

    with pytest.raises(FileError, match="C1 cannot be 5 F"):
        read_clipping(text)
