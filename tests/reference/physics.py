"""Write golden/physics.json: closed spaces at equilibrium, two-phase densities, shares of mixtures and viscosities, by other means.

    python tests/reference/physics.py             write the file
    python tests/reference/physics.py --compare   recompute and compare with the file

Needs CoolProp 8.0.0. A blend of a mass in a volume, or of a quality, is found by bisection over
two-phase flashes at pressure and temperature (PT_INPUTS). Slow and simple on purpose.
"""

import json
import pathlib
import sys

import CoolProp
import CoolProp.CoolProp as CP

VERSION = '8.0.0'
TARGET = pathlib.Path(__file__).with_name('golden') / 'physics.json'
PSI, ATMOSPHERE, POUND = 6894.757293168361, 101325.0, 0.45359237
BLENDS = {
    'R-407C': (['R32', 'R125', 'R134a'], [0.23, 0.25, 0.52]),
    'R-404A': (['R125', 'R143a', 'R134a'], [0.44, 0.52, 0.04]),
    'R-410A': (['R32', 'R125'], [0.5, 0.5]),
    'R-450A': (['R134a', 'R1234ze(E)'], [0.42, 0.58]),
    'R-454B': (['R32', 'R1234yf'], [0.689, 0.311]),
}
PURE = {'R-134a': 'R134a', 'R-1234yf': 'R1234yf', 'R-744': 'CarbonDioxide', 'R-290': 'n-Propane'}
ROOM = (77 + 459.67) / 1.8
# kg in m³ at K: part full, nearly full, and vapour alone
CONTENTS = [('R-407C', ROOM, 8 * POUND, 0.0216), ('R-407C', ROOM, 30 * POUND, 0.0216), ('R-407C', ROOM, 0.5, 0.0216),
            ('R-404A', 283.15, 6.0, 0.0216), ('R-410A', 300.0, 4.0, 0.0216), ('R-450A', 293.15, 5.0, 0.0216),
            ('R-454B', 303.15, 5.0, 0.0216), ('R-134a', 297.0, 2.0, 0.0216), ('R-134a', 297.0, 0.3, 0.0216),
            ('R-744', 310.0, 1.0, 0.006), ('R-290', 300.0, 0.15, 0.02)]
# by pressure in Pa or temperature in K, vapour by mass
QUALITIES = [(i, 'p', 60 * PSI + ATMOSPHERE, q) for i in ('R-407C', 'R-454B') for q in (0.1, 0.3, 0.6)] + [
    (i, 'T', 280.0, q) for i in ('R-407C', 'R-404A', 'R-450A') for q in (0.05, 0.5, 0.95)] + [
    (i, 'T', 280.0, 0.3) for i in ('R-134a', 'R-1234yf')]
# saturation pressure at 75 and 77 °F
# the azeotrope of R-12 and R-134a reads most at a little over half
SHARES = [('R-134a', 'R-12', (80 + 459.67) / 1.8, 100 * PSI + ATMOSPHERE, 0.53),
          ('R-134a', 'R-12', (80 + 459.67) / 1.8, 105 * PSI + ATMOSPHERE, 0.53)]
GASES = {'air': 'Air', 'nitrogen': 'Nitrogen', **{f'R-{n}': f'R{n}' for n in ('12', '22', '32', '134a', '152a', '1234yf')},
         'R-1234ze(E)': 'R1234ze(E)', 'R-290': 'n-Propane', 'R-600a': 'IsoButane', 'R-744': 'CarbonDioxide'}
WARM = 294.15  # 21 °C
SATURATION = [(i, (f + 459.67) / 1.8) for i in ('R-134a', 'R-1234yf') for f in (75, 77)]


def gas(name, identity):
    """Molar mass and viscosity at 21 °C: saturated steam, everything else at 1 atm."""
    mass = CP.PropsSI('M', name)
    if identity == 'water vapour':
        return mass, CP.PropsSI('V', 'T', WARM, 'Q', 1, name)
    return mass, CP.PropsSI('V', 'T', WARM, 'P', ATMOSPHERE, name)


class Blend:
    def __init__(self, identity):
        names, masses = BLENDS[identity]
        self.heos = CP.AbstractState('HEOS', '&'.join(names))
        self.molar = [CP.PropsSI('M', n) for n in names]
        moles = [m / w for m, w in zip(masses, self.molar)]
        self.mass = 1 / sum(moles)  # kg/mol
        self.heos.set_mole_fractions([n / sum(moles) for n in moles])

    def ends(self, inputs, value):
        out = []
        for q in (0, 1):
            if inputs == 'T':
                self.heos.update(CP.QT_INPUTS, q, value)
                out.append((self.heos.p(), self.heos.rhomolar()))
            else:
                self.heos.update(CP.PQ_INPUTS, value, q)
                out.append((self.heos.T(), self.heos.rhomolar()))
        return out

    def split(self, p, t):
        """Molar volume of the whole and quality by mass."""
        h = self.heos
        h.update(CP.PT_INPUTS, p, t)
        beta, liquid, vapour = h.Q(), h.saturated_liquid_keyed_output(CP.iDmolar), h.saturated_vapor_keyed_output(CP.iDmolar)
        gas = sum(y * w for y, w in zip(h.mole_fractions_vapor(), self.molar))
        return (1 - beta) / liquid + beta / vapour, beta * gas / self.mass

    def search(self, low, high, above):
        low, high = low + 1e-9 * (high - low), high - 1e-9 * (high - low)
        for _ in range(60):
            middle = (low + high) / 2
            if above(middle):
                high = middle
            else:
                low = middle
        return middle


def mixed_pressure(a, b, share, t):
    """Bubble pressure of two pure refrigerants with a mass share of the second."""
    heos = CP.AbstractState('HEOS', f'{a}&{b}')
    moles = [(1 - share) / CP.PropsSI('M', a), share / CP.PropsSI('M', b)]
    heos.set_mole_fractions([n / sum(moles) for n in moles])
    heos.update(CP.QT_INPUTS, 0, t)
    return heos.p()


def shares(identity, other, t, p, middle):
    """Both shares with this bubble pressure, one to either side of a share that reads more."""
    a, b = identity.replace('-', ''), other.replace('-', '')
    out = []
    for low, high in ((1e-4, middle), (1 - 1e-4, middle)):
        for _ in range(50):
            half = (low + high) / 2
            if mixed_pressure(a, b, half, t) < p:
                low = half
            else:
                high = half
        out.append(half)
    return out


def contents(identity, t, mass, volume):
    density = mass / volume
    if identity in PURE:
        name = PURE[identity]
        return CP.PropsSI('P', 'T', t, 'D', density, name), max(0, CP.PropsSI('Q', 'T', t, 'D', density, name)) if t < CP.PropsSI('Tcrit', name) and CP.PropsSI('Q', 'T', t, 'D', density, name) >= 0 else 1.0
    b = Blend(identity)
    (bubble, _), (dew, thin) = b.ends('T', t)
    molar = density / b.mass
    if molar < thin:
        b.heos.specify_phase(CP.iphase_gas)
        b.heos.update(CP.DmolarT_INPUTS, molar, t)
        return b.heos.p(), 1.0
    # more pressure, less volume
    p = b.search(dew, bubble, lambda p: b.split(p, t)[0] < 1 / molar)
    return p, b.split(p, t)[1]


def quality(identity, by, value, q):
    if identity in PURE:
        return CP.PropsSI('D', 'T' if by == 'T' else 'P', value, 'Q', q, PURE[identity])
    b = Blend(identity)
    (first, _), (last, _) = b.ends(by, value)
    if by == 'T':
        p = b.search(last, first, lambda p: b.split(p, value)[1] < q)
        return b.mass / b.split(p, value)[0]
    t = b.search(first, last, lambda t: b.split(value, t)[1] > q)
    return b.mass / b.split(value, t)[0]


def rounded(row):
    return [float(f'{v:.9g}') if isinstance(v, float) else v for v in row]


def main():
    assert CoolProp.__version__ == VERSION, f'made for CoolProp {VERSION}, this is {CoolProp.__version__}'
    out = {'by': f'CoolProp {VERSION}, HEOS',
           'contents': [rounded([*c, *contents(*c)]) for c in CONTENTS],
           'twoPhase': [rounded([*c, quality(*c)]) for c in QUALITIES],
           'gases': [rounded([i, *gas(name, i)]) for i, name in [*GASES.items(), ('water vapour', 'Water')]],
           'shares': [rounded([*c, *shares(*c)]) for c in SHARES],
           'saturation': [rounded([i, t, CP.PropsSI('P', 'T', t, 'Q', 0, PURE[i])]) for i, t in SATURATION]}
    if '--compare' in sys.argv:
        old = json.loads(TARGET.read_text())
        for part in ('contents', 'twoPhase', 'gases', 'shares', 'saturation'):
            for new, was in zip(out[part], old[part], strict=True):
                for a, b in zip(new, was, strict=True):
                    if a != b and not (isinstance(a, float) and abs(a - b) <= 1e-6 * (1e-3 + abs(b))):
                        raise SystemExit(f'{part}: {new} was {was}')
        print(f'as in {TARGET.name}')
        return
    TARGET.write_text('{\n' + ',\n'.join(f' {json.dumps(k)}: ' + (json.dumps(v) if isinstance(v, str) else '[\n' + ',\n'.join(
        '  ' + json.dumps(c) for c in v) + '\n ]') for k, v in out.items()) + '\n}\n')


main()
