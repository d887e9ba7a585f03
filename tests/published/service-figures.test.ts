import { describe, expect, it } from 'vitest'
import air from '../../data/service/air-check.json' with { type: 'json' }
import charge from '../../data/service/charge.json' with { type: 'json' }
import bands from '../../data/service/charge-bands.json' with { type: 'json' }
import charging from '../../data/service/charging.json' with { type: 'json' }
import cutOuts from '../../data/service/cut-outs.json' with { type: 'json' }
import instruments from '../../data/service/instruments.json' with { type: 'json' }
import leak from '../../data/service/leak-test.json' with { type: 'json' }
import oils from '../../data/service/oil-types.json' with { type: 'json' }
import recovery from '../../data/service/recovery.json' with { type: 'json' }
import retrofit from '../../data/service/retrofit.json' with { type: 'json' }
import superheat from '../../data/service/target-superheat.json' with { type: 'json' }
import vacuum from '../../data/service/vacuum-limits.json' with { type: 'json' }
import { figuresIn, readIn, rowsOf } from '../support/figures.ts'

// Figures keyed again from the source beside them, row by row; whole printed figures, no tolerance.
// What is practice of the trade or only remembered is in tests/data/practice-figures.test.ts.

describe('charge', () => {
  it('ISO 14541, hydraulic quick couplings: spill at most by size', () => {
    expect(figuresIn(charge.couplings.likeParts)).toBe(
      'source iso-14541, rows size 1/4, sealMm 12.9, mostMl 0.8 | size 3/8, sealMm 17.4, mostMl 1.4 | size 1/2, sealMm 22, mostMl 2.7 | size 3/4, sealMm 27.9, mostMl 9.3',
    )
  })

  it('makers of split systems: liquid-line charge of R-410A, oz per ft', () => {
    expect(rowsOf(charge.liquidLine)).toEqual([
      'refrigerant R-410A, tube 1/4, ozPerFt 0.27, source liquid-line-38c',
      'refrigerant R-410A, tube 5/16, ozPerFt 0.4, source liquid-line-38c',
      'refrigerant R-410A, tube 3/8, ozPerFt 0.6, source liquid-line-38c',
      'refrigerant R-410A, tube 1/4, ozPerFt 0.3, source liquid-line-hr',
      'refrigerant R-410A, tube 5/16, ozPerFt 0.4, source liquid-line-hr',
      'refrigerant R-410A, tube 3/8, ozPerFt 0.6, source liquid-line-hr',
      'refrigerant R-410A, tube 1/2, ozPerFt 1.2, source liquid-line-hr',
    ])
  })

  it('US Army TM 5-3805-290-23-1: 1 to 2 oz either way; scaled by size from 2 to 4 lb', () => {
    expect(figuresIn(charge.chargeTolerance)).toBe(
      'fromOz 1, toOz 2, holdsFromLb 2, holdsToLb 4, source loader-charge, sizeSource tolerance-by-size',
    )
  })

  it('SAE J3023: 4 to 8 K of subcooling with a valve; RA3.2 (2008): ±3 °F, superheat of a valve 4 to 25 °F', () => {
    const { dischargeHottest: _, ...published } = bands.bands
    expect(rowsOf(published)).toEqual([
      'vehicleValveSubcooling: lowK 4, highK 8, refrigerants R-134a, source sae-j3023',
      'subcoolingTolerance: plusMinusF 3, source ra3.2-2008',
      'meteringSuperheat: lowF 4, highF 25, source ra3.2-2008',
    ])
  })

  it('RA3.2 (2008, 2013) and an R-410A table: target superheat ±5 °F, at least 5 °F, from 55 °F outdoors', () => {
    expect([superheat.tolerance, superheat.least, superheat.coldest].map(figuresIn)).toEqual([
      'plusMinusF 5, sources superheat-table-r410a ra3.2-2008',
      'targetF 5, sources superheat-table-r410a ra3.2-2008',
      'outdoorDryBulbF 55, sources ra3.2-2013',
    ])
  })
})

describe('charging', () => {
  it('labels of small cans: 120 °F; RA3.2 (2013): 55 °F; US Army TM 5-2420-230-24-1: 70 °F', () => {
    expect(figuresIn(charging.warmest)).toBe('value 120, unit °F, source can-label-120-f')
    expect(rowsOf(charging.weather)).toEqual([
      'by-temperature-or-pressure: value 55, unit °F, source ra3-2-2013',
      'vehicle: value 70, unit °F, source tm-5-2420-230',
    ])
  })
})

describe('evacuation', () => {
  // Each row by the manual that data/service/vacuum-limits.json names for it.
  it.each([
    ['archived-workshop-manuals', 'rise 1 inHg, within 5 min'],
    ['tm-5-3805-296-23-4', 'rise 2 inHg, within 5 min'],
    ['tm-5-4210-230-14p-1', 'rise 5 mmHg, within 1 min'],
    ['bulletin-1983', 'stays 28 inHg vac, within 5 min'],
    ['car-vacuum-2009', 'stays 93.3 kPa vac, within 15 min'],
    ['articulated-truck-vacuum', 'stays 10 mbar abs'],
    ['split-vacuum', 'stays 5 Torr, within 2 h'],
  ])('%s: %s', (source, figures) => {
    const rows = vacuum.rows.filter((row) => row.source === source).map(figuresIn)
    expect(rows).toHaveLength(1)
    expect(rows[0]).toMatch(new RegExp(`, rule …, ${figures}, source`, 'u'))
    expect(readIn(vacuum.sources, vacuum.rows)).toHaveLength(7)
  })
})

describe('leak test', () => {
  it('SAE J2791 scales of 4, 7 and 14 g a year, SAE J2970 14 g a year, ASTM E515 4.5e-10 mol/s', () => {
    expect(rowsOf(leak.methods)).toEqual([
      'id electronic-4, name …, perYear 4 g/yr, source sae-j2791',
      'id electronic-7, name …, perYear 7 g/yr, source sae-j2791',
      'id electronic-14, name …, perYear 14 g/yr, source sae-j2791',
      'id tracer-gas-14, name …, perYear 14 g/yr, source sae-j2970',
      'id soap-film, name …, molesPerSecond 4.5e-10, source astm-e515',
    ])
  })

  it('SAE practice for detectors: 340 kPa gauge, 15 °C; US Army TM 5-2420-230-24-1: 200 g a year', () => {
    expect(figuresIn(leak.conditions)).toBe(
      'systemPressure 340 kPa g, temperature 15 °C, source sae-detector-use',
    )
    expect(figuresIn(leak.normalLoss)).toBe('perYear 200 g/yr, source tm-5-2420-230-24-1')
  })

  it('40 CFR 82.157 and 84.106: 20, 30 and 10 %, from 50 lb and 15 lb; SAE J2788: 30 g', () => {
    expect(figuresIn(leak.thresholds)).toBe(
      'commercial-refrigeration 0.2, industrial-process 0.3, comfort-cooling 0.1',
    )
    expect(figuresIn(leak.federalLimits)).toBe('ozoneDepleting 50 lb, hydrofluorocarbon 15 lb')
    expect(figuresIn(leak.recoveredWithin)).toBe('plusMinus 30 g, source j2788-accuracy')
  })

  // Standard atomic weights (IUPAC 2021): N 14.007, H 1.008, He 4.002602; the ready mix holds 5 % hydrogen.
  it('molar masses of the test gases, kg/mol', () => {
    const { testGasMolarMass: found } = leak
    expect(found.nitrogen).toBeCloseTo(2 * 0.014007, 5)
    expect(found['nitrogen-with-refrigerant-trace']).toBe(found.nitrogen)
    expect(found['hydrogen-mix']).toBeCloseTo(0.95 * 2 * 0.014007 + 0.05 * 2 * 0.001008, 5)
    expect(found.helium).toBeCloseTo(0.004002602, 9)
  })
})

describe('recovery', () => {
  it('AHRI Guideline K: 80 %; J1990: 60 % of the gross rating for R-12; requalified after 5 years', () => {
    expect(figuresIn(recovery.fillFraction)).toBe('value 0.8, source ahri-guideline-k')
    expect(figuresIn(recovery.grossRatingFraction)).toBe(
      'value 0.6, refrigerant R-12, source cfr-82b-app-a-recovery',
    )
    expect(figuresIn(recovery.requalificationYears)).toBe('value 5, source five-year-stamp')
  })

  it('49 CFR 173.304a, table to (a)(2), filling density in percent of water', () => {
    const percent = recovery.fillingDensity.map(
      ({ refrigerant, ofWaterCapacity }) => `${refrigerant} ${Math.round(100 * ofWaterCapacity)}`,
    )
    expect(percent).toEqual([
      ...['R-12 119', 'R-22 105', 'R-115 110', 'R-142b 100', 'R-152a 79', 'R-744 68'],
    ])
  })

  it('SAE J2788, J2810, J1989 as printed in 40 CFR 82 subpart B: shares, times, temperatures', () => {
    expect(
      [
        recovery.recoveryShare,
        recovery.recoveryShareCold,
        recovery.warmUp,
        recovery.recoveryWait,
        recovery.airCheckRest,
        recovery.indicatedRecovered,
        recovery.overfillCutOff,
        recovery.servicePressure,
        recovery.smallAppliance,
      ].map(figuresIn),
    ).toEqual([
      'fraction 0.95, within [value 30, unit min], from [value 70, unit °F], to [value 75, unit °F], source sae-j2788',
      'fraction 0.85, within [value 30, unit min], from [value 50, unit °F], to [value 55, unit °F], source cfr-82b-app-d',
      'atMost [value 15, unit min], rpm 2000, source sae-j2788',
      'unitOff [value 5, unit min], stable [value 2, unit min], source cfr-82b-app-a-recovery',
      'value 12, unit h, atLeast [value 65, unit °F], source cfr-82b-app-a-recovery',
      'plusMinus [value 30, unit g], source j2788-indicated',
      'fraction 0.8, at [value 70, unit °F], source sae-j2788',
      'factor 1.25, at [value 131, unit °F], source cfr-173-301-a8',
      'vacuum 4 inHg vac, source cfr-82-156-a4',
    ])
  })

  it('40 CFR 82.152: pressure classes at 104 °F; 82.156, Table 1: levels before and from 15 Nov 1993', () => {
    expect(figuresIn(recovery.pressureClasses)).toBe(
      'source cfr-82-152-classes, at [value 104, unit °F], upTo class low-pressure, psia 45 | class medium-pressure, psia 170 | class high-pressure, psia 355, above very-high-pressure',
    )
    expect(rowsOf(recovery.evacuationLevels.rows)).toEqual([
      'class very-high-pressure, charge any, before 0, from 0',
      'class high-pressure, charge below, before 0, from 0',
      'class high-pressure, charge at-or-above, before 4, from 10',
      'class medium-pressure, charge below, before 4, from 10',
      'class medium-pressure, charge at-or-above, before 4, from 15',
    ])
    expect(recovery.evacuationLevels.chargeLimitLb).toBe(200)
    expect(recovery.evacuationLevels.lowPressureMmHgAbsolute).toBe(25)
  })

  it('40 CFR 82 subpart B, appendix A: 12 h at 65 °F or above; the method of J2211: 5 psi', () => {
    expect([air.coldest, air.rest, air.r134aMargin].map(figuresIn)).toEqual([
      'value 65, unit °F, source cfr-82b-app-a',
      'value 12, unit h, source cfr-82b-app-a',
      'value 5, unit psi, source sae-j2211',
    ])
  })
})

describe('conversions, US federal (40 CFR 82 subpart G)', () => {
  it('are acceptable or not as the lists say', () => {
    const rows = retrofit.acceptability.map(({ from, to, use, decision, source }) =>
      [from ?? 'any', to, use, decision === 'unacceptable' ? 'no' : 'yes', source].join(' '),
    )
    expect(rows).toEqual([
      'R-12 R-134a retrofit yes snap-app-b',
      'R-12 R-401C retrofit yes snap-app-b',
      'R-12 R-416A retrofit yes snap-app-b',
      'any R-134a new yes snap-app-b',
      'any R-416A new yes snap-app-b',
      'any R-401C new yes snap-app-b',
      'any R-1234yf new yes fr-87-26276',
      'any R-1234yf retrofit no epa-hydrocarbons',
      'any R-152a new yes epa-hydrocarbons',
      'any R-152a retrofit no epa-hydrocarbons',
      'any R-744 new yes snap-app-b-2015',
      'any R-744 retrofit no fr-77-33315',
    ])
    expect(retrofit.flammable.decision).toBe('unacceptable')
  })

  it('service bulletin 43-12-07: a new accumulator after 5 years', () => {
    expect(figuresIn(retrofit.accumulatorYears)).toBe('value 5, source bulletin-43-12-07')
  })
})

describe('what stops a compressor', () => {
  // Saab 1994, GM 1987, Mazda 2000, VW 1996, Carrier 50VT.
  it('is the switch that each manual prints', () => {
    expect(rowsOf(readIn(cutOuts.sources, cutOuts.rows))).toEqual([
      'refrigerant R-12, pressure 27 bar g, source pressure-switch-1994',
      'refrigerant R-12, pressure 430 psig, source high-cut-out-1987',
      'refrigerant R-134a, pressure 30 bar g, source pressure-switch-1994',
      'refrigerant R-134a, pressure 3103 kPa g, source pressure-switch-2000',
      'refrigerant R-134a, pressure 464 psig, source high-cut-out-1996',
      'refrigerant R-410A, pressure 650 psig, source high-pressure-switch-50vt',
    ])
  })
})

describe('instruments', () => {
  it('each class has the standard that prints it for its source', () => {
    const by = (rows: readonly { id: string; source: string }[]) =>
      rows.map(({ id, source }) => `${id} ${source}`)
    expect(by(instruments.gauges)).toEqual([
      ...[0.1, 0.25, 0.6, 1, 1.6, 2.5, 4].map((n) => `en-837-1-class-${n} en-837-1`),
      ...['4a', '3a', '2a', '1a'].map((grade) => `asme-b40.100-grade-${grade} asme-b40.100`),
      'asme-b40.100-grade-a asme-b40.100-grade-a',
      ...['b', 'c', 'd'].map((grade) => `asme-b40.100-grade-${grade} asme-b40.100`),
      ...['3.5', '7'].map((psi) => `within-${psi}-psi ra3.2-gauges`),
      ...['0.5', '1.25'].map((psi) => `within-${psi}-psi sae-j3023-instruments`),
    ])
    expect(by(instruments.thermometers)).toEqual([
      ...['aa', 'a', 'b'].map((letter) => `iec-60751-class-${letter} iec-60751`),
      'iec-60751-class-c iec-60751-c',
      ...['k', 't', 'j'].flatMap((type) =>
        [1, 2].map((grade) => `iec-60584-type-${type}-class-${grade} iec-60584-1`),
      ),
      ...['k', 't', 'j'].flatMap((type) =>
        ['standard', 'special'].map((grade) => `astm-e230-type-${type}-${grade} astm-e230`),
      ),
      'within-0.5-k sae-j3023-instruments',
    ])
  })
})

describe('oil and refrigerant', () => {
  it('fit or not by the source of each pair', () => {
    const rows = readIn(oils.sources, oils.fits).map(({ family, verdict, source, ...of }) =>
      [family, of.refrigerant ?? of.class, verdict === 'fits' ? 'yes' : 'no', source].join(' '),
    )
    expect(rows).toEqual([
      'mineral cfc yes compressor-oils',
      'mineral hcfc yes study-guide',
      'mineral hfc no study-guide',
      'mineral hfo no study-guide',
      'mineral hydrocarbon yes hydrocarbon-oils',
      'alkylbenzene cfc yes study-guide',
      'alkylbenzene hcfc yes study-guide',
      'alkylbenzene hfc no study-guide',
      'alkylbenzene hfo no study-guide',
      'pag cfc no pag-or-mineral',
      'pag R-134a yes compressor-oils',
      'pag R-1234yf yes pag-and-ester',
      'poe hfc yes study-guide',
      'poe hfo yes study-guide',
      'poe hfc-with-hydrocarbon yes study-guide',
      'pve hfc yes study-guide',
    ])
  })

  it('each oil is of its family, its viscosity, and of the refrigerant that it was made for', () => {
    const rows = readIn(oils.sources, oils.oils).map(
      ({ name, family, viscosity, madeFor, aliases, source }) =>
        [name, family, viscosity, madeFor, source, `(${aliases.join(', ')})`]
          .filter((word) => word !== undefined)
          .join(' '),
    )
    expect(rows).toEqual([
      'PAG pag compressor-oils (polyalkylene glycol, PAG oil)',
      'PAG 46 pag 46 tractor-oil-type (PAG ISO 46, PAG46)',
      'SP-10 pag 46 R-134a tractor-oil-type (SP10)',
      'SP-15 pag R-134a compressor-oils (SP15)',
      'SP-20 pag R-134a compressor-oils (SP20)',
      'PAG for R-1234yf pag R-1234yf pag-and-ester (PAG YF, PAG R-1234yf, YF PAG)',
      'ND-OIL 6 mineral R-12 nd-oils (ND OIL 6)',
      'POE poe study-guide (polyolester, ester, POE oil, ester oil)',
      'PVE pve study-guide (polyvinyl ether, PVE oil)',
      'mineral oil mineral study-guide (mineral, MO, naphthenic)',
      '5GS mineral R-12 compressor-oils (Sunico 5GS)',
      'alkylbenzene alkylbenzene study-guide (AB, alkyl benzene, AB oil)',
    ])
    expect(rowsOf(oils.notes)).toEqual([
      'families pag poe pve, text …, source water-limits',
      'families pag poe pve, text …, source drier-takes-water',
    ])
  })
})
