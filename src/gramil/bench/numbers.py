"""A plain number from a field: a comma may stand for the decimal point, and a unit sign after the number is allowed."""

from gramil.bench.field_words import all_read
from gramil.bench.page_request import PageRequest
from gramil.faults import MakersFault
from gramil.measure import TemperatureUnit, read_temperature


def degrees_of(request: PageRequest, key: str, unit: TemperatureUnit) -> float:
    """The temperature of a field, in C; a bare number is in `unit`. Raises MakersFault as `number_of` does."""
    written = request.one(key).replace(",", ".").strip()
    own: TemperatureUnit = "F" if written[-1:] in ("F", "f") else "C" if written[-1:] in ("C", "c") else unit
    return float(read_temperature(number_of(request, key), own))


def number_of(request: PageRequest, key: str) -> float:
    """The number of a field; raises MakersFault, with the field's key, for anything else."""
    written = request.one(key)
    try:
        return float(written.replace(",", ".").rstrip("%°CFcf ").strip())
    except ValueError:
        raise MakersFault.of(f'"{written}" is no number', remedy="write it such as 44", where=key) from None


def meter_of(request: PageRequest, unit: TemperatureUnit) -> tuple[float, float]:
    """What the meter says in the fields `humidity` (%) and `temperature` (C); raises MakersFault for both at once."""
    humidity, temperature = all_read(
        humidity=lambda: number_of(request, "humidity"), temperature=lambda: degrees_of(request, "temperature", unit)
    )
    return humidity, temperature
