import pytest

from tests.screens.ways import on_screen


@pytest.fixture
def screen(stage, qtbot):
    yield from on_screen(stage, qtbot)
