"""Write golden/blends.json: bubble and dew lines of the blends by an independent mixture model.

    python tests/reference/blends.py             write the file
    python tests/reference/blends.py --compare   recompute and compare with the file

Needs CoolProp 8.0.0 (its multi-fluid HEOS mixtures). Points it cannot solve are listed under
`unsolved`. Pairs without published parameters get its Lorentz-Berthelot rule and the gammaT of
data/mixing/estimated.json, as ours do.
"""

import itertools
import json
import pathlib
import signal
import sys

import CoolProp
import CoolProp.CoolProp as CP

VERSION = '8.0.0'
ROOT = pathlib.Path(__file__).resolve().parents[2]
TARGET = pathlib.Path(__file__).with_name('golden') / 'blends.json'
THEIRS = {'R-152a': 'R152A', 'R-227ea': 'R227EA', 'R-290': 'n-Propane', 'R-600': 'n-Butane', 'R-600a': 'IsoButane',
          'R-601a': 'Isopentane', 'R-744': 'CarbonDioxide', 'R-1270': 'Propylene'}
TEMPERATURES = [218.15, 233.15, 253.15, 273.15, 283.15, 298.15, 313.15, 328.15, 338.15]
GAMMA = {frozenset(p['components']): p['gammaT']
         for p in json.loads((ROOT / 'data' / 'mixing' / 'estimated.json').read_text())['pairs'] if 'gammaT' in p}
SECONDS_A_POINT = 5
DIGITS = 10


def rounded(value):
    return float(f'{value:.{DIGITS}g}')


def state(info):
    components = info['composition']
    names = [THEIRS.get(c['substance'], c['substance'].replace('-', '')) for c in components]
    ours = {n: c['substance'] for n, c in zip(names, components)}
    codes = [CP.get_fluid_param_string(n, 'CAS') for n in names]
    estimated = []
    for (a, na), (b, nb) in itertools.combinations(zip(codes, names), 2):
        try:
            CP.AbstractState('HEOS', f'{na}&{nb}')
        except ValueError:
            CP.apply_simple_mixing_rule(a, b, 'Lorentz-Berthelot')
            gamma = GAMMA.get(frozenset((ours[na], ours[nb])), 1.0)
            try:
                CP.set_mixture_binary_pair_data(a, b, 'gammaT', gamma)
            except ValueError:  # it keeps the pair the other way round
                CP.set_mixture_binary_pair_data(b, a, 'gammaT', gamma)
            estimated.append(f'{ours[na]}/{ours[nb]}')
    heos = CP.AbstractState('HEOS', '&'.join(names))
    heos.set_mass_fractions([c['massFraction'] for c in components])
    return heos, estimated


def late(*_):
    raise TimeoutError(f'no answer within {SECONDS_A_POINT} s')


def point(heos, quality, temperature):
    signal.signal(signal.SIGALRM, late)
    signal.alarm(SECONDS_A_POINT)
    try:
        heos.update(CP.QT_INPUTS, quality, temperature)
    finally:
        signal.alarm(0)
    liquid, vapour = heos.saturated_liquid_keyed_output(CP.iDmolar), heos.saturated_vapor_keyed_output(CP.iDmolar)
    if abs(liquid / vapour - 1) < 1e-3:
        raise ValueError('both phases alike')
    fractions = heos.mole_fractions_vapor() if quality == 0 else heos.mole_fractions_liquid()
    return [temperature, *(rounded(v) for v in (heos.p(), liquid, vapour, heos.hmolar(), heos.smolar(), *fractions))]


def main():
    assert CoolProp.__version__ == VERSION, f'made for CoolProp {VERSION}, this is {CoolProp.__version__}'
    out = {'by': f'CoolProp {VERSION}, HEOS mixtures', 'columns': [
        'T/K', 'p/Pa', 'liquid/(mol/m3)', 'vapour/(mol/m3)', 'h/(J/mol) of the given phase',
        's/(J/(mol K)) of the given phase', 'mole fractions of the other phase'], 'blends': {}}
    for path in sorted((ROOT / 'data' / 'refrigerants').glob('*.json')):
        info = json.loads(path.read_text())
        if len(info['composition']) < 2:
            continue
        heos, estimated = state(info)
        entry = {'estimatedPairs': estimated, 'bubble': [], 'dew': [], 'unsolved': []}
        for line, quality in (('bubble', 0), ('dew', 1)):
            for temperature in TEMPERATURES:
                try:
                    entry[line].append(point(heos, quality, temperature))
                except (ValueError, TimeoutError) as error:
                    entry['unsolved'].append({'line': line, 'temperatureK': temperature, 'because': str(error)[:120]})
        out['blends'][info['id']] = entry
        print(f"{info['id']}: {len(entry['bubble'])} bubble, {len(entry['dew'])} dew, {len(entry['unsolved'])} unsolved", file=sys.stderr)
    if '--compare' in sys.argv:
        compare(out, json.loads(TARGET.read_text()))
        return
    lines = json.dumps(out, indent=1)
    import re
    lines = re.sub(r'\[\s+(-?[\d.][^\[\]{}]*?)\s+\]', lambda m: '[' + re.sub(r',\s+', ', ', m[1]) + ']', lines)
    TARGET.parent.mkdir(exist_ok=True)
    TARGET.write_text(lines + '\n')


def compare(new, old):
    for name, entry in old['blends'].items():
        for line in ('bubble', 'dew'):
            fresh = {row[0]: row for row in new['blends'][name][line]}
            for row in entry[line]:
                worst = max((abs(a / b - 1) for a, b in zip(row[:4], fresh[row[0]][:4])), default=0)
                if worst > 1e-7:
                    raise SystemExit(f'{name} {line} {row[0]} K differs by {worst:.1e}')
    print(f"{len(old['blends'])} blends as in {TARGET.name}")


main()
