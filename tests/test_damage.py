"""However a file is damaged, what can be read is there: of ``python -m tests.damage 2000``."""

import pytest

from tests import damage

pytestmark = pytest.mark.slow


def test_no_act_is_missing_that_can_be_read_and_each_loss_is_told():
    came, _ = damage.run(192, first=20_000)
    assert [why for found in came for why in found.wrong] == []
    assert sum(found.told for found in came) > 50
    assert sum(found.lost for found in came) > 100  # else nothing was damaged that mattered
