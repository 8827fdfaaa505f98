"""Bands of air that work needs: as the list of operations writes them, and as figures with the shop's own limits."""

from collections.abc import Mapping
from dataclasses import dataclass

from gramil.description.shop.limits import LIMITS
from gramil.description.shop.tables import Shop
from gramil.physics.arrays import BoolArray, FloatArray


@dataclass(frozen=True)
class Band:
    """Air that an operation needs: humidity in %, temperature in C, least and most; either end may be the name of a
    limit.
    """

    name: str
    what: str
    humidity: tuple[float | str, float | str]
    temperature: tuple[float, float]


@dataclass(frozen=True)
class Limits:
    """A band of air as figures, both ends included: humidity %, temperature C. `what` says what it is for."""

    what: str
    humidity: tuple[float, float]
    temperature: tuple[float, float]

    def reached(self, damper: float, drier: float) -> "Limits":
        """The air that can be brought into the band by making it damper, or drier, by this many %."""
        dry, damp = self.humidity
        return Limits(self.what, (dry - damper, damp + drier), self.temperature)

    def holds(self, temperature: float, humidity: float) -> bool:
        """Whether the air lies within the band."""
        return (
            self.humidity[0] <= humidity <= self.humidity[1]
            and self.temperature[0] <= temperature <= self.temperature[1]
        )

    def inside(self, temperature: float, humidity: float) -> float:
        """How far inside the band, in % of humidity, the air is; less than nothing where it is outside."""
        if not self.holds(temperature, humidity):
            return -1.0
        return min(humidity - self.humidity[0], self.humidity[1] - humidity)

    def hold_all(self, temperature: FloatArray, humidity: FloatArray) -> BoolArray:
        """The same of each of many readings."""
        cold, warm = self.temperature
        dry, damp = self.humidity
        return (dry <= humidity) & (humidity <= damp) & (cold <= temperature) & (temperature <= warm)


def limits_of(shop: Shop) -> Mapping[str, float]:
    """The limits by name, the shop's own first."""
    own: Mapping[str, float | None] = dict(shop.limits)
    return {name: limit.value if (given := own[name]) is None else given for name, limit in LIMITS.items()}


def band_limits(band: Band, shop: Shop) -> Limits:
    """A band with the names of limits replaced by the shop's own figures."""
    limits = limits_of(shop)
    least, most = (limits[end] if isinstance(end, str) else float(end) for end in band.humidity)
    return Limits(band.what, (least, most), (float(band.temperature[0]), float(band.temperature[1])))
