"""Write golden/cycle.json: the model's own cycles, worked out anew by an independent program.

    node tests/generate/cycle-states.ts          the model's corners
    python tests/reference/cycle.py              write the file
    python tests/reference/cycle.py --compare    recompute and compare with the file

Needs CoolProp 8.0.0. For each case: properties at the corners (temperature and density given, so
that no phase is searched for), the end of an isentropic compression, flow, capacity and work from
them; and for tubes of fixed bore the published flow by two correlations, the one that the model
uses (Payne and O'Neal 2004) written here a second time, and one that it does not use because it
needs viscosity and surface tension (Choi, Chung and Kim 2004).
"""

import json
import math
import pathlib
import sys

import CoolProp
import CoolProp.CoolProp as CP

VERSION = "8.0.0"
FOLDER = pathlib.Path(__file__).with_name("golden")
PURE = {"R-134a": "R134a", "R-1234yf": "R1234yf"}
BLEND = ("R32&R125", [0.5, 0.5])  # by mass
AGREEMENT = 1e-9


def state(refrigerant):
    if refrigerant in PURE:
        return CP.AbstractState("HEOS", PURE[refrigerant])
    made = CP.AbstractState("HEOS", BLEND[0])
    made.set_mass_fractions(BLEND[1])
    return made


def single(refrigerant, temperature, density):
    s = state(refrigerant)
    s.specify_phase(CP.iphase_gas)
    s.update(CP.DmassT_INPUTS, density, temperature)
    return s


def corners(case):
    rows = []
    for point in case["points"]:
        if point.get("quality") is not None:
            if case["refrigerant"] not in PURE:
                rows.append(None)
                continue
            s = state(case["refrigerant"])
            s.update(CP.PQ_INPUTS, point["pressurePa"], point["quality"])
            rows.append([s.T(), s.p(), s.rhomass(), s.hmass(), s.smass()])
        else:
            s = single(case["refrigerant"], point["temperatureK"], point["density"])
            rows.append([s.T(), s.p(), s.rhomass(), s.hmass(), s.smass()])
    return rows


def zero(refrigerant):
    s = state(refrigerant)
    if refrigerant in PURE:
        s.update(CP.QT_INPUTS, 0, 273.15)
        return s.hmass() - 200e3, s.smass() - 1e3
    return None


def isentropic(case, rows):
    """Pressure and entropy given; of the blend by Newton from the model's own end."""
    if case["refrigerant"] in PURE:
        s = state(case["refrigerant"])
        s.update(CP.PSmass_INPUTS, rows[1][1], rows[0][4])
        return [s.T(), s.p(), s.rhomass(), s.hmass(), s.smass()]
    t, rho = case["isentropic"]["temperatureK"], case["isentropic"]["density"]
    pressure, entropy = rows[1][1], rows[0][4]
    for _ in range(20):
        s = single(case["refrigerant"], t, rho)
        a, b = s.first_partial_deriv(CP.iP, CP.iT, CP.iDmass), s.first_partial_deriv(CP.iP, CP.iDmass, CP.iT)
        c, d = s.first_partial_deriv(CP.iSmass, CP.iT, CP.iDmass), s.first_partial_deriv(CP.iSmass, CP.iDmass, CP.iT)
        f, g = pressure - s.p(), entropy - s.smass()
        det = a * d - b * c
        t, rho = t + (f * d - g * b) / det, rho + (a * g - c * f) / det
    s = single(case["refrigerant"], t, rho)
    return [s.T(), s.p(), s.rhomass(), s.hmass(), s.smass()]


def payne_oneal(s, pressure, temperature, quality, length, diameter):
    """kg/s through a sharp-edged short tube; densities of saturated liquid at the liquid's temperature."""
    pc, tc = s.p_critical(), s.T_critical()
    s.update(CP.QT_INPUTS, 0, temperature)
    psat, rho_l = s.p(), s.rhomass()
    s.update(CP.QT_INPUTS, 1, temperature)
    rho_v = s.rhomass()
    s.update(CP.PQ_INPUTS, pressure, 0)
    subcooling = s.T() - temperature
    p3, p6, p9, p10 = (pressure - psat) / pc, rho_v / rho_l, subcooling / tc, length / diameter
    p1 = (0.38811 + 11.427 * p3 - 14.194 * p9 + 1.0703 * p6 - 0.091928 * math.log(p10)) / (1 + 21.425 * p3 - 581.95 * p9**2)
    if quality > 0:
        t6 = 1 / (1 - quality + quality * rho_l / rho_v)
        t28 = pressure / pc
        t34 = quality / (1 - quality) * math.sqrt(rho_l / rho_v)
        ln_t = math.log(1 - t28)
        factor = (1.1831 * t6 - 1.468 * t6**2 - 0.15285 * math.log(t6) ** 2 - 14.639 * ln_t**2 + 9.8401 * ln_t**2 - 0.019798 * math.log(p10) ** 2) / (1 - 1.5348 * t6 - 2.0533 * t34 - 17.195 * t28**3)
        p1 *= min(1, factor)
    return p1 * math.sqrt(rho_l * pc) * math.pi / 4 * diameter**2


def choi(s, pressure, temperature, downstream, length, diameter):
    """kg/s of subcooled liquid."""
    pc, tc = s.p_critical(), s.T_critical()
    s.update(CP.QT_INPUTS, 0, temperature)
    psat = s.p()
    s.update(CP.PQ_INPUTS, pressure, 0)
    subcooling, rho_l, mu_l, sigma = s.T() - temperature, s.rhomass(), s.viscosity(), s.surface_tension()
    s.update(CP.PQ_INPUTS, pressure, 1)
    rho_v, mu_v = s.rhomass(), s.viscosity()
    pi = (
        0.1378
        * ((pc - pressure) / pc) ** -0.950
        * ((pc - downstream) / pc) ** 0.033
        * ((pc - psat) / pc) ** 0.769
        * (subcooling / tc) ** 0.082
        * (length / diameter) ** -0.099
        * (rho_l / rho_v) ** -0.104
        * ((mu_l - mu_v) / mu_v) ** 0.554
        * (sigma / (diameter * pressure)) ** -0.034
    )
    return pi * diameter**2 * math.sqrt(rho_l * pressure)


def tubes():
    s = state("R-134a")
    rows = []
    for diameter in (0.00112, 0.0013, 0.0018):
        for pressure in (0.9e6, 1.3e6, 1.7e6):
            s.update(CP.PQ_INPUTS, pressure, 0)
            boiling = s.T()
            for subcooling in (1, 3, 6, 10):
                t = boiling - subcooling
                rows.append([0.0127, diameter, pressure, subcooling, 0, payne_oneal(s, pressure, t, 0, 0.0127, diameter), choi(s, pressure, t, 3.5e5, 0.0127, diameter)])
            for quality in (0.03, 0.06, 0.1):
                rows.append([0.0127, diameter, pressure, 0, quality, payne_oneal(s, pressure, boiling, quality, 0.0127, diameter), None])
    return rows


def worked(case):
    rows = corners(case)
    ideal = isentropic(case, rows)
    suction, liquid = rows[0], rows[2]
    filling = case["otherFilling"] * (1 - case["clearance"] * (ideal[2] / suction[2] - 1))
    flow = case["displacement"] * case["speed"] * suction[2] * filling
    base = zero(case["refrigerant"])
    return {
        "machine": case["machine"],
        "case": case["case"],
        "zero": base,
        "corners": rows,
        "isentropic": ideal,
        "flow": flow,
        "capacity": None if liquid is None else flow * (suction[3] - liquid[3]),
        "condenserHeat": None if liquid is None else flow * (rows[1][3] - liquid[3]),
        "isentropicWork": flow * (ideal[3] - suction[3]),
    }


def near(a, b):
    if isinstance(a, list):
        return isinstance(b, list) and len(a) == len(b) and all(map(near, a, b))
    if isinstance(a, (int, float)) and isinstance(b, (int, float)):
        return math.isclose(a, b, rel_tol=AGREEMENT, abs_tol=1e-6)
    return a == b


def main():
    if CoolProp.__version__ != VERSION:
        sys.exit(f"needs CoolProp {VERSION}, found {CoolProp.__version__}")
    cases = json.loads((FOLDER / "cycle-states.json").read_text("utf-8"))
    new = {"madeBy": f"CoolProp {CoolProp.__version__}, HEOS", "cycles": [worked(case) for case in cases], "tubes": tubes()}
    new = json.loads(json.dumps(new))
    path = FOLDER / "cycle.json"
    if "--compare" in sys.argv[1:]:
        old = json.loads(path.read_text("utf-8"))
        wrong = [f"{a['machine']} {a['case']}" for a, b in zip(new["cycles"], old["cycles"]) if not all(near(a[k], b[k]) for k in a)]
        if wrong or len(new["cycles"]) != len(old["cycles"]) or not near(new["tubes"], old["tubes"]):
            sys.exit("\n".join(wrong) or "the tubes differ")
        print(f"{len(new['cycles'])} cycles agree")
        return
    path.write_text(json.dumps(new, indent=1) + "\n", "utf-8")
    print(f"{len(new['cycles'])} cycles written")


main()
