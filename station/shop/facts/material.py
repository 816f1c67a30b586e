"""Sheet goods, and the lots they come in."""

from dataclasses import dataclass
from typing import ClassVar

from station.shop.facts.base import Fact, Shelf


@dataclass(frozen=True, kw_only=True)
class Material(Fact):
    """A sheet good: its nominal thickness, the limits a reading must keep, its size."""

    kind: ClassVar[str] = "material"
    name: str
    thickness_mm: float
    low_mm: float
    high_mm: float
    length_mm: float = 2440.0
    width_mm: float = 1220.0
    density_kg_m3: float = 700.0
    lead_days: int = 0  # worked days from an order until it is there; 0: not known
    pack_sheets: int = 0  # that come together; 0: any number

    @property
    def sheet_kg(self) -> float:
        """What one sheet weighs, in kilograms."""
        volume_mm3 = self.length_mm * self.width_mm * self.thickness_mm
        return volume_mm3 * 1e-9 * self.density_kg_m3


@dataclass(frozen=True, kw_only=True)
class Lot(Fact):
    """Sheets received together. How many are left is counted in moves (place ``store``)."""

    kind: ClassVar[str] = "lot"
    material: str
    received: str = ""
    mark: str = ""  # why to look twice: "5.8 mm read on router 1"

    @property
    def shelf(self) -> Shelf:
        """By material, oldest first."""
        return (self.material, f"{self.received}/{self.id}")
