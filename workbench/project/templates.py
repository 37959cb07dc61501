"""New projects: from the options of ``backporch new``, and the templates to start from."""

from dataclasses import dataclass

from workbench.circuit.network import Cable, Driver, Load
from workbench.circuit.series import Series
from workbench.circuit.wish import LadderWish, Shape, make_ladder
from workbench.errors import EditError, NetworkError
from workbench.picture.scene import Card, Picture
from workbench.project.document import Channels, Project, Wiring
from workbench.project.validity import first_flaw
from workbench.timing.mode import Mode
from workbench.timing.search import find_mode

__all__ = ["TEMPLATES", "Template", "Wishes", "default_wiring", "make_project"]

Wishes = tuple[LadderWish, LadderWish, LadderWish]
"""Red, green, blue."""

_USUAL_DRIVER = Driver()
_USUAL_LOAD = Load()
_USUAL_PICTURE = Picture()


def make_project(
    mode: Mode,
    wishes: Wishes,
    *,
    name: str = "New board",
    driver: Driver = _USUAL_DRIVER,
    load: Load = _USUAL_LOAD,
    cable: Cable | None = None,
    picture: Picture = _USUAL_PICTURE,
    scanline: int = 1,
) -> Project:
    """Return a new project; the channels are linked if they are alike.

    Raises
    ------
    EditError
        If a value is out of range or does not fit the bits, or white cannot be reached.
    """
    try:
        red, green, blue = (make_ladder(wish, driver, load) for wish in wishes)
    except NetworkError as error:
        raise EditError(str(error)) from error
    project = Project(
        name=name,
        mode=mode,
        channels=Channels(red, green, blue),
        wiring=default_wiring((red.n_pins, green.n_pins, blue.n_pins)),
        driver=driver,
        load=load,
        cable=cable,
        linked=red == green == blue,
        picture=picture,
        scanline=scanline,
        series=wishes[0].series or Series.E24,
    )
    if (flaw := first_flaw(project)) is not None:
        raise EditError(" ".join(flaw))
    return project


def default_wiring(counts: tuple[int, int, int]) -> Wiring:
    """Return consecutive pins P0, P1 …: red, green, blue, most significant bit first, then H and V."""
    names = tuple(f"P{number}" for number in range(sum(counts) + 2))
    green, blue = counts[0], counts[0] + counts[1]
    return Wiring(names[:green], names[green:blue], names[blue:-2], *names[-2:])


@dataclass(frozen=True, slots=True)
class Template:
    """A project to start from."""

    id: str
    """A word for it, and the stem of its shipped file."""
    title: str
    description: str
    """One sentence for the list."""
    mode: str
    wishes: Wishes
    picture: Picture = _USUAL_PICTURE
    scanline: int = 1
    load: Load = _USUAL_LOAD
    cable: Cable | None = None

    @property
    def file(self) -> str:
        """Return the name of the shipped file, as ``asset_path("projects/" + file)`` finds it."""
        return f"{self.id}.backporch"

    def project(self) -> Project:
        """Return the project itself, made anew; the shipped file holds the same."""
        return make_project(
            find_mode(self.mode),
            self.wishes,
            name=self.title,
            load=self.load,
            cable=self.cable,
            picture=self.picture,
            scanline=self.scanline,
        )


def _weighted(*values: tuple[float, ...]) -> Wishes:
    """Return weighted ladders of given values, of one list for all or of three. [Ω]"""
    wishes = [LadderWish(bits=len(ohms), values=ohms, node_farads=_NODE_FARADS) for ohms in values]
    red, green, blue = wishes * 3 if len(wishes) == 1 else wishes
    return red, green, blue


_NODE_FARADS = 30e-12
"""Wires, pads and a connector at the node of a hand-made board. Our own guess. [F]"""
_EVEN = LadderWish(
    Shape.SEGMENTED, 5, thermometer=2, values=(1100.0, 2200.0, 4300.0, 8200.0), node_farads=_NODE_FARADS
)
_PAIR = LadderWish(Shape.R2R, 4, values=(255.0, 511.0), series=Series.E96, node_farads=_NODE_FARADS)

TEMPLATES = (
    Template(
        "tide-board",
        "Tide board",
        "A rowing club's tide board: 5 bits a channel from a weighted ladder of doubling values.",
        "640x480@60",
        _weighted((500.0, 1000.0, 2000.0, 4000.0, 8000.0)),
        Picture(Card.COLOUR_BARS),
        scanline=123,
    ),
    Template(
        "starter-1-1-1",
        "Starter",
        "For a first lesson: one resistor a channel, three pins, eight colours.",
        "640x480@60",
        _weighted((270.0,)),
        Picture(Card.COLOUR_BARS),
        scanline=240,
    ),
    Template(
        "sign-3-3-2",
        "Sign",
        "A shop sign's 256 colours: one byte a pixel, 3 bits of red and green and 2 of blue.",
        "800x600@60",
        _weighted((510.0, 1000.0, 2000.0), (510.0, 1000.0, 2000.0), (430.0, 820.0)),
        Picture(Card.ALL_CODES),
        scanline=300,
    ),
    Template(
        "r2r-4-4-4",
        "R-2R ladder",
        "4 bits a channel from two resistor values only, 255 Ω and 511 Ω.",
        "640x480@60",
        (_PAIR, _PAIR, _PAIR),
        Picture(Card.GREY_RAMP),
        scanline=240,
    ),
    Template(
        "race-clock",
        "Race clock",
        "The regatta's race clock: segmented ladders of 5 bits, three equal legs for the top two.",
        "640x480@60",
        (_EVEN, _EVEN, _EVEN),
        Picture(Card.CHANNEL_RAMPS),
        scanline=80,
    ),
    Template(
        "second-screen",
        "Second screen",
        "Ten metres of cable to one screen more than there should be: white falls, every edge has a ghost.",
        "800x600@60",
        _weighted((510.0, 1000.0, 2000.0, 3900.0, 8200.0)),
        Picture(Card.COLOUR_BARS),
        scanline=300,
        load=Load(monitors=2),
        cable=Cable(10.0),
    ),
)
