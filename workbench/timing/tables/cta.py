"""The CTA-861 formats an analog monitor may meet, and the classic modes outside both tables.

Source of the CTA rows: CTA-861, read second-hand in edid_cea_modes_1 of the Linux kernel's
drm_edid.c and checked against v4l2-dv-timings.h and parse-cta-block.cpp of v4l-utils.

Source of the classic rows: edid_est_modes of drm_edid.c for the porches; a monitor manual's preset
table for rates, clocks and polarities; two monitors' own EDIDs for the porches of 640x400 and
640x350. Tables disagree on the polarity of 640x350 (+/- in manuals, -/- in one EDID) and 1152x870
(-/- in a manual, -/+ elsewhere); the manual's is held.
"""

__all__ = ["CLASSIC_ROWS", "CTA_ROWS"]

# VIC numbers first; two that differ only in the shape of the picture share a row. Interlaced rows
# (i) count lines of a frame and are named by their field rate. VIC 6 and 21 stand at 720 pixels;
# their transport form sends each pixel twice.
CTA_ROWS = """
# VIC  name              kHz  active  fp sync  bp pol active fp sync bp pol
1      640x480@60      25175   640  16  96  48 -   480 10  2  33 -
2,3    720x480@60      27000   720  16  62  60 -   480  9  6  30 -
4      1280x720@60     74250  1280 110  40 220 +   720  5  5  20 +
5      1920x1080@60i   74250  1920  88  44 148 +  1080  4 10  31 +
6      720x480@60i     13500   720  19  62  57 -   480  8  6  31 -
16     1920x1080@60   148500  1920  88  44 148 +  1080  4  5  36 +
17,18  720x576@50      27000   720  12  64  68 -   576  5  5  39 -
19     1280x720@50     74250  1280 440  40 220 +   720  5  5  20 +
20     1920x1080@50i   74250  1920 528  44 148 +  1080  4 10  31 +
21     720x576@50i     13500   720  12  63  69 -   576  4  6  39 -
31     1920x1080@50   148500  1920 528  44 148 +  1080  4  5  36 +
32     1920x1080@24    74250  1920 638  44 148 +  1080  4  5  36 +
33     1920x1080@25    74250  1920 528  44 148 +  1080  4  5  36 +
34     1920x1080@30    74250  1920  88  44 148 +  1080  4  5  36 +
"""

CLASSIC_ROWS = """
# name              kHz  active  fp sync  bp pol active fp sync bp pol
720x400@70      28322   720  18 108  54 -   400 12  2  35 +
640x400@70      25175   640  16  96  48 -   400 12  2  35 +
640x350@70      25175   640  16  96  48 +   350 37  2  60 -
720x400@88      35500   720  18 108  54 -   400 21  2  26 -
640x480@67      30240   640  64  64  96 -   480  3  3  39 -
832x624@75      57284   832  32  64 224 -   624  1  3  39 -
1152x870@75    100000  1152  48 128 128 -   870  3  3  39 -
"""
