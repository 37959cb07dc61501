"""The base block of `tests.edids`, as a fixture."""

from collections.abc import Callable

import pytest

from tests.edids import base_block


@pytest.fixture(scope="session")
def block() -> Callable[..., bytes]:
    return base_block
