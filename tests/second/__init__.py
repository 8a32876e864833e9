"""A second, independent implementation of the contract's methods, to check the service against.

Written from the contract's text and published tables alone: nothing of the service's topics, rules or calculators
is used. A method takes facts in canonical units and gives the verdict (or those that the text allows) and figures; a
pair of numbers is a figure's low and high.
"""

from __future__ import annotations

from collections.abc import Callable

from tests.second import charging, readings, supply, wiring
from tests.second.tables import Facts

METHODS: dict[str, Callable[[Facts], dict]] = {
    "run-check": supply.run_check,
    "bank-size": supply.bank_size,
    "run-time": supply.run_time,
    "rest-voltage": readings.rest_voltage,
    "load-voltage": readings.load_voltage,
    "specific-gravity": readings.specific_gravity,
    "standing-drain": readings.standing_drain,
    "replacement": readings.replacement,
    "freeze-point": readings.freeze_point,
    "cold-cranking": readings.cold_cranking_power,
    "charger-size": charging.charger_size,
    "charge-time": charging.charge_time,
    "charger-setting": charging.charger_setting,
    "charger-banks": charging.charger_banks,
    "dc-dc": charging.dc_dc,
    "solar": charging.solar,
    "storage": charging.storage,
    "ventilation": charging.ventilation,
    "weight": charging.weight,
    "group-size": charging.group_size,
    "cable-size": wiring.cable_size,
    "voltage-drop": wiring.voltage_drop,
    "fuse-size": wiring.fuse_size,
    "bank-wiring": wiring.bank_wiring,
    "rating-convert": wiring.rating_convert,
}
