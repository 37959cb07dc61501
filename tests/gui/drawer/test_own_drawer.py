"""The person's drawer: written at once, read at the next start, damaged ones kept aside."""

import pytest

from workbench.circuit.fit.drawer import Drawer, OwnedPart
from workbench.gui.drawer.own_drawer import OwnDrawer, own_drawer, usual_path

SOME = Drawer((OwnedPart(998.0, 12, 0.01, 1000.0), OwnedPart(470.0)))


@pytest.fixture
def own(make_bench):
    return own_drawer(make_bench())


def test_a_drawer_is_there_at_the_next_start(own, make_bench):
    own.put(SOME)

    assert own_drawer(make_bench()).drawer == SOME


def test_all_panels_of_a_bench_share_one(own):
    assert own_drawer(own.parent()) is own


def test_a_change_tells_once_and_can_be_taken_back(own):
    told = []
    own.changed.connect(lambda: told.append(own.drawer))

    own.put(SOME)
    own.put(SOME)
    own.take_back()
    own.take_back()

    assert told == [SOME, Drawer(())]
    assert not own.can_take_back
    assert usual_path().read_text() == "value,count,tolerance,measured\n"


@pytest.mark.parametrize("content", [b"\xff\xfe\x00", b"colour,value\nred,1k\n", b'1k,"3'])
def test_a_drawer_that_cannot_be_read_is_kept_aside(make_bench, content):
    path = usual_path()
    path.parent.mkdir(parents=True)
    path.write_bytes(content)
    bench, told = make_bench(), []
    bench.noticed.connect(told.append)

    own = own_drawer(bench)
    own.put(SOME)

    assert (path.parent / "drawer-damaged.csv").read_bytes() == content
    assert "drawer-damaged.csv" in told[0].text


def test_good_rows_of_a_damaged_drawer_are_kept(make_bench):
    path = usual_path()
    path.parent.mkdir(parents=True)
    path.write_text("value,count\n1k,3\nbig,2\n")

    assert own_drawer(make_bench()).drawer == Drawer((OwnedPart(1000.0, 3),))
    assert "big,2" in (path.parent / "drawer-damaged.csv").read_text()


def test_where_it_cannot_be_written_it_is_said(make_bench, tmp_path):
    (tmp_path / "file").write_text("no folder")
    bench, told = make_bench(), []
    bench.noticed.connect(told.append)

    own = OwnDrawer(bench, tmp_path / "file" / "drawer.csv")
    own.put(SOME)

    assert own.drawer == SOME
    assert told[0].warning
    assert "not kept for next time" in told[0].text
