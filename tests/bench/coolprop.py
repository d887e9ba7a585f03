"""Time of CoolProp's low-level T(p) at saturation, ns a call, on one line of JSON."""

import json
import time

import CoolProp
from CoolProp import AbstractState

CALLS = 20_000


def median_ns(fluid: str) -> float:
    state = AbstractState("HEOS", fluid)
    pressures = [2e5 + index * 1.5e3 for index in range(1_000)]
    batches = []
    for _ in range(CALLS // len(pressures)):
        start = time.perf_counter_ns()
        for pressure in pressures:
            state.update(CoolProp.PQ_INPUTS, pressure, 1)
            state.T()
        batches.append((time.perf_counter_ns() - start) / len(pressures))
    return sorted(batches)[len(batches) // 2]


print(json.dumps({"version": CoolProp.__version__, "R-134a": median_ns("R134a")}))
