"""Sheet goods, and the lots they come in."""

from dataclasses import dataclass
from typing import Annotated, ClassVar

from station.shop.facts.about import About
from station.shop.facts.base import RETIRED, Fact, InUse, LeadDays, Name, Shelf
from station.shop.words import say


@dataclass(frozen=True, kw_only=True)
class Material(Fact):
    """A sheet good: its nominal thickness, the limits a reading must keep, its size."""

    kind: ClassVar[str] = "material"
    name: Name
    thickness_mm: Annotated[float, About(say("thickness"), unit="mm", above=0)]
    low_mm: Annotated[float, About(say("low"), unit="mm")]
    high_mm: Annotated[float, About(say("high"), unit="mm")]
    length_mm: Annotated[float, About(say("length"), unit="mm", above=0, inch_start=96)] = 2440.0
    width_mm: Annotated[float, About(say("width"), unit="mm", above=0, inch_start=48)] = 1220.0
    density_kg_m3: Annotated[float, About(say("density"), unit="kg/m³", inch_start=44)] = 700.0
    lead_days: LeadDays = 0
    # that sold in packs of; 0: any number
    pack_sheets: Annotated[int, About(say("pack sheets"), least=0, most=99_999)] = 0
    price: Annotated[float, About(say("price"), least=0)] = 0.0  # of a sheet; 0: not known
    active: InUse = True

    @property
    def shelf(self) -> Shelf:
        """All of them; a retired one stands apart."""
        return ("all" if self.active else RETIRED, self.id)

    @property
    def sheet_kg(self) -> float:
        """What one sheet weighs, in kilograms."""
        volume_mm3 = self.length_mm * self.width_mm * self.thickness_mm
        return volume_mm3 * 1e-9 * self.density_kg_m3


@dataclass(frozen=True, kw_only=True)
class Lot(Fact):
    """Sheets received together. How many are left is counted in moves (place ``store``)."""

    kind: ClassVar[str] = "lot"
    material: Annotated[str, About(say("material"), points_at="material")]
    received: Annotated[str, About(say("received"), written="day", starts_today=True)] = ""
    # why to look twice: "5.8 mm read on router 1"
    mark: Annotated[str, About(say("look twice"))] = ""
    active: InUse = True

    @property
    def shelf(self) -> Shelf:
        """By material, oldest first; a retired one stands apart."""
        return (self.material if self.active else RETIRED, f"{self.received}/{self.id}")
