"""A stack is drawn at the scale of the mailer that it lies in, in a slim one as well."""

import pytest
from PySide6.QtCore import QRectF

from station.look.blocks.mailer import fit_stack

WIDE = 300  # px that a drawing is wide


@pytest.mark.parametrize(
    ("mailer", "stack", "steps"),
    [((620, 120), (588, 103), 2), ((620, 120), (560, 80), 0), ((240, 170), (226, 97), 0),
     ((380, 190), (300, 120), 2)],
)  # fmt: skip
def test_a_stack_is_drawn_at_the_scale_of_its_mailer(mailer, stack, steps) -> None:
    """Both in mm; the few px that its steps take may be missing."""
    scale = WIDE / mailer[0]
    body = QRectF(0, 0, WIDE, mailer[1] * scale)
    room, step, drawn = fit_stack(body, stack, steps, scale)
    assert drawn >= 0.85 * scale
    assert body.contains(room)
    assert stack[0] * drawn + steps * step <= room.width() + 1e-6
    assert stack[1] * drawn + steps * step <= room.height() + 1e-6
