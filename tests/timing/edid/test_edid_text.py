import pytest

from workbench.errors import TimingError
from workbench.timing.edid.text import c_array, edid_bytes, hex_bytes, hex_text


@pytest.mark.parametrize(
    "text",
    [
        "00ff1a",
        "00 ff 1a",
        "00:FF:1A",
        "0x00, 0xff, 0x1a",
        "{0x00,0xff,0x1a};",
        "0000: 00 ff\n0002: 1a",
        "# x\n00ff\n1a",
        "static const uint8_t detailed[3] = {\n    0x00, 0xff, 0x1a,\n};\n",
        "#include <stdint.h>\nuint8_t own[] = { 0x00, /* two */ 0xff, // three\n 0x1a };",
    ],
)
def test_ways_to_write_hex(text: str) -> None:
    assert hex_bytes(text) == bytes((0x00, 0xFF, 0x1A))


@pytest.mark.parametrize(
    ("text", "part"),
    [
        ("00 ff\n00 f", "Line 2 of the hex text has an odd number of digits"),
        ("00ff1", "odd number of digits in a row \\(5\\)"),
        ("00 ff\n\n00 zz", "Line 3 of the hex text has “zz”"),
        ("uint8_t x[2] =\n{\n0x00, zz };", "Line 3 of the hex text has “zz”"),
        ("hello", "no hex"),
        ("  \n", "no hex digits"),
        ("x" * 1000, "…"),
    ],
)
def test_other_text_is_refused_with_its_place(text: str, part: str) -> None:
    with pytest.raises(TimingError, match=part) as refusal:
        hex_bytes(text)

    assert len(str(refusal.value)) < 160


def test_binary_and_text_files_are_told_apart() -> None:
    assert edid_bytes(b"\x00\xff\x1a") == b"\x00\xff\x1a"
    assert edid_bytes(b"00 ff 1a\r\n") == b"\x00\xff\x1a"
    assert edid_bytes(b"\xef\xbb\xbf00 ff 1a") == b"\x00\xff\x1a"


def test_hex_is_written_as_it_is_read() -> None:
    data = bytes(range(40))

    assert hex_bytes(hex_text(data)) == data
    assert len(hex_text(data).splitlines()) == 3


def test_c_array_holds_every_byte() -> None:
    text = c_array(bytes(range(18)), "timing")

    assert text.startswith("static const uint8_t timing[18] = {\n    0x00, 0x01,")
    assert text.count("0x") == 18
