"""Write golden/fractionation.json: a blend leaking from a vessel, integrated by other means.

    python tests/reference/fractionation.py             write the file
    python tests/reference/fractionation.py --compare   recompute and compare with the file

Needs CoolProp 8.0.0. At every step the pressure at which the amounts fill the vessel
is searched by bisection over isothermal two-phase flashes (PT_INPUTS), and the escaping phase is
taken off by the midpoint rule in mass. Slow and simple on purpose.
"""

import json
import pathlib
import sys

import CoolProp
import CoolProp.CoolProp as CP

VERSION = '8.0.0'
TARGET = pathlib.Path(__file__).with_name('golden') / 'fractionation.json'
STEPS = 30
CASES = [
    ('R-407C', ['R32', 'R125', 'R134a'], [0.23, 0.25, 0.52], 298.15, 0.8, 'vapour', 0.5),
    ('R-407C', ['R32', 'R125', 'R134a'], [0.23, 0.25, 0.52], 298.15, 0.3, 'vapour', 0.8),
    ('R-454B', ['R32', 'R1234yf'], [0.689, 0.311], 303.15, 0.6, 'liquid', 0.6),
    ('R-450A', ['R134a', 'R1234ze(E)'], [0.42, 0.58], 293.15, 0.5, 'vapour', 0.7),
]


def run(names, masses, temperature, share, escapes, lost_to):
    heos = CP.AbstractState('HEOS', '&'.join(names))
    molar = [CP.PropsSI('M', name) for name in names]

    def phases(moles, pressure):
        total = sum(moles)
        heos.set_mole_fractions([n / total for n in moles])
        heos.update(CP.PT_INPUTS, pressure, temperature)
        return (heos.Q(), heos.saturated_liquid_keyed_output(CP.iDmolar), heos.saturated_vapor_keyed_output(CP.iDmolar),
                heos.mole_fractions_liquid(), heos.mole_fractions_vapor())

    def ends(moles):
        total = sum(moles)
        heos.set_mole_fractions([n / total for n in moles])
        heos.update(CP.QT_INPUTS, 0, temperature)
        bubble = heos.p(), heos.saturated_liquid_keyed_output(CP.iDmolar), heos.saturated_vapor_keyed_output(CP.iDmolar)
        heos.update(CP.QT_INPUTS, 1, temperature)
        return bubble, heos.p()

    def fill(moles, volume=None, share=None):
        """Pressure and phases at which the moles fill the volume, or liquid fills the share."""
        (high, _, _), low = ends(moles)
        low, high = low * (1 + 1e-9), high * (1 - 1e-9)
        for _ in range(40):
            middle = (low + high) / 2
            q, liquid, vapour, x, y = phases(moles, middle)
            total = sum(moles)
            v_liquid, v_vapour = total * (1 - q) / liquid, total * q / vapour
            if volume is not None:
                too_big = v_liquid + v_vapour > volume
            else:
                too_big = v_liquid / (v_liquid + v_vapour) < share
            if too_big:  # more pressure, less vapour
                low = middle
            else:
                high = middle
        return middle, v_liquid + v_vapour, x, y

    moles = [m / w for m, w in zip(masses, molar)]
    pressure, volume, x, y = fill(moles, share=share)
    rows = [[0.0, pressure, *masses]]
    h = lost_to / STEPS

    def rate(n):
        _, _, x, y = fill(n, volume=volume)
        out = x if escapes == 'liquid' else y
        mean = sum(a * w for a, w in zip(out, molar))
        return [-a / mean for a in out]

    for step in range(1, STEPS + 1):
        half = [n + h / 2 * k for n, k in zip(moles, rate(moles))]
        moles = [n + h * k for n, k in zip(moles, rate(half))]
        if step % 6 == 0:
            pressure, *_ = fill(moles, volume=volume)
            mass = [n * w for n, w in zip(moles, molar)]
            rows.append([round(step * h, 12), pressure, *(m / sum(mass) for m in mass)])
    return [[float(f'{v:.9g}') for v in row] for row in rows]


def main():
    assert CoolProp.__version__ == VERSION, f'made for CoolProp {VERSION}, this is {CoolProp.__version__}'
    out = {'by': f'CoolProp {VERSION}, HEOS mixtures, midpoint rule with {STEPS} steps',
           'columns': ['mass share lost', 'p/Pa', 'mass fractions left'],
           'cases': [{'id': i, 'temperatureK': t, 'liquidShare': s, 'escapes': e, 'lost': m,
                      'rows': run(names, masses, t, s, e, m)} for i, names, masses, t, s, e, m in CASES]}
    if '--compare' in sys.argv:
        old = json.loads(TARGET.read_text())
        worst = max(abs(a - b) / (1 + abs(b)) for new, was in zip(out['cases'], old['cases'])
                    for r, q in zip(new['rows'], was['rows']) for a, b in zip(r, q))
        if worst > 1e-6:
            raise SystemExit(f'differs by {worst:.1e}')
        print(f'as in {TARGET.name}')
        return
    TARGET.write_text('{\n' + ',\n'.join(f' {json.dumps(k)}: ' + (
        '[\n' + ',\n'.join('  ' + json.dumps(c) for c in v) + '\n ]' if k == 'cases' else json.dumps(v)) for k, v in out.items()) + '\n}\n')


main()
