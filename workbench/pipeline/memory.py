"""A stage that remembers its last few answers, by its frozen inputs."""

from collections.abc import Callable
from typing import Generic, ParamSpec, TypeVar

__all__ = ["Memory"]

Inputs = ParamSpec("Inputs")
Answer = TypeVar("Answer")

_KEPT = 8
"""How many answers a stage keeps: three channels, before and after an edit, and two to spare. [1]"""


class Memory(Generic[Inputs, Answer]):
    """A pure function that is computed at most once for the same inputs."""

    def __init__(self, stage: Callable[Inputs, Answer], kept: int = _KEPT) -> None:
        self._stage = stage
        self._kept = kept
        self._answers: dict[object, Answer] = {}
        self.runs = 0
        """How often the stage was really computed. [1]"""

    def __call__(self, *inputs: Inputs.args, **named: Inputs.kwargs) -> Answer:
        """Return the stage's answer; the inputs are frozen values."""
        key = (inputs, tuple(named.items()))
        if key in self._answers:
            # Asked for again: it becomes the newest, so what is in use is never the one to go.
            answer = self._answers.pop(key)
        else:
            self.runs += 1
            answer = self._stage(*inputs, **named)
            while len(self._answers) >= self._kept:
                del self._answers[next(iter(self._answers))]
        self._answers[key] = answer
        return answer

    def forget(self) -> None:
        """Remember nothing: what the inputs stand for has changed."""
        self._answers.clear()
