import { describe, expect, it } from 'vitest'
import bores from '../../data/service/bores.json' with { type: 'json' }
import charge from '../../data/service/charge.json' with { type: 'json' }
import bands from '../../data/service/charge-bands.json' with { type: 'json' }
import contamination from '../../data/service/contamination.json' with { type: 'json' }
import cutOuts from '../../data/service/cut-outs.json' with { type: 'json' }
import diagnosis from '../../data/service/diagnosis.json' with { type: 'json' }
import fractionation from '../../data/service/fractionation.json' with { type: 'json' }
import instruments from '../../data/service/instruments.json' with { type: 'json' }
import leak from '../../data/service/leak-test.json' with { type: 'json' }
import oil from '../../data/service/oil.json' with { type: 'json' }
import oilTypes from '../../data/service/oil-types.json' with { type: 'json' }
import patterns from '../../data/service/patterns.json' with { type: 'json' }
import uncertainty from '../../data/service/property-uncertainty.json' with { type: 'json' }
import findings from '../../data/service/reading-findings.json' with { type: 'json' }
import recovery from '../../data/service/recovery.json' with { type: 'json' }
import retrofit from '../../data/service/retrofit.json' with { type: 'json' }
import table from '../../data/service/table.json' with { type: 'json' }
import vacuum from '../../data/service/vacuum-limits.json' with { type: 'json' }
import { type RefrigerantInfo, refrigerants } from '../../shared/refrigerant/index.ts'
import { classOf } from '../../shared/service/oil/oil-fit.ts'
import { figuresIn, rowsOf } from '../support/figures.ts'

// Figures that no text was read for, written a second time, so that none changes unseen.

describe('common practice of the trade', () => {
  it('oil that goes with a part, from the middle of what manuals print', () => {
    expect(rowsOf(oil.defaults)).toEqual([
      'condenser: amount 1, unit fl oz',
      'evaporator: amount 3, unit fl oz',
      'drier: amount 1, unit fl oz',
      'accumulator: beyondDrained 2, unit fl oz',
      'hose: amount 0, unit fl oz',
      'sudden-leak: amount 2.5, unit fl oz',
    ])
    expect(oil.longHoseLimitG).toBe(1600)
  })

  it('evacuation: to 500 micron, then 10 min below 1000', () => {
    expect(figuresIn(vacuum.practice)).toBe(
      'target 500 micron, holdFor 10 min, holdBelow 1000 micron, source micron-practice',
    )
    const row = vacuum.rows.filter(({ source }) => source === 'micron-practice').map(figuresIn)
    expect(row).toEqual([
      'id rise-500-micron-in-10-min, rule …, rise 500 micron, stays 1000 micron, within 10 min, source micron-practice',
    ])
  })

  it('instruments of a shop, and the weather', () => {
    expect(rowsOf(instruments.instruments)).toEqual([
      'low-side-gauge: name …, plusMinus [value 1, unit psi], source shop-gauges',
      'high-side-gauge: name …, plusMinus [value 4, unit psi], source shop-gauges',
      'thermometer: name thermometer, plusMinus [value 1, unit °F], source shop-thermometers',
      'pipe-probe: name …, plusMinus [value 2, unit °F], source shop-thermometers',
      'scale: name scale, plusMinus [value 15, unit g], source shop-scale',
      'micron-gauge: name …, plusMinus [value 10, unit micron], percentOfReading 10, source shop-micron-gauge',
      'caliper: name caliper, plusMinus [value 0.2, unit mm], source shop-caliper',
      'barometer: name barometer, plusMinus [value 1, unit hPa], source shop-barometer',
      'hygrometer: name hygrometer, plusMinus [value 5, unit %], source shop-hygrometer',
    ])
    expect(figuresIn(instruments.weather)).toBe('plusMinus [value 3, unit kPa], source weather')
    expect(figuresIn(instruments.lowSideGaugeReaches)).toBe('value 250, unit psi, note …')
    expect(figuresIn(leak.barometerChange)).toBe(
      'perHour 1 hPa, most 3 kPa, source barometer-change',
    )
  })

  it('retrofit: 80 to 90 % of the old charge, or 0.9 × it − 0.25 lb from 2 to 5 lb', () => {
    expect(figuresIn(retrofit.charge)).toBe(
      'lowFraction 0.8, highFraction 0.9, formulaFraction 0.9, formulaOffset [value 0.25, unit lb], formulaFrom [value 2, unit lb], formulaTo [value 5, unit lb], densitiesAt [value 100, unit °F], source retrofit-practice',
    )
    expect(figuresIn(retrofit.condensing)).toBe('value 130, unit °F')
  })

  it('recovery: cylinders of 350 and 400 psi, whose stamp is read to 0.5 lb', () => {
    expect(figuresIn(recovery.commonServicePressures)).toBe(
      'values 350 400, unit psi, source common-cylinders',
    )
    expect(figuresIn(recovery.stampedWithin)).toBe('value 0.5, unit lb, note …')
  })

  it('charge: parted lines from 32 °F beside another and 0 °F alone to 120 °F', () => {
    const { likeParts: _, ...taken } = charge.couplings
    expect(figuresIn(taken)).toBe(
      'coldest [beside [value 32, unit °F], alone [value 0, unit °F]], hottest [value 120, unit °F], boundSource companion-valves',
    )
    expect(figuresIn(bands.bands.dischargeHottest)).toBe('highF 225, source trade-practice')
  })

  it('blends: shifts below 0.5 K are not read; a leak begins at 80 % of liquid by mass', () => {
    expect([fractionation.closeK, fractionation.startLiquidShare]).toEqual([0.5, 0.8])
  })

  it('contamination: what is met, which share hides, and how rough the mixture model is', () => {
    expect(contamination.suspects.join(' ')).toBe(
      'R-12 R-22 R-134a R-152a R-290 R-600a R-1234yf R-32 R-404A R-407C R-410A',
    )
    expect([contamination.unseenShare, contamination.roughestShare]).toEqual([0.1, 0.05])
  })

  it('chart: every 10 °F or 5 K, 10 psi or 50 kPa', () => {
    expect(rowsOf(table.default)).toEqual([
      '°F: from -20, to 160, step 10, stepUnit °F',
      '°C: from -30, to 70, step 5, stepUnit K',
    ])
    expect(rowsOf(table.pressureStep)).toEqual(['us: value 10, unit psi', 'si: value 50, unit kPa'])
  })

  it('signs of faults, vehicle and stationary', () => {
    expect(rowsOf(patterns.signs)).toEqual([
      'evaporating: name …, vehicle [low 6.5, high 60, source published-performance], stationary [low 30, high 60, source sign-practice], unit °F',
      'overAmbient: name …, vehicle [low 20, high 72, source published-performance], stationary [low 8, high 35, source sign-practice], unit °F',
      'superheat: name superheat, vehicle [low 4, high 25, source sign-practice], stationary [low 4, high 45, source sign-practice], unit °F',
      'subcooling: name subcooling, vehicle [low 7.2, high 25, source sign-practice], stationary [low 5, high 20, source sign-practice], unit °F',
      'ratio: name …, vehicle [low 2, high 12, source sign-practice], stationary [low 1.7, high 12, source sign-practice]',
      'suction: name …, vehicle [low 0, high 1000, source sign-practice], stationary [low 0, high 1000, source sign-practice], unit psi',
      'raised: name …, vehicle [low 0, high 50, source sign-practice], stationary [low 0, high 30, source sign-practice], unit °F',
      'fed: name …, vehicle [low -150, high 42, source published-performance], stationary [low -150, high 50, source sign-practice], unit °F',
      'lift: name …, vehicle [low 3.5, high 12, source published-performance], stationary [low 2, high 12, source sign-practice]',
      'liquidOverAmbient: name …, vehicle [low 0, high 1000, source sign-practice], stationary [low 0, high 1000, source sign-practice], unit °F',
      'coldish: name …, vehicle [low 15, high 60, source published-performance], stationary [low 30, high 60, source sign-practice], unit °F',
      'slack: name …, vehicle [low 25, high 72, source published-performance], stationary [low 8, high 35, source sign-practice], unit °F',
      'dry: name superheat, vehicle [low 4, high 25, source sign-practice], stationary [low 4, high 25, source sign-practice], unit °F',
    ])
  })

  it('what a subcooling from the discharge pressure may show too large', () => {
    expect(figuresIn(patterns.fromDischarge)).toBe('value 8, unit °F, source sign-practice')
  })

  it('patterns of faults: which signs, and which milder pattern each covers', () => {
    const rows = patterns.patterns.map(({ id, when, covers, ...of }) =>
      [
        `${id}:`,
        ...Object.entries(when).map(([sign, sides]) => `${sign} ${sides.join(' or ')}`),
        ...('device' in of ? [`with a ${of.device}`] : []),
        ...('machine' in of ? [of.machine] : []),
        ...(covers.length > 0 ? [`covers ${covers.join(' and ')}`] : []),
      ].join(', '),
    )
    expect(rows.map((row) => row.replace(':,', ':'))).toEqual([
      'restriction-in-vacuum: suction low, superheat high, subcooling normal or high, covers starved-not-low and tube-starved and starved-in-vacuum and high-side-low and starved and cold-liquid',
      'starved-in-vacuum: suction low, covers both-low and evaporator-starved and high-side-low and starved and cold-liquid',
      'hot-and-starved: overAmbient high, dry high, covers raised-and-starved and low-charge and tube-starved and warm-suction and starved-not-low and starved and condenser-and-subcooling and condenser and backed-up and low-side-high',
      'low-charge: dry high, subcooling low, covers both-low and evaporator-starved and high-side-low and starved and weak-lift and low-lift',
      'tube-starved: superheat high, subcooling normal or high, with a orifice, covers raised-and-starved and warm-suction and starved-not-low and starved and both-low and evaporator-starved and high-side-low and backed-up and weak-lift and low-side-high',
      'raised-and-starved: raised high, superheat high, subcooling normal or high, covers warm-suction and starved-not-low and starved and backed-up and low-side-high',
      'warm-suction: superheat high, subcooling normal or high, fed high, covers starved-not-low and starved and weak-lift and high-side-low',
      'starved-not-low: superheat high, subcooling normal or high, covers both-low and evaporator-starved and high-side-low and starved',
      'not-pumping: evaporating high, ratio low, covers low-lift and weak-lift and high-side-low and low-side-high',
      'starved: superheat high, covers both-low and evaporator-starved and high-side-low and weak-lift',
      'condenser-and-subcooling: overAmbient high, subcooling high, covers condenser and backed-up and starved-not-low and tube-starved and low-side-high and cold-liquid',
      'cold-liquid-raised: liquidOverAmbient low, raised high, covers cold-liquid and starved and condenser and low-side-high and flooded',
      'low-subcooling: subcooling low, with a valve, stationary, covers condenser and evaporator-starved and high-side-low',
      'condenser: overAmbient high, covers low-side-high',
      'backed-up: subcooling high, covers warm-suction',
      'both-low: coldish low, slack low, covers low-lift and evaporator-starved and high-side-low',
      'low-side-high: evaporating high, covers flooded',
      'flooded: superheat low, fed high, with a valve, covers weak-lift and overfed',
      'weak-lift: fed high, lift low, covers low-lift and high-side-low and low-side-high',
      'overfed: superheat low, evaporating normal or high, subcooling low, with a valve',
      'cold-liquid: liquidOverAmbient low',
      'evaporator-air: superheat low, evaporating low, with a valve, covers evaporator-starved',
      'evaporator-starved: evaporating low',
      'high-side-low: overAmbient low',
      'low-lift: ratio low',
    ])
  })

  it('each finding has its level, and the sources of what it says', () => {
    const rows = Object.entries(findings.findings).map(
      ([id, { level, sources }]) => `${id}: ${level}, ${sources.join(' ')}`,
    )
    const both = 'phase-equilibrium trade-practice'
    expect(rows).toEqual([
      'above-cut-out: stop, trade-practice',
      `liquid-hotter-than-bubble: impossible, ${both}`,
      `suction-colder-than-dew: impossible, ${both}`,
      `liquid-in-suction-line: suspect, ${both}`,
      `vapour-in-liquid-line: suspect, ${both}`,
      `no-subcooling: suspect, ${both}`,
      `no-superheat: suspect, ${both}`,
      'superheat-very-low: suspect, ra3.2-2008 trade-practice',
      'superheat-very-high: suspect, rossi-braun ra3.2-2008',
      `no-pressure-difference: impossible, ${both}`,
      `suction-above-discharge: impossible, ${both}`,
      `discharge-colder-than-dew: impossible, ${both}`,
      `condensing-below-ambient: impossible, ${both}`,
      `liquid-colder-than-ambient: suspect, ${both}`,
      `suction-in-vacuum: suspect, ${both}`,
      'subcooling-from-discharge-pressure: note, phase-equilibrium',
      'discharge-very-hot: suspect, trade-practice',
      `above-critical: stop, ${both}`,
      'supercritical: note, phase-equilibrium',
      `liquid-above-discharge: suspect, ${both}`,
    ])
  })
})

describe('remembered', () => {
  it('cut-out of R-22 near 400 psig, and which refrigerant stands for which', () => {
    expect(cutOuts.rows.filter(({ source }) => source === 'r22-cut-out').map(figuresIn)).toEqual([
      'refrigerant R-22, pressure 400 psig, source r22-cut-out',
    ])
    expect(figuresIn(cutOuts.standsFor)).toBe(
      'R-1234yf R-134a, R-407C R-22, R-32 R-410A, R-454B R-410A',
    )
  })

  it('nominal bores of hose by dash number: 5/16, 13/32, 1/2 and 5/8 in', () => {
    const hoses = bores.rows.filter(({ kind }) => kind === 'hose')
    expect(hoses.map(({ size, nominal, boreIn }) => `${size} ${nominal} ${boreIn}`)).toEqual([
      '#6 5/16 0.3125',
      '#8 13/32 0.40625',
      '#10 1/2 0.5',
      '#12 5/8 0.625',
    ])
  })

  it('components that burn by ASHRAE 34: whatever a pickable refrigerant of class 2L, 2 or 3 is, and its kin', () => {
    const pickable = refrigerants()
      .filter(
        ({ composition, safetyClass }) => composition.length === 1 && safetyClass.value !== 'A1',
      )
      .map(({ id }) => id)
    const onlyInBlends = ['R-142b', 'R-143a', 'R-600', 'R-601a', 'R-1270']
    const burning = new Set([...pickable, ...onlyInBlends])
    expect([...fractionation.flammable].sort()).toEqual([...burning].sort())
  })

  it('oils of the trade and their pairs', () => {
    const rows = oilTypes.oils
      .filter(({ source }) => ['trade-memory', 'nd-families'].includes(source))
      .map(({ name, family, viscosity, madeFor, aliases }) =>
        [name, family, viscosity ?? '-', madeFor ?? '-', `(${aliases.join(', ')})`].join(' '),
      )
    expect(rows).toEqual([
      'PAG 100 pag 100 - (PAG ISO 100, PAG100)',
      'PAG 150 pag 150 - (PAG ISO 150, PAG150)',
      'ND-OIL 8 pag 46 R-134a (ND OIL 8)',
      'ND-OIL 9 pag - R-134a (ND OIL 9)',
      'ND-OIL 11 poe - - (ND OIL 11)',
      'ND-OIL 12 pag - R-1234yf (ND OIL 12)',
      'POE 32 poe 32 - (POE ISO 32, POE32)',
      'POE 68 poe 68 - (POE ISO 68, POE68)',
      'POE 100 poe 100 - (POE ISO 100, POE100)',
      'PAO pao - - (polyalphaolefin, PAO oil)',
    ])
    const pairs = oilTypes.fits
      .filter(({ source }) => source === 'trade-memory')
      .map(({ family, verdict, ...of }) => `${family} ${of.class} ${verdict}`)
    expect(pairs).toEqual([
      'alkylbenzene hcfc-blend fits',
      'pag hcfc refused',
      'pag hcfc-blend refused',
    ])
  })

  // By their formulas: chlorine and no hydrogen CFC, chlorine and hydrogen HCFC, a double bond (or
  // iodine instead) HFO, fluorine alone HFC.
  it('each substance is of the class that its formula makes it', () => {
    const CLASSES = {
      cfc: ['R-12', 'R-115'],
      hcfc: ['R-22', 'R-124', 'R-142b'],
      hydrocarbon: ['R-290', 'R-600', 'R-600a', 'R-601a', 'R-1270'],
      'carbon-dioxide': ['R-744'],
      hfo: ['R-1234yf', 'R-1234ze(E)', 'R-13I1'],
      hfc: ['R-32', 'R-125', 'R-134a', 'R-143a', 'R-152a', 'R-227ea', 'R-218'],
    }
    for (const [name, ids] of Object.entries(CLASSES)) {
      for (const id of ids) {
        const alone = { composition: [{ substance: id, massFraction: 1 }] }
        expect(classOf(alone as unknown as RefrigerantInfo), id).toBe(name)
      }
    }
  })
})

describe('how well properties are known', () => {
  // Curves as generated; pure equations from memory of their papers; published pairs by their
  // abstracts (0.5 % and 1 % in pressure); estimated pairs by their distance from printed boiling points.
  it('share of pressure and densities, or kelvin', () => {
    expect(
      [uncertainty.curve, uncertainty.pure, uncertainty.estimatedPairs].map(figuresIn),
    ).toEqual([
      'temperatureK 0.001, pressure 0.00001, density 0.0001, source curve-fit',
      'pressure 0.003, liquidDensity 0.002, vapourDensity 0.005, source pure-equation-uncertainty',
      'fromK 1, toK 4, liquidDensity 0.01, vapourDensity 0.01, source handbook-boiling-points',
    ])
    expect(rowsOf(uncertainty.publishedPairs)).toEqual([
      '10.1063/1.1649997: pressure 0.005, liquidDensity 0.001, vapourDensity 0.005, source lemmon-jacobsen-2004-uncertainty',
      '10.1021/acs.jced.6b00257: pressure 0.03, liquidDensity 0.005, vapourDensity 0.01, source bell-lemmon-2016-uncertainty',
      'other: pressure 0.01, liquidDensity 0.002, vapourDensity 0.01, source bell-2023-uncertainty',
    ])
  })
})

describe('judgement of the diagnosis, no published figures', () => {
  it('how often a cause is met, before any reading', () => {
    expect(figuresIn(diagnosis.priors)).toBe(
      'source diagnosis-priors-memory, none 10, reading-or-test-wrong 5, undercharge 30, overcharge 8, condenser-air 14, evaporator-air 10, restriction 6, valve-stuck-open 3, valve-stuck-closed 5, compressor-leak 6, air 5, stroke-stuck-high 2, stroke-stuck-low 3',
    )
  })

  it('what a reading takes, in minutes, and how well it is known', () => {
    expect(rowsOf(diagnosis.candidates.rows)).toEqual([
      'feature lowSidePa, sigma 6895, minutes 3',
      'feature highSidePa, sigma 27580, minutes 3',
      'feature suctionLineK, sigma 1, minutes 2',
      'feature liquidLineK, sigma 1, minutes 2',
      'feature deviceInletK, sigma 1, minutes 4',
      'feature evaporatorOutletK, sigma 1, minutes 4',
      'feature dischargeLineK, sigma 2, minutes 2',
      'feature ventK, sigma 1, minutes 1',
      'feature condenserAirK, sigma 1, minutes 2',
      'feature chargeShare, sigma 0.02, minutes 45',
    ])
  })

  it('how far a machine is from its model', () => {
    expect(figuresIn(diagnosis.spread)).toBe(
      'source diagnosis-spread-memory, condenserConductance 0.1, evaporatorConductance 0.1, volumetric 0.05, isentropic 0.05, device 0.05, condenserFan 0.1, blower 0.1, returnHumidity 0.05, returnAirK 1, ambientK 1, speed 0.07, charge 0.04, knownMachineShare 0.3',
    )
  })
})
