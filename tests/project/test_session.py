"""The session: one step an edit, one notification, undo by the old project."""

from dataclasses import replace
from pathlib import Path

import pytest

from workbench.errors import EditError
from workbench.project.document import Project
from workbench.project.edits.picture import set_scanline
from workbench.project.edits.timing import set_mode
from workbench.project.session import Change, Session
from workbench.timing.search import find_mode


@pytest.fixture
def session(project: Project) -> Session:
    return Session(project)


def named(name: str):
    return lambda project: replace(project, name=name)


def refuse(_: Project) -> Project:
    raise EditError("this cannot be done")


def spoilt_gesture(session: Session, name: str) -> None:
    with session.gesture("Spoilt"):
        session.apply("one", named(name))
        session.apply("two", refuse)


def heard(session: Session) -> list[Change]:
    changes: list[Change] = []
    session.subscribe(changes.append)
    return changes


def test_an_edit_is_one_step_and_one_notification(session: Session, project: Project) -> None:
    changes = heard(session)

    session.apply("Rename", named("Pier"), origin="field")

    assert changes == [Change(1, project, session.project, "Rename", "field")]
    assert session.project.name == "Pier"
    assert (session.can_undo, session.undo_label, session.dirty) == (True, "Rename", True)


def test_an_edit_that_changes_nothing_is_silent(session: Session, project: Project) -> None:
    changes = heard(session)

    session.apply("Rename", named(project.name))

    assert (changes, session.can_undo, session.revision, session.project) == ([], False, 0, project)
    assert session.project is project


def test_a_refused_edit_leaves_everything(session: Session, project: Project) -> None:
    session.apply("Rename", named("Pier"))
    session.undo()
    changes = heard(session)

    with pytest.raises(EditError):
        session.apply("Refuse", refuse)

    assert (session.project, session.redo_label, changes) == (project, "Rename", [])


def test_undo_and_redo_swap_the_very_projects(session: Session, project: Project) -> None:
    session.apply("Rename", named("Pier"))
    after = session.project

    session.undo()
    assert session.project is project
    session.redo()
    assert session.project is after


def test_undo_with_nothing_to_undo_is_silent(session: Session) -> None:
    changes = heard(session)

    session.undo()
    session.redo()

    assert changes == []


def test_a_new_edit_forgets_what_was_undone(session: Session) -> None:
    session.apply("Rename", named("Pier"))
    session.undo()
    session.apply("Rename again", named("Quay"))

    assert not session.can_redo


def test_edits_with_one_key_are_one_step_until_released(session: Session, project: Project) -> None:
    for name in ("a", "ab", "abc"):
        session.apply("Type", named(name), merge="name")
    session.release()
    session.apply("Type", named("abcd"), merge="name")

    session.undo()
    assert session.project.name == "abc"
    session.undo()
    assert session.project is project


def test_another_edit_ends_a_merge(session: Session) -> None:
    session.apply("Type", named("a"), merge="name")
    session.apply("Rename", named("b"))
    session.apply("Type", named("c"), merge="name")

    session.undo()

    assert session.project.name == "b"


def test_a_drag_back_to_its_start_leaves_no_step(session: Session, project: Project) -> None:
    session.apply("Drag", named("a"), merge="drag")
    session.apply("Drag", named(project.name), merge="drag")

    assert not session.can_undo
    assert not session.dirty


def test_escape_drops_a_drag(session: Session, project: Project) -> None:
    session.apply("Rename", named("Pier"))
    session.apply("Drag", named("a"), merge="drag")
    session.drop()

    assert (session.project.name, session.undo_label) == ("Pier", "Rename")
    session.drop()
    assert session.project.name == "Pier"


def test_what_is_merging_is_known_until_it_is_released(session: Session) -> None:
    assert session.merging is None

    session.apply("Name it", lambda p: replace(p, name="a"), merge="typed")
    assert session.merging == "typed"
    session.release()

    assert session.merging is None


def test_a_gesture_is_one_step_and_every_edit_is_heard(session: Session, project: Project) -> None:
    changes = heard(session)

    with session.gesture("Tune R3"):
        session.apply("one", named("a"))
        session.apply("two", named("b"))

    assert [change.after.name for change in changes] == ["a", "b"]
    assert session.undo_label == "Tune R3"
    session.undo()
    assert session.project is project


def test_an_exception_takes_a_gesture_back(session: Session, project: Project) -> None:
    session.apply("Rename", named("Pier"))
    changes = heard(session)

    with pytest.raises(EditError):
        spoilt_gesture(session, "a")

    assert (session.project.name, session.undo_label) == ("Pier", "Rename")
    assert [change.after.name for change in changes] == ["a", "Pier"]
    session.undo()
    assert session.project is project


def test_a_gesture_inside_a_gesture_takes_back_its_own_part(session: Session, project: Project) -> None:
    with session.gesture("Outer"):
        session.apply("one", named("a"))
        with pytest.raises(EditError):
            spoilt_gesture(session, "b")
        assert session.project.name == "a"
        session.apply("four", named("c"))

    assert session.undo_label == "Outer"
    session.undo()
    assert session.project is project


def test_the_saved_mark_follows_undo(session: Session) -> None:
    session.apply("Rename", named("Pier"))
    session.mark_saved(Path("pier.backporch"))
    assert (session.dirty, session.path) == (False, Path("pier.backporch"))

    session.apply("Rename", named("Quay"))
    assert session.dirty
    session.undo()
    assert not session.dirty
    session.undo()
    assert session.dirty


def test_saving_is_heard_without_a_new_revision(session: Session, project: Project) -> None:
    changes = heard(session)

    session.mark_saved(Path("pier.backporch"))

    assert changes == [Change(0, project, project, "Save")]


def test_opening_replaces_project_and_history(session: Session, project: Project) -> None:
    session.apply("Rename", named("Pier"))
    other = replace(project, name="Other")

    session.replace(other, Path("other.backporch"))

    assert (session.project, session.path, session.dirty) == (other, Path("other.backporch"), False)
    assert not session.can_undo


def test_a_recovered_project_counts_as_unsaved(session: Session, project: Project) -> None:
    session.replace(project, None, saved=False)

    assert session.dirty


def test_who_unsubscribes_hears_no_more(session: Session) -> None:
    changes: list[Change] = []
    unsubscribe = session.subscribe(changes.append)

    unsubscribe()
    unsubscribe()
    session.apply("Rename", named("Pier"))

    assert changes == []


# Looks ----------------------------------------------------------------------------------------


def look_at(session: Session, scanline: int) -> None:
    session.apply(f"Show scanline {scanline}", lambda p: set_scanline(p, scanline), quiet="scanline")


def test_a_look_is_told_and_is_neither_a_step_nor_unsaved(session: Session) -> None:
    changes = heard(session)

    look_at(session, 99)

    assert [change.label for change in changes] == ["Show scanline 99"]
    assert session.project.scanline == 99
    assert (session.can_undo, session.dirty) == (False, False)


def test_a_look_outlasts_undo_and_redo(session: Session, project: Project) -> None:
    session.apply("Rename", named("Pier"))
    look_at(session, 99)

    session.undo()
    assert (session.project.name, session.project.scanline, session.dirty) == (project.name, 99, False)
    look_at(session, 100)
    session.redo()
    assert (session.project.name, session.project.scanline, session.dirty) == ("Pier", 100, True)


def test_a_look_does_not_end_a_drag_nor_its_taking_back(session: Session, project: Project) -> None:
    session.apply("Drag", named("a"), merge="drag")
    look_at(session, 99)
    session.apply("Drag", named("b"), merge="drag")
    session.drop()

    assert (session.project.name, session.project.scanline) == (project.name, 99)
    assert not session.can_undo


def test_a_look_that_another_project_cannot_take_is_left(session: Session, project: Project) -> None:
    session.apply("Longer", lambda p: set_mode(p, find_mode("800x600@60")))
    look_at(session, 620)

    session.undo()

    assert session.project == project
    assert not session.dirty


def test_a_look_is_saved_with_the_rest_and_forgotten_by_the_next_project(
    session: Session, project: Project
) -> None:
    look_at(session, 99)
    session.mark_saved(Path("a"))
    assert not session.dirty

    session.replace(project, Path("b"))
    session.apply("Rename", named("Pier"))
    session.undo()
    assert session.project == project


def test_a_look_at_a_project_in_no_file_leaves_it_unsaved(session: Session, project: Project) -> None:
    session.replace(project, None, saved=False)

    look_at(session, 99)

    assert session.dirty
