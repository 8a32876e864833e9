"""Records discharges of first-principles cell models, an independent check of the shape of sag and run time.

Needs PyBaMM, which the project and its tests do not: its 800 MB are installed in an environment of their own, and what
it gives is kept in tests/data/discharges.json. To record anew:

    pip install pybamm && PYBAMM_DISABLE_TELEMETRY=true python -m tests.tools.record_discharges
"""

from __future__ import annotations

import json
import sys
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import numpy as np
import pybamm

RECORD = Path(__file__).parents[1] / "data" / "discharges.json"
LEAD_RATES = (0.05, 0.1, 0.2, 0.5, 1.0, 2.0)  # times the set's own capacity in amp-hours, each hour
LITHIUM_RATES = (0.2, 0.5, 1.0, 2.0, 4.0)
BURST_RATES = (2.5, 5.0, 10.0, 15.0)
BURST_SECONDS = (1.0, 5.0, 10.0, 30.0)
SHARES = (0.1, 0.3, 0.5, 0.7, 0.9)  # of a run


def solved(model: Any, values: str, rate: float, seconds: np.ndarray, **more: float) -> tuple[float, Any]:
    """Amps and solution of one discharge."""
    parameters = pybamm.ParameterValues(values)
    amps = rate * parameters["Nominal cell capacity [A.h]"]
    parameters["Current function [A]"] = amps
    return amps, pybamm.Simulation(model, parameter_values=parameters).solve(seconds, **more)


def whole_runs(model: Any, values: str, rates: tuple[float, ...], **more: float) -> Iterator[dict[str, Any]]:
    """Discharges from full to the set's own end voltage."""
    for rate in rates:
        amps, run = solved(model, values, rate, np.linspace(0, 1.6 * 3600 / rate, 400), **more)
        time, volts = run["Time [s]"].entries, run["Battery voltage [V]"].entries
        at = {f"{share:g}": round(float(np.interp(share * time[-1], time, volts)), 4) for share in SHARES}
        yield {"amps": round(amps, 4), "hours": round(time[-1] / 3600, 5), "volts_at_share": at}


def bursts() -> Iterator[dict[str, Any]]:
    """The first seconds of heavy discharges of the lead-acid set."""
    seconds = np.concatenate([[0.0], np.geomspace(0.1, BURST_SECONDS[-1], 60)])
    for rate in BURST_RATES:
        amps, run = solved(pybamm.lead_acid.Full(), "Sulzer2019", rate, seconds)
        time, volts = run["Time [s]"].entries, run["Battery voltage [V]"].entries
        at = {f"{after:g}": round(float(np.interp(after, time, volts)), 4) for after in BURST_SECONDS}
        yield {"amps": round(amps, 4), "volts_after": at}


def at_rest() -> float:
    """Volts of the full lead-acid set with next to no current."""
    _, run = solved(pybamm.lead_acid.Full(), "Sulzer2019", 0.001, np.linspace(0, 60, 5))
    return round(float(run["Battery voltage [V]"].entries[-1]), 4)


def main() -> None:
    """Write the record."""
    record = {
        "library": "PyBaMM",
        "version": pybamm.__version__,
        "lead": {
            "model": "lead_acid.Full, parameter set Sulzer2019, 12 V, to 10.5 V",
            "rest": at_rest(),
            "runs": list(whole_runs(pybamm.lead_acid.Full(), "Sulzer2019", LEAD_RATES)),
            "bursts": list(bursts()),
        },
        "lithium": {
            "model": "lithium_ion.DFN, parameter set Prada2013, one iron phosphate cell, to 2.0 V",
            "runs": list(whole_runs(pybamm.lithium_ion.DFN(), "Prada2013", LITHIUM_RATES, initial_soc=1.0)),
        },
    }
    RECORD.write_text(json.dumps(record, indent=1) + "\n", encoding="utf-8")
    print(f"{RECORD.name}: {pybamm.__version__}", file=sys.stderr)


if __name__ == "__main__":
    main()
