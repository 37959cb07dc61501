"""The clock behind a mode: what a chip can make, and what is left for its processor.

``chip.py`` says what the user's chip can do, ``plan.py`` searches its settings for a pixel clock,
``pixels.py`` shows the uneven pixels of a fractional divider, ``budget.py`` counts cycles.
"""
