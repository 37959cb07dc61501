"""A stage is computed once for the same inputs, and what is in use is not forgotten."""

from workbench.pipeline.memory import Memory


def test_same_inputs_are_computed_once() -> None:
    stage = Memory(lambda a, b: [a, b])

    first = stage(1, 2)

    assert stage(1, 2) is first
    assert stage.runs == 1


def test_other_inputs_are_computed_anew() -> None:
    stage = Memory(lambda a: a + 1)

    assert [stage(1), stage(2)] == [2, 3]
    assert stage.runs == 2


def test_the_answer_that_is_asked_for_again_stays() -> None:
    stage = Memory(lambda a: [a], kept=2)
    kept = stage("in use")

    for other in range(5):
        stage(other)
        stage("in use")

    assert stage("in use") is kept


def test_old_answers_go() -> None:
    stage = Memory(lambda a: [a], kept=2)
    for number in range(3):
        stage(number)

    stage(0)

    assert stage.runs == 4
