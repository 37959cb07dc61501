"""Formulas that make a mode for any size: VESA CVT in three blankings, and GTF."""
