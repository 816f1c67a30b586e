"""The first file on a PC: what makes it ready comes first, and what is told never falls."""

import msgspec
import pytest

from station.jobs import read_cut_file
from station.jobs.messages import CutFileRead
from tests.jobs.test_messages import REQUEST
from tests.look_at_sheets import Text


@pytest.mark.usefixtures("compiled")
@pytest.mark.parametrize("prepared", [True, False])
def test_the_part_done_only_grows(monkeypatch, tmp_path, prepared):
    file = tmp_path / "plate.nc"
    file.write_text(Text().take_bit(1).cut_out(100, 100, 300, 200).write(), encoding="ascii")
    told = []
    monkeypatch.setattr(read_cut_file, "is_prepared", lambda: prepared)
    monkeypatch.setattr(
        read_cut_file, "prepare_reader", lambda tell: [tell(n / 4) for n in range(5)]
    )
    request = msgspec.structs.replace(REQUEST, path=str(file), parts=())
    done = read_cut_file.run(request, lambda stage, share: told.append((stage, share)))
    assert isinstance(done, CutFileRead)
    shares = [share for _, share in told]
    assert shares == sorted(shares)
    assert shares[0] == 0.0
    assert 0.6 < shares[-1] <= 1.0
    assert ("ready" in [stage for stage, _ in told]) == (not prepared)
