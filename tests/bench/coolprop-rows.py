"""CSV to CSV by CoolProp's low-level call: absolute pressures (kPa) in, the six figures of `saturation` out."""

import csv
import sys

import CoolProp
from CoolProp import AbstractState

HEAD = ["bubble °C", "dew °C", "bubble kg/m3", "dew kg/m3", "glide K", "latent heat kJ/kg"]


def main(path: str) -> None:
    state = AbstractState("HEOS", "R134a")
    writer = csv.writer(sys.stdout, lineterminator="\n")
    writer.writerow(HEAD)
    with open(path, newline="", encoding="utf-8") as file:
        rows = csv.reader(file)
        next(rows)
        for (cell,) in rows:
            pressure = float(cell) * 1e3
            state.update(CoolProp.PQ_INPUTS, pressure, 0)
            bubble, liquid, low = state.T(), state.rhomass(), state.hmass()
            state.update(CoolProp.PQ_INPUTS, pressure, 1)
            dew, vapour, high = state.T(), state.rhomass(), state.hmass()
            writer.writerow(
                [
                    f"{bubble - 273.15:.1f}",
                    f"{dew - 273.15:.1f}",
                    f"{liquid:.1f}",
                    f"{vapour:.3f}",
                    f"{dew - bubble:.1f}",
                    f"{(high - low) / 1e3:.2f}",
                ]
            )


main(sys.argv[1])
