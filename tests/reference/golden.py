"""Write golden/<id>.json: properties of each pure substance by an independent program.

    python tests/reference/golden.py             write the files
    python tests/reference/golden.py --compare   recompute and compare with the files

Needs CoolProp 8.0.0. Each file holds a saturation table and a grid of single-phase states over
temperature and density, liquid, vapour and above the critical temperature. Enthalpy and entropy
are differences from the file's first state, since the zero of either is a matter of convention.
"""

import json
import math
import pathlib
import sys

import CoolProp
import CoolProp.CoolProp as CP

VERSION = "8.0.0"
ROOT = pathlib.Path(__file__).resolve().parents[2]
TARGET = pathlib.Path(__file__).with_name("golden")
THEIRS = {
    "R-152a": "R152A", "R-227ea": "R227EA", "R-290": "n-Propane", "R-600": "n-Butane", "R-600a": "IsoButane",
    "R-601a": "Isopentane", "R-744": "CarbonDioxide", "R-1270": "Propylene", "R-1234ze(E)": "R1234ze(E)",
}
COLDEST = 213.15
SATURATION = ["temperatureK", "pressurePa", "liquidMolPerM3", "vapourMolPerM3"]
STATES = ["temperatureK", "molPerM3", "pressurePa", "enthalpyJPerMol", "entropyJPerMolK", "cvJPerMolK", "cpJPerMolK", "soundMPerS"]
# Between two machines the last digits of exp and log may differ, and saturation solves amplify that.
AGREEMENT = 1e-9


def fluid(identity):
    name = THEIRS.get(identity, identity.replace("-", ""))
    data = json.loads((ROOT / "data" / "substances" / f"{identity}.json").read_text("utf-8"))
    critical = data["critical"]["temperatureK"]
    coldest = max(COLDEST, data["triple"]["temperatureK"] + 0.01)
    warmest = data["valid"]["maximumTemperatureK"]
    saturated = CP.AbstractState("HEOS", name)
    single = CP.AbstractState("HEOS", name)
    single.specify_phase(CP.iphase_gas)  # the density is given: no phase to look for

    def row(temperature, density):
        single.update(CP.DmolarT_INPUTS, density, temperature)
        return [temperature, density, single.p(), single.hmolar(), single.smolar(), single.cvmolar(), single.cpmolar(), single.speed_sound()]

    def pair(temperature):
        saturated.update(CP.QT_INPUTS, 0, temperature)
        pressure, liquid = saturated.p(), saturated.rhomolar()
        saturated.update(CP.QT_INPUTS, 1, temperature)
        return pressure, liquid, saturated.rhomolar()

    table, states = [], []
    for k in range(25):
        # Even steps to 0.97 of the critical temperature, then ever closer to it.
        theta = 0.03 * (1e-4 / 0.03) ** ((k - 16) / 8)
        t = coldest + (0.97 * critical - coldest) * k / 16 if k <= 16 else critical * (1 - theta)
        table.append([t, *pair(t)])
    for k in range(6):
        t = coldest + (0.96 * critical - coldest) * k / 5
        _, liquid, vapour = pair(t)
        for share in (1e-4, 0.1, 0.5, 0.99):
            states.append(row(t, share * vapour))
        for share in (1.0005, 1.02, 1.06):
            states.append(row(t, share * liquid))
    for reduced in (1.01, 1.06, 1.12):
        if reduced * critical <= warmest:
            for share in (0.01, 0.2, 0.6, 1.1, 1.6, 2.2):
                states.append(row(reduced * critical, share * data["critical"]["densityMolPerM3"]))
    h, s = states[0][3], states[0][4]
    states = [[*r[:3], r[3] - h, r[4] - s, *r[5:]] for r in states if r[2] <= data["valid"]["maximumPressurePa"]]
    return {
        "id": identity,
        "madeBy": f"CoolProp {CoolProp.__version__}, HEOS, fluid {name}",
        "saturation": {"columns": SATURATION, "rows": table},
        "states": {"columns": STATES, "rows": states},
    }


def written(data):
    lines = json.dumps(data, indent=1).splitlines()
    text, depth = [], 0
    for line in lines:  # one row a line
        bare = line.strip()
        if depth and bare not in ("],", "]"):
            text[-1] += bare if text[-1].endswith("[") else " " + bare
        elif depth:
            text[-1] += bare
            depth = 0
        else:
            text.append(line)
            depth = bare in ("[", '"columns": [')
    return "\n".join(text) + "\n"


def differences(new, old):
    if new["madeBy"] != old["madeBy"]:
        return [f"{new['id']}: made by {old['madeBy']}"]
    found = []
    for part in ("saturation", "states"):
        if len(new[part]["rows"]) != len(old[part]["rows"]):
            return [f"{new['id']}: {part} has another number of rows"]
        for a, b in zip(new[part]["rows"], old[part]["rows"]):
            for column, x, y in zip(new[part]["columns"], a, b):
                if not math.isclose(x, y, rel_tol=AGREEMENT, abs_tol=1e-7):
                    found.append(f"{new['id']} {part} {column} at {a[0]} K: {x} here, {y} in the file")
    return found


def main():
    if CoolProp.__version__ != VERSION:
        sys.exit(f"needs CoolProp {VERSION}, found {CoolProp.__version__}")
    names = sorted(path.stem for path in (ROOT / "data" / "substances").glob("*.json"))
    compare, wrong = "--compare" in sys.argv[1:], []
    for name in names:
        path = TARGET / f"{name}.json"
        new = fluid(name)
        if not compare:
            path.write_text(written(new), "utf-8")
        elif not path.exists():
            wrong.append(f"{name}: no file")
        else:
            wrong += differences(new, json.loads(path.read_text("utf-8")))
    if wrong:
        sys.exit("\n".join(wrong[:40]))
    print(f"{len(names)} substances {'agree with CoolProp ' + VERSION if compare else 'written'}")


main()
