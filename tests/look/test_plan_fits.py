"""What to cut has room for all its tables at once: nothing is only seen by scrolling."""

from dataclasses import replace

import pytest
from msgspec import structs

from station.floor.plan import screen
from station.look import inspect
from tests.floor.shop_small import COMBS, DAY, FRAMES, SHUTTLES, batch
from tests.floor.test_plan import shop, think
from tests.look.test_window import shown


@pytest.mark.parametrize("back", [0, 2])
@pytest.mark.parametrize("then", [0, 1, 3, 6])
def test_what_blocks_follows_comes_sooner_and_can_wait_stand_on_one_screen(
    then, back, window, qapp
):
    late = batch(COMBS, "00650", due=f"{DAY[:8]}30T09:00:00")
    (forward,) = think(shop(late)).thought.forward
    view = shop(batch(SHUTTLES, "00650", due=late.due), batch(FRAMES, "00646"),
                batch(FRAMES, "00647"))  # fmt: skip
    held = think(view)
    release = held.thought.blocked[0].release
    more = tuple(structs.replace(release, file=f"9{n}", because="mark", by=f"{DAY}T1{n}:00:00")
                 for n in range(then))  # fmt: skip
    plan = structs.replace(held.thought, forward=(forward,), then=more,
                           take_back=held.thought.take_back[:back])  # fmt: skip
    face = screen.screen(replace(held, thought=plan), view)
    assert any("sooner" in str(row.title) for block in face.main for row in
               getattr(block, "rows", ()) if hasattr(row, "title"))  # fmt: skip
    shown(window, face, qapp)
    assert inspect.list_problems(window) == []
