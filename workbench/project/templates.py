"""New projects: from the options of ``backporch new``, and the templates to start from."""

from dataclasses import dataclass

from workbench.circuit.ladders import Topology, r2r, weighted
from workbench.circuit.network import Cable, Driver, Load, Network
from workbench.circuit.series import Series
from workbench.circuit.sizing import sized_ladder
from workbench.errors import EditError, NetworkError
from workbench.picture.scene import Card, Picture
from workbench.project.document import Channels, Project, Wiring
from workbench.project.validity import first_flaw
from workbench.timing.mode import Mode
from workbench.timing.search import find_mode

__all__ = ["TEMPLATES", "Ladders", "Template", "default_wiring", "make_project"]

Values = tuple[float, ...]

_USUAL_DRIVER = Driver()
_USUAL_LOAD = Load()
_USUAL_PICTURE = Picture()


@dataclass(frozen=True, slots=True)
class Ladders:
    """The wish for three ladders: their shape, their bits, and where the values come from."""

    topology: Topology = Topology.WEIGHTED
    bits: tuple[int, int, int] = (5, 5, 5)
    """Bits of red, green and blue, ``1 <= bits <= 8``. [1]"""
    values: tuple[Values, Values, Values] | None = None
    """Red, green, blue. Weighted: one value a bit, most significant first; R-2R: R, or R and 2R.
    None to have them sized. [Ω]"""
    series: Series | None = None
    """Series that sized values are taken from; none for the ideal ones."""
    shunt_ohms: float | None = None
    node_farads: float = 0.0
    """Capacitance of each output node to ground; 0 for none. [F]"""


def make_project(
    mode: Mode,
    ladders: Ladders,
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
        red, green, blue = (_ladder(ladders, place, driver, load) for place in range(3))
    except NetworkError as error:
        raise EditError(str(error)) from error
    project = Project(
        name=name,
        mode=mode,
        channels=Channels(red, green, blue),
        wiring=default_wiring(ladders.bits),
        driver=driver,
        load=load,
        cable=cable,
        linked=red == green == blue,
        picture=picture,
        scanline=scanline,
        series=ladders.series or Series.E24,
    )
    if (flaw := first_flaw(project)) is not None:
        raise EditError(" ".join(flaw))
    return project


def default_wiring(bits: tuple[int, int, int]) -> Wiring:
    """Return consecutive pins P0, P1 …: red, green, blue, most significant bit first, then H and V."""
    names = tuple(f"P{number}" for number in range(sum(bits) + 2))
    green, blue = bits[0], bits[0] + bits[1]
    return Wiring(names[:green], names[green:blue], names[blue:-2], *names[-2:])


def _ladder(ladders: Ladders, place: int, driver: Driver, load: Load) -> Network:
    bits, shunt_ohms, node_farads = ladders.bits[place], ladders.shunt_ohms, ladders.node_farads
    if ladders.values is None:
        return sized_ladder(
            ladders.topology,
            bits,
            driver,
            load,
            series=ladders.series,
            shunt_ohms=shunt_ohms,
            node_farads=node_farads,
        )
    values = ladders.values[place]
    if ladders.topology is Topology.WEIGHTED:
        return weighted(bits, values, shunt_ohms=shunt_ohms, node_farads=node_farads)
    if ladders.topology is Topology.R2R and 1 <= len(values) <= 2:
        return r2r(bits, *values, shunt_ohms=shunt_ohms, node_farads=node_farads)
    if ladders.topology is Topology.R2R:
        raise NetworkError(f"an R-2R ladder takes R, or R and 2R, not {len(values)} values")
    raise NetworkError(f"there is no template for a {ladders.topology.value} ladder: choose weighted or R-2R")


@dataclass(frozen=True, slots=True)
class Template:
    """A project to start from."""

    file: str
    """Name of the shipped file, as ``asset_path("projects/" + file)`` finds it."""
    title: str
    description: str
    """One sentence for the list."""
    mode: str
    ladders: Ladders
    picture: Picture = _USUAL_PICTURE
    scanline: int = 1

    def project(self) -> Project:
        """Return the project itself, made anew; the shipped file holds the same."""
        return make_project(
            find_mode(self.mode),
            self.ladders,
            name=self.title,
            picture=self.picture,
            scanline=self.scanline,
        )


def _weighted(bits: tuple[int, int, int], *values: Values) -> Ladders:
    red, green, blue = values * 3 if len(values) == 1 else values
    return Ladders(Topology.WEIGHTED, bits, (red, green, blue), node_farads=30e-12)


TEMPLATES = (
    Template(
        "tide-board.backporch",
        "Tide board",
        "A rowing club's tide board: 5 bits a channel from a weighted ladder of doubling values.",
        "640x480@60",
        _weighted((5, 5, 5), (500.0, 1000.0, 2000.0, 4000.0, 8000.0)),
        Picture(Card.COLOUR_BARS),
        scanline=123,
    ),
    Template(
        "starter-1-1-1.backporch",
        "Starter",
        "For a first lesson: one resistor a channel, three pins, eight colours.",
        "640x480@60",
        _weighted((1, 1, 1), (270.0,)),
        Picture(Card.COLOUR_BARS),
        scanline=240,
    ),
    Template(
        "sign-3-3-2.backporch",
        "Sign",
        "A shop sign's 256 colours: one byte a pixel, 3 bits of red and green and 2 of blue.",
        "800x600@60",
        _weighted((3, 3, 2), (510.0, 1000.0, 2000.0), (510.0, 1000.0, 2000.0), (430.0, 820.0)),
        Picture(Card.ALL_CODES),
        scanline=300,
    ),
    Template(
        "r2r-4-4-4.backporch",
        "R-2R ladder",
        "4 bits a channel from two resistor values only, 255 Ω and 511 Ω.",
        "640x480@60",
        Ladders(Topology.R2R, (4, 4, 4), ((255.0, 511.0),) * 3, Series.E96, node_farads=30e-12),
        Picture(Card.GREY_RAMP),
        scanline=240,
    ),
)
