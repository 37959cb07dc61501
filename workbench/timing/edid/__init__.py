"""EDID: what a monitor says of itself, read from a base block and written into one.

Start with ``values.py`` (what a block holds), then ``read.py`` and ``write.py``; ``descriptor.py``
holds the 18 bytes of one mode, ``monitor.py`` judges and lists, ``text.py`` is hex in and out.

Source of every offset and bit: VESA E-EDID 1.3 and 1.4, read second-hand in the Linux kernel's
tools/edid and in parse-base-block.cpp of v4l-utils; what is from memory is marked where it stands.
"""
