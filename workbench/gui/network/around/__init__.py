"""Cards about what stands around the network: the pins and their supply, the cable, the monitor.

Every entry is an edit of its own and shows at once, in the card and on the whole bench. Start in
``drive_card.py`` and ``cable_card.py``; ``live_field.py`` is what they type into.
"""
