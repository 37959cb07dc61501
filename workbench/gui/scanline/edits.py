"""The edits that the panel makes, each one step to undo however long the wheel or the drag lasts."""

from workbench.gui.bench import Bench
from workbench.picture.scene import Card
from workbench.project.document import Direction, Project
from workbench.project.edits.picture import set_card, set_colour, set_scanline
from workbench.project.edits.timing import set_counts
from workbench.timing.mode import Axis

__all__ = ["LineEdits"]

EDGES = ("front porch", "sync", "back porch")


class LineEdits:
    """Makes edits through the session; says why not where one cannot be made."""

    def __init__(self, bench: Bench) -> None:
        self._bench = bench

    def show_scanline(self, number: int) -> None:
        """Show a scanline of the frame."""

        def edit(project: Project) -> Project:
            return set_scanline(project, number)

        self._bench.apply(f"Show scanline {number}", edit, origin=self, quiet="scanline")

    def step_scanline(self, lines: int) -> None:
        """Show a scanline further on, or back; past the frame's end comes its beginning."""
        project = self._bench.session.project
        self.show_scanline((project.scanline - 1 + lines) % project.mode.v.total + 1)

    def show_card(self, card: Card) -> None:
        """Show another test card."""
        self._bench.apply(f"Show card {card.value}", lambda project: set_card(project, card), origin=self)

    def colour_card(self, colour: tuple[float, float, float]) -> None:
        """Give the solid card a colour."""

        def edit(project: Project) -> Project:
            return set_colour(set_card(project, Card.SOLID), colour)

        self._bench.apply("Colour the card", edit, merge="card colour", origin=self)

    def move_edge(self, direction: Direction, axis: Axis, edge: int) -> None:
        """Take the counts that the ruler wants."""

        def edit(project: Project) -> Project:
            return set_counts(
                project,
                direction,
                active=axis.active,
                front_porch=axis.front_porch,
                sync=axis.sync,
                back_porch=axis.back_porch,
            )

        what = "" if direction is Direction.HORIZONTAL else "vertical "
        label = f"Move the end of the {what}{EDGES[edge]}"
        self._bench.apply(label, edit, merge=("ruler", direction, edge), origin=self)

    def release(self) -> None:
        """End a drag: the next edit is a step of its own."""
        self._bench.session.release()

    def drop(self) -> None:
        """Leave a drag: what it did is taken back."""
        self._bench.session.drop()
