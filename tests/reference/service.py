"""Write golden/service.json: the properties that single service figures hang on.

    python tests/reference/service.py             write the file
    python tests/reference/service.py --compare   recompute and compare with the file

Needs CoolProp 8.0.0 (HEOS; its own mixture model for blends). For each refrigerant: pressure and density
of the saturated liquid (bubble line) and of the saturated vapour (dew line) at the temperatures at
which lines, hoses and cylinders are reckoned, and the temperature at which liquid fills a cylinder.
"""

import json
import pathlib
import sys

import CoolProp
import CoolProp.CoolProp as CP

VERSION = '8.0.0'
ROOT = pathlib.Path(__file__).resolve().parents[2]
TARGET = pathlib.Path(__file__).with_name('golden') / 'service.json'
THEIRS = {'R-152a': 'R152A', 'R-290': 'n-Propane', 'R-600a': 'IsoButane'}
EVERY = ['R-12', 'R-22', 'R-32', 'R-134a', 'R-152a', 'R-290', 'R-404A', 'R-407C', 'R-410A', 'R-507A', 'R-600a',
         'R-1234yf', 'R-1234ze(E)']
# Which refrigerants at which °F: the suction line, cylinders, the liquid line, the pressure class, hot hoses, condensing.
NEEDED = {40: EVERY, 77: EVERY, 100: EVERY, 104: EVERY, 120: ['R-134a'], 130: ['R-12', 'R-134a']}
# Shares of the mass that liquid at 77 °F would fill a cylinder with.
FILLED = [0.8, 0.85, 0.9, 0.95]
AGREEMENT = 1e-8


def state(name):
    info = json.loads((ROOT / 'data' / 'refrigerants' / f'{name}.json').read_text('utf-8'))
    parts = info['composition']
    heos = CP.AbstractState('HEOS', '&'.join(THEIRS.get(p['substance'], p['substance'].replace('-', '')) for p in parts))
    if len(parts) > 1:
        heos.set_mass_fractions([p['massFraction'] for p in parts])
    return heos


def kelvin(fahrenheit):
    return (fahrenheit + 459.67) / 1.8


def rounded(value):
    return float(f'{value:.10g}')


def row(heos, fahrenheit):
    out = [fahrenheit]
    for quality in (0, 1):
        heos.update(CP.QT_INPUTS, quality, kelvin(fahrenheit))
        out += [rounded(heos.p()), rounded(heos.rhomass())]
    return out


def full(heos, density):
    """Temperature at which the saturated liquid has this density, by halving."""
    low, high = kelvin(77), heos.T_critical() - 0.01
    for _ in range(60):
        middle = (low + high) / 2
        heos.update(CP.QT_INPUTS, 0, middle)
        low, high = (middle, high) if heos.rhomass() > density else (low, middle)
    return rounded((low + high) / 2)


def main():
    assert CoolProp.__version__ == VERSION, f'made for CoolProp {VERSION}, this is {CoolProp.__version__}'
    out = {'by': f'CoolProp {VERSION}, HEOS',
           'columns': ['temperature/°F', 'bubble/Pa', 'liquid/(kg/m3)', 'dew/Pa', 'vapour/(kg/m3)'],
           'refrigerants': {name: [row(state(name), f) for f, names in NEEDED.items() if name in names] for name in EVERY}}
    r134a = state('R-134a')
    cold = row(r134a, 77)[2]
    out['liquidFull'] = {'refrigerant': 'R-134a', 'columns': ['share of full at 77 °F', 'temperature/K'],
                         'rows': [[share, full(r134a, share * cold)] for share in FILLED]}
    if '--compare' in sys.argv:
        compare(out, json.loads(TARGET.read_text('utf-8')))
        return
    blocks = ',\n'.join(f'  {json.dumps(name)}: [\n' + ',\n'.join(f'   {json.dumps(r)}' for r in rows) + '\n  ]'
                        for name, rows in out['refrigerants'].items())
    text = {'refrigerants': '{\n' + blocks + '\n }'}
    TARGET.write_text('{\n' + ',\n'.join(f' {json.dumps(k)}: {text.get(k, json.dumps(v, ensure_ascii=False))}' for k, v in out.items()) + '\n}\n', 'utf-8')


def compare(new, old):
    pairs = [(r, q) for name in EVERY for r, q in zip(new['refrigerants'][name], old['refrigerants'][name])]
    pairs += zip(new['liquidFull']['rows'], old['liquidFull']['rows'])
    worst = max(abs(a / b - 1) for r, q in pairs for a, b in zip(r, q))
    if worst > AGREEMENT or new['by'] != old['by'] or len(new['refrigerants']) != len(old['refrigerants']):
        raise SystemExit(f'differs by {worst:.1e}')
    print(f'as in {TARGET.name}')


main()
