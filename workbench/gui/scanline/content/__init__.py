"""What the plot shows, as plain values: traces, areas, edges, cursors, scales and words.

Start in :mod:`shown`: a line and a frame have one shape there. Nothing here paints.
"""
