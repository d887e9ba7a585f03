import { describe, expect, it } from 'vitest'
import { COMPRESSOR_DRIVES, LAWS, MACHINES, SECTORS } from '../../../shared/fields/index.ts'
import { parseQuantity } from '../../../shared/quantity/index.ts'
import { refrigerant } from '../../../shared/refrigerant/index.ts'
import { LONGEST_LAW_LINE, lawLine } from '../../../shared/rules/law-line.ts'

const of = (name: string) => refrigerant(name)
const pounds = (text: string) => parseQuantity(text, ['mass'])
const loader = {
  refrigerant: of('R-134a'),
  machine: 'off-road',
  compressorDrive: 'open',
  labelCharge: pounds('2.75 lb'),
} as const

describe('the line of the law, by jurisdiction and machine', () => {
  const cells: [string, string][] = [
    [
      lawLine('us-federal', loader),
      'US: do not vent; recover. Certificate: 609, 608 Type II or Universal (40 CFR 82.34(a)(1), (3), 82.161(a)(2), (4), (5); 2015 text)',
    ],
    [
      lawLine('us-federal', { ...loader, machine: 'road-vehicle', forPay: true }),
      'US: do not vent; recover (40 CFR 82.154(a)(1), (2); 2015 text). Certificate: 609 (40 CFR 82.34(a)(1), (2); copy of June 2026)',
    ],
    [
      lawLine('us-federal', { ...loader, machine: 'road-vehicle', forPay: false }),
      'US: do not vent; recover (40 CFR 82.154(a)(1), (2); 2015 text). No certificate for this work (40 CFR 82.30(b), 82.34(a))',
    ],
    [
      lawLine('us-federal', { ...loader, machine: 'road-vehicle', ownMachine: true }),
      'US: do not vent; recover (40 CFR 82.154(a)(1), (2); 2015 text). No certificate for this work (40 CFR 82.30(b), 82.34(a))',
    ],
    [
      lawLine('us-federal', { ...loader, labelCharge: pounds('25 lb') }),
      'US: do not vent; recover (40 CFR 82.154(a)(1), (2); 2015 text). Certificate: 608 Type II or Universal (40 CFR 82.161(a)(2), (4), (5); 2015 text)',
    ],
    [
      lawLine('us-federal', { ...loader, refrigerant: of('R-744') }),
      'US: R-744 may be let out slowly, outdoors. Certificate: 609, 608 Type II or Universal (40 CFR 82.34(a)(1), (3), 82.161(a)(2), (4), (5); 2015 text)',
    ],
    [
      lawLine('us-federal', { ...loader, labelCharge: undefined }),
      'US: do not vent; recover. Certificate: 608 Type II or Universal; or others, by: label charge (40 CFR 82.34(a)(1), (3), 82.161(a)(2), (4), (5); 2015 text)',
    ],
    [
      lawLine('us-federal', {
        refrigerant: of('R-32'),
        machine: 'stationary',
        factorySealed: true,
        labelCharge: pounds('2 lb'),
      }),
      'US: do not vent; recover (40 CFR 82.154(a)(1), (2); 2015 text). Certificate: 608 Type I or Universal (40 CFR 82.161(a)(1), (4); 2015 text)',
    ],
    [
      lawLine('eu', { ...loader, sector: 'mining' }),
      'EU: do not vent; recover ((EU) 2024/573 art. 4(1)). Certificate: training attestation ((EU) 2025/1893 art. 1)',
    ],
    [
      lawLine('eu', { ...loader, sector: 'mining', refrigerant: of('R-744') }),
      'EU: recover; look up the rule on venting ((EU) 2024/573 art. 2). Certificate: training attestation ((EU) 2025/1893 art. 1)',
    ],
    [
      lawLine('uk', loader),
      'UK: recover; look up the rule on venting (retained (EU) 517/2014 art. 3; unverified). Look up which certificate it takes (guidance of 2010)',
    ],
    [
      lawLine('canada', loader),
      "Canada: do not vent; recover. Certificate: federal certificate, Ontario card or another province's, by the place (SOR/2022-110 s. 2(1); of 2025-07-25)",
    ],
    [
      lawLine('australia', loader),
      'Australia: recover; look up the rule on venting (Act 1989; unverified). Certificate: handling licence (Regulations 1995, reg. 111)',
    ],
    [
      lawLine('us-federal', { ...loader, machine: 'road-vehicle' }),
      'US: do not vent; recover. Certificate: 609, or none, by: paid or not (40 CFR 82.34(a)(1), (2), 82.30(b), 82.34(a); copy of June 2026)',
    ],
    [
      lawLine('us-federal', {
        ...loader,
        machine: 'road-vehicle',
        refrigerant: of('R-290'),
        action: 'buy',
      }),
      'US: do not vent; recover (40 CFR 82.154(a)(1), (2); 2015 text). Look up which certificate it takes (40 CFR 82.154(c))',
    ],
    [
      lawLine('eu', {
        ...loader,
        machine: 'road-vehicle',
        refrigerant: of('R-744'),
        action: 'recover',
      }),
      'EU: recover; look up the rule on venting ((EU) 2024/573 art. 2). Look up the certificate, such as training attestation ((EU) 2025/1893 art. 1)',
    ],
    [
      lawLine('eu', loader),
      'EU: do not vent; recover ((EU) 2024/573 art. 4(1)). Certificate: depends on: what it works at ((EU) 2025/1893 art. 1, (EU) 2025/1893 recital 1)',
    ],
    [lawLine(undefined, loader), 'Venting is illegal in most places: give "law".'],
  ]
  it.each(cells)('%s', (line, expected) => {
    expect(line).toBe(expected)
  })

  it('fits its length for every machine, refrigerant and job, and never lets anything out but R-744', () => {
    let seen = 0
    for (const law of LAWS)
      for (const machine of [undefined, ...MACHINES])
        for (const compressorDrive of [undefined, ...COMPRESSOR_DRIVES])
          for (const sector of [undefined, ...SECTORS])
            for (const action of ['open', 'charge'] as const)
              for (const id of ['R-134a', 'R-744', 'R-290', 'R-1234yf', 'R-22', 'R-422B']) {
                const line = lawLine(law, {
                  refrigerant: of(id),
                  machine,
                  compressorDrive,
                  sector,
                  action,
                })
                expect(line.length, line).toBeLessThanOrEqual(LONGEST_LAW_LINE)
                expect(/let out/u.test(line), line).toBe(id === 'R-744' && law === 'us-federal')
                expect(line).toMatch(/recover|let out/u)
                seen += 1
              }
    expect(seen).toBe(5 * 6 * 3 * 5 * 2 * 6)
  })

  // Cited at length, then shorter, then the first alone, then not at all: whatever still fits.
  it('cites as much as there is room for', () => {
    const cited = (line: string) => /\(((?:[^()]|\([^()]*\))*)\)$/u.exec(line)?.[1]
    const lines = LAWS.flatMap((law) =>
      MACHINES.flatMap((machine) =>
        COMPRESSOR_DRIVES.map((compressorDrive) =>
          lawLine(law, { ...loader, machine, compressorDrive }),
        ),
      ),
    )
    for (const line of lines) expect(cited(line), line).toMatch(/\d/u)
  })
})
