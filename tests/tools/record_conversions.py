"""Records conversions by two units libraries that know nothing of ours: unyt and astropy.units.

The project and its tests need neither; what they give is kept in tests/data/conversions.json. To record anew:

    pip install unyt astropy && python -m tests.tools.record_conversions
"""

from __future__ import annotations

import json
import math
import sys
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import astropy
import unyt
from astropy import units
from astropy.units import imperial

RECORD = Path(__file__).parents[1] / "data" / "conversions.json"
CIRCULAR_MIL = "pi/4 square thousandths of an inch"
ASKED = (  # value, our unit (pint's name), unyt's, astropy's; then the same of the unit wanted
    (20.0, ("foot", "ft", imperial.foot), ("meter", "m", units.m)),
    (7.0, ("inch", "inch", imperial.inch), ("meter", "m", units.m)),
    (6.5, ("meter", "m", units.m), ("foot", "ft", imperial.foot)),
    (150.0, ("centimeter", "cm", units.cm), ("meter", "m", units.m)),
    (3.0, ("yard", "yd", imperial.yard), ("meter", "m", units.m)),
    (66.0, ("pound", "lb", imperial.lb), ("kilogram", "kg", units.kg)),
    (27.2, ("kilogram", "kg", units.kg), ("pound", "lb", imperial.lb)),
    (5.0, ("horsepower", "hp", imperial.hp), ("watt", "W", units.W)),
    (3.4, ("kilowatt", "kW", units.kW), ("watt", "W", units.W)),
    (1.28, ("kilowatt_hour", "kW*hr", units.kW * units.h), ("watt_hour", "W*hr", units.W * units.h)),
    (35.0, ("milliampere", "mA", units.mA), ("ampere", "A", units.A)),
    (90.0, ("minute", "min", units.min), ("second", "s", units.s)),
    (2.5, ("hour", "hr", units.h), ("second", "s", units.s)),
    (6.0, ("week", "7*day", units.week), ("day", "day", units.day)),
    (3.0, ("mile", "mile", imperial.mile), ("meter", "m", units.m)),
    (12.0, ("gallon", "gal_US", imperial.gallon), ("meter ** 3", "m**3", units.m**3)),
    (8.0, ("ounce", "oz", imperial.oz), ("kilogram", "kg", units.kg)),
    (
        4.0,
        ("foot ** 3 / minute", "ft**3/min", imperial.foot**3 / units.min),
        ("meter ** 3 / hour", "m**3/hr", units.m**3 / units.h),
    ),
    (5.0, ("inch ** 2", "inch**2", imperial.inch**2), ("millimeter ** 2", "mm**2", units.mm**2)),
    (35.0, ("foot ** 3", "ft**3", imperial.foot**3), ("meter ** 3", "m**3", units.m**3)),
    (250.0, ("liter", "L", units.liter), ("meter ** 3", "m**3", units.m**3)),
    (10.0, ("degree_Fahrenheit", "degF", imperial.deg_F), ("degree_Celsius", "degC", units.deg_C)),
    (95.0, ("degree_Fahrenheit", "degF", imperial.deg_F), ("degree_Celsius", "degC", units.deg_C)),
    (-18.0, ("degree_Celsius", "degC", units.deg_C), ("degree_Fahrenheit", "degF", imperial.deg_F)),
    (50.0, ("millimeter ** 2", "mm**2", units.mm**2), (CIRCULAR_MIL, "1e-6*inch**2", (imperial.inch / 1000) ** 2)),
)


def converted() -> Iterator[dict[str, Any]]:
    """Each conversion by both libraries; of circular mils the squares of a thousandth of an inch over pi / 4."""
    for value, (name, one, two), (wanted, first, second) in ASKED:
        by_unyt = float(unyt.unyt_quantity(value, one).to(first))
        by_astropy = float((value * two).to(second, equivalencies=units.temperature()).value)
        round_wire = math.pi / 4 if wanted == CIRCULAR_MIL else 1.0
        unit = "circular mil" if wanted == CIRCULAR_MIL else wanted
        yield {
            "value": value,
            "unit": name,
            "to": unit,
            "unyt": by_unyt / round_wire,
            "astropy": by_astropy / round_wire,
        }


def main() -> None:
    """Write the record."""
    versions = {"unyt": unyt.__version__, "astropy": astropy.__version__}
    RECORD.write_text(
        json.dumps({"libraries": versions, "conversions": list(converted())}, indent=1) + "\n", encoding="utf-8"
    )
    print(f"{RECORD.name}: {versions}", file=sys.stderr)


if __name__ == "__main__":
    main()
