"""The published tables of display modes as text, one mode a row, read by ``standards.py``."""
