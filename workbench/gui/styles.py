"""The small style sheet: what a palette cannot do for Qt's own menus, tables, tips and bars."""

from workbench.gui.theme import Theme, Type

__all__ = ["style_sheet"]

SHEET = """
QToolTip {{
    color: {text}; background: {raised}; border: 1px solid {outline};
    padding: {p5}px {p8}px;
}}
QMenu {{
    color: {text}; background: {raised}; border: 1px solid {outline}; padding: {p5}px 0;
}}
QMenu::item {{ padding: {p5}px {p24}px {p5}px {p24}px; }}
QMenu::item:selected {{ background: {lit}; color: {text}; }}
QMenu::item:disabled {{ color: {faint}; }}
QMenu::separator {{ height: 1px; background: {hairline}; margin: {p5}px {p12}px; }}
QMenu::icon {{ padding-left: {p8}px; }}
QScrollBar {{ background: transparent; border: none; }}
QScrollBar:vertical {{ width: {p10}px; }}
QScrollBar:horizontal {{ height: {p10}px; }}
QScrollBar::handle {{ background: {outline}; border-radius: {p3}px; margin: {p2}px; }}
QScrollBar::handle:hover {{ background: {dim}; }}
QScrollBar::handle:vertical {{ min-height: {p24}px; }}
QScrollBar::handle:horizontal {{ min-width: {p24}px; }}
QScrollBar::add-line, QScrollBar::sub-line {{ width: 0; height: 0; }}
QScrollBar::add-page, QScrollBar::sub-page {{ background: transparent; }}
QTableView, QListView, QTreeView {{
    background: transparent; border: none; outline: none;
    gridline-color: {hairline}; selection-background-color: {lit}; selection-color: {text};
}}
QTableView::item, QListView::item {{ padding: {p2}px {p8}px; }}
QTableView::item:selected, QListView::item:selected {{ background: {lit}; color: {text}; }}
QHeaderView::section {{
    color: {dim}; background: transparent; border: none; border-bottom: 1px solid {hairline};
    padding: {p3}px {p8}px;
}}
QTableCornerButton::section {{ background: transparent; border: none; }}
QLineEdit {{
    color: {text}; background: {plot}; border: 1px solid {outline}; border-radius: {p5}px;
    padding: 0 {p8}px; margin: 0; placeholder-text-color: {dim};
    selection-background-color: {accent}; selection-color: {panel};
}}
QLineEdit:focus {{ border: 2px solid {accent}; padding: 0 {p8less}px; }}
QLineEdit[state="fails"] {{ border: 2px solid {fails}; padding: 0 {p8less}px; }}
QLineEdit[state="warns"] {{ border: 2px solid {warns}; padding: 0 {p8less}px; }}
QLineEdit:disabled {{ color: {faint}; border-color: {hairline}; }}
QSplitter::handle {{ background: {hairline}; }}
"""


def style_sheet(theme: Theme, type_: Type) -> str:
    """Return the sheet for a theme and a text size."""
    scale = type_.base_px / 14.0
    sizes = {f"p{n}": max(1, round(n * scale)) for n in (2, 3, 5, 8, 10, 12, 24)}
    sizes["p8less"] = sizes["p8"] - 1
    lit = theme.lit("raised").name()
    faint = theme.mixed("raised", "dim", 0.6).name()
    return SHEET.format(**theme.roles, **sizes, lit=lit, faint=faint)
