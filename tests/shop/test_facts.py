"""Facts: kinds, keys, and the one list each stands in."""

import dataclasses

import pytest

from station.shop import facts
from station.shop.facts import (
    KINDS,
    Batch,
    Bit,
    Concern,
    Fact,
    Gone,
    Lot,
    Material,
    Notice,
    Order,
    Pack,
    Part,
    Pile,
    Placed,
    Revision,
    Shape,
    Slip,
)

DAY = "2026-11-25"
AT = f"{DAY}T10:00:00"
SQUARE = Shape(outline=((0.0, 0.0), (30.0, 0.0), (30.0, 20.0), (0.0, 20.0)), tabs=((15.0, 0.0),))


def test_every_fact_is_a_kind_under_its_own_name():
    public = [getattr(facts, name) for name in facts.__all__]
    kinds = {
        f for f in public if isinstance(f, type) and issubclass(f, Fact) and f not in (Fact, Gone)
    }
    assert kinds == set(KINDS.values())
    assert all(name == kind.kind for name, kind in KINDS.items())
    assert all(dataclasses.is_dataclass(kind) for kind in kinds)


def batch(**more):
    return Batch(id="00412", cut_file="008", revision="C", router="1", **more)


@pytest.mark.parametrize(
    ("fact", "shelf"),
    [
        (Part(id="014", name="HC", words="Comb"), ("all", "014")),
        (batch(due=AT), ("queue/1", f"queued/{AT}/00412")),
        (batch(), ("queue/1", "queued/9999/00412")),
        (batch(state="cut"), ("cut", "00412")),
        (Lot(id="0931", material="1", received=DAY), ("1", f"{DAY}/0931")),
        (Bit(id="12", words="6 mm", diameter_mm=6.0, router="1"), ("router/1", "12")),
        (Bit(id="12", words="6 mm", diameter_mm=6.0, state="worn"), ("worn", "12")),
        (Order(id="3306", lines=(), due=AT, state="waiting"), ("open", f"{AT}/3306")),
        (Order(id="3306", lines=(), due=AT, state="shipped"), ("shipped", f"{AT}/3306")),
        (Pack(id="1", order="3306", mailer="01"), ("packed", "1")),
        (Pack(id="1", order="3306", mailer="01", state="cart", cart="2"), ("cart/2", "1")),
        (
            Slip(id="00412-1", batch="00412", sheet=1, router="1", at=AT),
            ("popping", f"{AT}/00412-1"),
        ),
        (
            Slip(id="00412-1", batch="00412", sheet=1, router="1", at=AT, state="popped"),
            (f"cut/1/{DAY}", f"{AT}/00412-1"),
        ),
        (Pile(id="trimming/1", area="trimming", batch="1", since=AT), ("trimming", f"9999/{AT}")),
        (Pile(id="trimming/1", area="trimming", batch="1", since=AT, done=True), None),
        (Notice(id="n", router="1", text="torn", at=AT, seen="02"), None),
        (Concern(id="c", what="hold", text="Held", since=AT), ("open", f"{AT}/c")),
        (
            Concern(id="c", what="hold", text="x", since=AT, settled="y", settled_at=AT),
            (f"settled/{DAY}", f"{AT}/c"),
        ),
        (Concern(id="c", what="hold", text="Held", since=AT, settled="as before"), None),
        (Gone(id="g", gone="part/014"), None),
    ],
    ids=lambda value: type(value).__name__,
)
def test_a_fact_stands_in_one_list(fact, shelf):
    assert fact.shelf == shelf


def test_a_key_is_kind_and_number():
    assert batch().key == "batch/00412"
    assert Gone(id="g", gone="part/014").key == "part/014"


def test_a_shape_has_a_box_and_a_part_its_tabs():
    assert SQUARE.box == (30.0, 20.0)
    assert Shape(outline=()).box == (0.0, 0.0)
    assert Part(id="1", name="x", words="x", shape=SQUARE).tabs == 1


def test_a_revision_makes_what_is_placed():
    placed = tuple(Placed(part=p, x_mm=0.0, y_mm=0.0) for p in ("014", "021", "014"))
    revision = Revision(
        id="008.C", cut_file="008", letter="C", material="1", minutes=20.0, placed=placed
    )
    assert revision.makes() == {"014": 2, "021": 1}


def test_a_sheets_mass_follows_from_size_and_density():
    """2.44 m × 1.22 m × 6.5 mm of 680 kg/m³: 2.9768 m² × 0.0065 m × 680 = 13.157 kg."""
    birch = Material(
        id="1", name="birch", thickness_mm=6.5, low_mm=6.0, high_mm=6.9, density_kg_m3=680.0
    )
    assert birch.sheet_kg == pytest.approx(13.157, abs=0.001)
