"""The content of a good project file, to damage in one place."""

import copy
import json
from collections.abc import Callable
from typing import Any

import pytest

from workbench.files.project_file import encode
from workbench.project.templates import TEMPLATES

Spoil = Callable[..., bytes]


@pytest.fixture
def spoilt() -> Spoil:
    """Return a function: the tide board's file with one value replaced, or taken out."""
    good = json.loads(encode(TEMPLATES[0].project()))

    def spoil(*place: str | int, value: Any = ...) -> bytes:
        content = copy.deepcopy(good)
        inner = content
        for key in place[:-1]:
            inner = inner[key]
        if value is ...:
            del inner[place[-1]]
        else:
            inner[place[-1]] = value
        return json.dumps(content).encode()

    return spoil
