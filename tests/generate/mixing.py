"""Write data/mixing/*.json: what two refrigerants do to each other in the multi-fluid model.

    python tests/generate/mixing.py

Needs CoolProp 8.0.0, whose tables (MIT licence, see data/NOTICE.md) are embedded as JSON text in
its extension module and carry the key of the paper each pair comes from. One file is written for
each paper, plus estimated.json for every pair that no paper covers.
"""

import itertools
import json
import pathlib
import re

import CoolProp
import CoolProp.CoolProp as CP

VERSION = '8.0.0'
ROOT = pathlib.Path(__file__).resolve().parents[2]
SUBSTANCES = {  # ours: theirs
    'R-12': 'R12', 'R-22': 'R22', 'R-32': 'R32', 'R-115': 'R115', 'R-124': 'R124',
    'R-125': 'R125', 'R-134a': 'R134a', 'R-142b': 'R142b', 'R-143a': 'R143a', 'R-152a': 'R152A',
    'R-218': 'R218', 'R-227ea': 'R227EA', 'R-290': 'n-Propane', 'R-600': 'n-Butane',
    'R-600a': 'IsoButane', 'R-601a': 'Isopentane', 'R-744': 'CarbonDioxide',
    'R-1234yf': 'R1234yf', 'R-1234ze(E)': 'R1234ze(E)', 'R-1270': 'Propylene', 'R-13I1': 'R13I1',
}
FILES = {  # key of the library: our file, what it covers
    'Lemmon-JPCRD-2004': ('lemmon-jacobsen-2004', 'Fitted to measurements. The reducing lines are printed as xi (K) and zeta (m3/mol).'),
    'Bell-JCED-2016': ('bell-lemmon-2016', 'Fitted automatically to phase equilibrium measurements: temperature parameters only, no departure function.'),
    'Bell-IJT-2020': ('bell-mclinden-2020', 'Fitted to measurements of mixtures with trifluoroiodomethane.'),
    'Bell-JPCRD-2022': ('bell-2022', 'Fitted to measurements, with a departure function for each pair.'),
    'Bell-JPCRD-2023': ('bell-2023', 'Fitted to measurements, with a departure function for each pair.'),
    'Bell-JCED-2025': ('bell-2025', 'Fitted to measurements, reducing parameters only.'),
    'Kunz-JCED-2012': ('kunz-wagner-2012', 'Fitted to measurements, or an estimate of the authors where they had none (the paper says which).'),
}
ALKANES = ('R-290', 'R-600', 'R-600a', 'R-601a')
# iodine makes it unlike the others: fitted gammaT 0.98 with alkanes
UNLIKE = ('R-13I1',)
NOT_HALOCARBONS = (*ALKANES, 'R-1270', 'R-744')


def embedded(marker):
    """The JSON array in the extension module in which `marker` stands."""
    binary = pathlib.Path(CP.__file__).read_bytes()
    at = binary.find(marker)
    while at >= 0:
        text = binary[binary.rfind(b'\0', 0, at) + 1:binary.find(b'\0', at)]
        try:
            return json.loads(text[text.find(b'['):])
        except ValueError:
            at = binary.find(marker, at + len(text))
    raise SystemExit(f'no table with {marker!r} in {CP.__file__}')


def citation(key):
    """Authors, title, journal, volume, pages and year from the library's bibliography."""
    library = pathlib.Path(CoolProp.__file__).with_name('CoolPropBibTeXLibrary.bib').read_text()
    entry = re.search(r'@\w+\{' + re.escape(key) + r',(.*?)\n\}', library, re.S).group(1)
    field = {m[1].lower(): m[2].strip('{}').replace('--', '-')
             for m in re.finditer(r'^\s*(\w+)\s*=\s*\{(.*?)\},?\s*$', entry, re.M)}
    authors = field['author'].replace(' and ', ', ')
    volume = field.get('volume', '') + (f"({field['number']})" if 'number' in field else '')
    place = ', '.join(part for part in (f"{field['journal']} {volume}".strip(), field.get('pages')) if part)
    title = field['title'].replace('$_3$', '3')
    return {'citation': f"{authors}: {title}. {place}, {field['year']}.", 'doi': field['doi']}


def number(value):
    return int(value) if float(value) == int(value) else float(value)


def pair_row(row, ours):
    """One pair in our words; the order of the two matters for the beta of the reducing lines."""
    out = {'components': [ours[row['CAS1']], ours[row['CAS2']]]}
    if 'xi' in row:
        out |= {'form': 'lemmon-jacobsen', 'xiK': number(row['xi']), 'zetaM3PerMol': number(row['zeta'])}
    else:
        out |= {'form': 'kunz-wagner'} | {k: number(row[k]) for k in ('betaT', 'gammaT', 'betaV', 'gammaV')}
    if row.get('function') and row['F']:
        out |= {'weight': number(row['F']), 'departure': row['function'].replace('-', '/', 1).replace('R', 'R-')}
    return out


def departure_row(function):
    """Sum of n delta^d tau^t exp(-delta^l): the one form that all functions of our pairs have."""
    if function['type'] == 'GERG-2008':
        assert function['Npower'] == len(function['n']), function['Name']
        function = function | {'l': [0] * len(function['n'])}
    else:
        assert function['type'] == 'Exponential', function['Name']
    return {k: [number(v) for v in function[k]] for k in ('n', 'd', 't', 'l')}


def main():
    assert CoolProp.__version__ == VERSION, f'made for CoolProp {VERSION}, this is {CoolProp.__version__}'
    ours = {CP.get_fluid_param_string(theirs, 'CAS'): name for name, theirs in SUBSTANCES.items()}
    functions = {f['Name']: f for f in embedded(b'"Npower"')}
    rows = [r for r in embedded(b'"gammaT"') if r['CAS1'] in ours and r['CAS2'] in ours]
    target = ROOT / 'data' / 'mixing'
    target.mkdir(parents=True, exist_ok=True)
    seen = set()
    published = []
    for key, (name, note) in FILES.items():
        pairs, departures = [], {}
        for row in rows:
            if row['BibTeX'] != key:
                continue
            pairs.append(pair_row(row, ours))
            seen.add(frozenset(pairs[-1]['components']))
            published.append(pairs[-1])
            if 'departure' in pairs[-1]:
                departures[pairs[-1]['departure']] = departure_row(functions[row['function']])
        write(target / f'{name}.json', {
            'id': name, 'basis': 'published', **citation(key), 'note': note,
            'transcribedFrom': f'CoolProp {VERSION}, mixture tables (MIT licence)',
            'departures': departures, 'pairs': sorted(pairs, key=lambda p: p['components'])})
    left = sorted({row['BibTeX'] for row in rows} - set(FILES))
    assert not left, f'pairs from papers without a file: {left}'
    fitted = {frozenset(p['components']): p.get('gammaT') for p in published}
    rows, mean = estimates(fitted)
    write(target / 'estimated.json', {
        'id': 'estimated', 'basis': 'estimated',
        'citation': 'Estimated, no published parameters: Lorentz-Berthelot combining rules in the form of O. Kunz, W. Wagner, '
                    'J. Chem. Eng. Data 57, 3032-3091, 2012 (beta and gamma 1, no departure function), '
                    'except gammaT of an alkane with a halocarbon, which is taken by analogy.',
        'doi': '10.1021/je300655b',
        'note': 'A scheme, not a fit. Every fitted pair of an alkane with a halocarbon has a gammaT well below 1 '
                f'(mean {mean}), so 1 would read low in pressure: such a pair takes the gammaT of the fitted pair '
                'named in "like" (same halocarbon, nearest alkane), or that mean where there is none.',
        'transcribedFrom': 'not transcribed: a rule', 'departures': {}, 'pairs': rows})
    print(f'{len(seen)} published pairs, {len(rows)} estimated')


def estimates(fitted):
    """Rows for every pair without published parameters, and the mean gammaT of alkane with halocarbon."""
    critical = {name: CP.PropsSI('Tcrit', theirs) for name, theirs in SUBSTANCES.items()}

    def mixed(pair):
        return any(c in ALKANES for c in pair) and any(c not in NOT_HALOCARBONS + UNLIKE for c in pair)

    known = {pair: gamma for pair, gamma in fitted.items() if gamma and mixed(pair)}
    mean = round(sum(known.values()) / len(known), 3)
    rows = []
    for pair in itertools.combinations(SUBSTANCES, 2):
        if frozenset(pair) in fitted:
            continue
        row = {'components': list(pair), 'form': 'kunz-wagner'}
        if mixed(pair):
            alkane, other = sorted(pair, key=lambda c: c not in ALKANES)
            like = [a for a in ALKANES if frozenset((a, other)) in known]
            row['gammaT'] = mean
            if like:
                nearest = min(like, key=lambda a: abs(critical[a] - critical[alkane]))
                row |= {'gammaT': known[frozenset((nearest, other))], 'like': f'{nearest}/{other}'}
        rows.append(row)
    return rows, mean


def write(path, document):
    """Indented, but a pair or a coefficient list stays on one line."""
    text = json.dumps(document, indent=2, ensure_ascii=False)
    text = re.sub(r'\[\s+([^\[\]{}]*?)\s+\]', lambda m: '[' + re.sub(r',\s+', ', ', m[1]) + ']', text)
    text = re.sub(r'\{\s+("components"[^{}]*?)\s+\}', lambda m: '{ ' + re.sub(r',\s+', ', ', m[1]) + ' }', text)
    path.write_text(text + '\n')


main()
