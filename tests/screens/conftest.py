import pytest

from station.look.window import Window
from station.session import Session
from tests.replay import Stage
from tests.screens.ways import Screen


@pytest.fixture
def stage(tmp_path):
    made = Stage(tmp_path)
    yield made
    assert made.ledger.check() == []
    made.ledger.close()


@pytest.fixture
def screen(stage, qtbot):
    window = Window()
    qtbot.addWidget(window)
    session = Session(window, stage.desk)
    window.show()
    qtbot.waitExposed(window)
    session.start()
    yield Screen(window, session, stage)
    session.stop()
