"""Edits: one file for each noun, one pure function for each thing a person can do.

Every function takes a project and returns another; what cannot be done raises an
:class:`~workbench.errors.EditError` whose sentence a person can read, and the project given
stays as it was. ``parts`` (values, adding, removing, splitting), ``ladders`` (bits, shunt,
series resistor, whole ladders), ``channels`` (linking), ``timing`` (mode and counts),
``picture``, ``sync``, ``drive`` (pins, load, cable), ``naming``.
"""
