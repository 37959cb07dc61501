"""The Monitor page: what a monitor takes the signal for, what its EDID says, and blocks of one's own.

Start in ``page.py``; ``seen.py`` and ``strips.py`` show what it sees, ``edid_file.py`` reads files.
"""
