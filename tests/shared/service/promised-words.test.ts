import { describe, expect, it } from 'vitest'
import { answered, asked } from '../../support/choices.ts'

/**
 * The words of an answer that others go by (doors, orders, whoever calls the service), and those of
 * fields that take no trade words. A name that is lost or misspelt breaks them, and one that is added
 * is added here.
 */
const ANSWERS: readonly (readonly [string, readonly string[]])[] = [
  ['saturation', ['given: pressure temperature', 'lines: one bubble-and-dew']],
  ['table', ['over: temperature gauge-pressure absolute-pressure']],
  [
    'readings',
    [
      'rest.state: below between at above liquid-full cannot-tell',
      'rest.from: bubble dew contents',
      'lowSide.state: saturation supercritical',
      'highSide.state: saturation supercritical',
      'highSide.readAt: liquid-line discharge-line',
    ],
  ],
  [
    'diagnose',
    [
      'verdict: fault no-fault-shown reading-or-test-wrong cannot-tell',
      'named: none reading-or-test-wrong undercharge overcharge condenser-air evaporator-air restriction valve-stuck-open valve-stuck-closed compressor-leak air stroke-stuck-high stroke-stuck-low',
      'causes.cause: none reading-or-test-wrong undercharge overcharge condenser-air evaporator-air restriction valve-stuck-open valve-stuck-closed compressor-leak air stroke-stuck-high stroke-stuck-low',
      'classes.causes: none reading-or-test-wrong undercharge overcharge condenser-air evaporator-air restriction valve-stuck-open valve-stuck-closed compressor-leak air stroke-stuck-high stroke-stuck-low',
      'doubted.what: lowSidePa highSidePa suctionLineK liquidLineK deviceInletK evaporatorOutletK dischargeLineK ventK condenserAirK chargeShare speed returnHumidity returnAirK ambientK refrigerant anything',
      'machine.known: model baseline kind unknown',
      'machine.kinds: valve valve-receiver orifice-accumulator valve-receiver-variable stationary-orifice stationary-valve',
      'priors.cause: none reading-or-test-wrong undercharge overcharge condenser-air evaporator-air restriction valve-stuck-open valve-stuck-closed compressor-leak air stroke-stuck-high stroke-stuck-low',
    ],
  ],
  [
    'charge',
    [
      'appliedJob: couplers-parted section-opened system-opened pressure-lost',
      'kind: correction bound full-charge what-if measure',
      'bound.verdict: inside too-loose',
      'couplings.evidence: maker caliper hex what-if',
      'againstCharge.verdict: inside outside cannot-tell',
      'againstScale.verdict: weighable too-small cannot-tell',
    ],
  ],
  ['oil', ['oilType.verdict: fits ask-maker not-given']],
  [
    'recovery',
    [
      'expected.basis: label-charge vapour-only liquid-present',
      'expected.recovered.verdict: as-labelled less-than-label more-than-label cannot-tell',
      'fits: yes no cannot-tell',
      'evacuation.regime: table-1 small-appliance vehicle vehicle-like',
      'evacuation.pressureClass: low-pressure medium-pressure high-pressure very-high-pressure cannot-tell',
      'cylinder.verdict: may-be-filled do-not-fill cannot-tell',
      'cylinder.limits.rule: eighty-percent filling-density not-full-at-131f gross-rating sixty-percent-of-gross',
      'cylinder.requalification.status: in-date due-this-month overdue',
    ],
  ],
  [
    'air-check',
    [
      'verdict: within-limit over-limit air-shown no-air-shown below-saturation cannot-tell',
      'state: below between at above liquid-full cannot-tell',
      'from: bubble dew contents',
      'limit.basis: published-cells saturation-plus-5-psi',
    ],
  ],
  [
    'contamination',
    [
      'verdict: as-expected too-high too-low cannot-tell',
      'state: below between at above liquid-full cannot-tell',
      'from: bubble dew contents',
      'explanations.cause: air other-refrigerant reading no-liquid shifted-blend',
    ],
  ],
  [
    'leak-test',
    [
      'standing.kind: pressure vacuum',
      'standing.verdict: no-leak-shown leak no-valid-test rises',
      'standing.limit.verdict: kept broken cannot-tell too-short-to-tell',
      'searching.methods.findsThisLoss: yes no cannot-tell',
      'searching.systemPressure: met not-met cannot-tell not-given',
      'searching.ambient: met not-met cannot-tell not-given',
      'yearly.againstNormal: below above cannot-tell',
      'federal.above: yes no cannot-tell',
      'federal.applies: no yes look-up',
    ],
  ],
  ['fractionation', ['verdict: top-up-reads-close recover-and-weigh-in cannot-tell']],
  [
    'evacuation',
    [
      'target.reached: yes no cannot-tell',
      'target.held: pass fail not-yet cannot-tell',
      'water.form: liquid ice',
      'water.boils: yes no cannot-tell',
      'rise.verdict: leaking wet wet-and-leaking levels-off-above-water tight-and-dry too-short-to-tell cannot-tell',
      'rise.moisture: liquid-water dissolved',
      'rise.limit.verdict: kept broken cannot-tell too-short-to-tell',
      'rise.shapes.shape: flat steady slowing-toward-air levelling-at-water levelling-at-water-and-steady levelling levelling-and-steady',
    ],
  ],
  [
    'charging',
    [
      'scale.verdict: fine-enough too-coarse',
      'hose.starts: empty vapour liquid',
      'hose.holds: empty vapour liquid',
      'flow: into-system back-into-source cannot-tell',
    ],
  ],
  [
    'cooling-check',
    [
      'danger.why: above-cut-out above-critical',
      'maker.high: below inside above cannot-tell',
      'maker.low: below inside above cannot-tell',
      'maker.vent: below inside above cannot-tell',
      'bands.high.verdict: in-every-table in-some-tables below-all above-all between-tables cannot-tell no-table',
      'bands.low.verdict: in-every-table in-some-tables below-all above-all between-tables cannot-tell no-table',
      'bands.vent.verdict: in-every-table in-some-tables below-all above-all between-tables cannot-tell no-table',
      'temperatures.verdict: below inside above cannot-tell',
      'air.coil: wet dry cannot-tell',
      'rest.state: below between at above liquid-full cannot-tell',
      'rest.from: bubble dew contents',
      'rest.test: above-least below-least cannot-tell no-published-row',
      'clutch.rows.opens: below inside above cannot-tell',
      'clutch.rows.closes: below inside above cannot-tell',
      'tables.status: fits other-condition no-row-for-this-temperature',
      'tables.high.reading: below inside above cannot-tell',
      'tables.low.reading: below inside above cannot-tell',
      'tables.vent.reading: below inside above cannot-tell',
    ],
  ],
  [
    'retrofit',
    [
      'decision.use: retrofit new',
      'decision.decision: acceptable-with-conditions unacceptable',
      'decision.mark: verified secondary inferred memory common-practice computed',
      'charge.formula.use: in-range out-of-range cannot-tell',
      'accumulator: replace may-stay cannot-tell not-given',
      'decisions.use: retrofit new',
      'decisions.decision: acceptable-with-conditions unacceptable',
      'decisions.mark: verified secondary inferred memory common-practice computed',
    ],
  ],
  [
    'simulate',
    [
      'machine.architecture: valve valve-receiver orifice-accumulator valve-receiver-variable stationary-orifice stationary-valve',
      'machine.highFitting: discharge liquid',
      'faults.fault: undercharge overcharge condenser-air evaporator-air restriction valve-stuck-open valve-stuck-closed compressor-leak air stroke-stuck-high stroke-stuck-low',
      'faults.setting: chargeNow condenserAir evaporatorAir restriction valveOpening compressorLeak airInside stroke',
      'choices: undercharge overcharge condenser-air evaporator-air restriction valve-stuck-open valve-stuck-closed compressor-leak air stroke-stuck-high stroke-stuck-low',
      'outcome.state: steady cycling high-pressure-trip low-pressure-trip iced dry',
      'outcome.by: thermostat low-pressure-switch',
      'outcome.remarks: liquid-at-compressor receiver-empty vapour-at-device accumulator-empty evaporator-dry',
      'readings.reading: suctionPressure dischargePressure liquidPressure suctionTemperature dischargeTemperature liquidTemperature deviceInletTemperature evaporatorOutletTemperature superheat subcooling ventTemperature condenserOutletAir',
      'performance.figure: capacity power heatTaken heatRejected shellLoss flow',
      'parts.part: compressorAndDischarge condenser receiver liquidLine evaporator accumulator suctionLine',
      'sound.outcome.state: steady cycling high-pressure-trip low-pressure-trip iced dry',
      'sound.outcome.by: thermostat low-pressure-switch',
      'sound.outcome.remarks: liquid-at-compressor receiver-empty vapour-at-device accumulator-empty evaporator-dry',
      'sound.parts.part: compressorAndDischarge condenser receiver liquidLine evaporator accumulator suctionLine',
      'sweep.fault: charge condenser-air evaporator-air restriction valve-opening compressor-leak air stroke',
      'sweep.unit: fraction pressureDifference',
      'sweep.rows.state: steady cycling high-pressure-trip low-pressure-trip iced dry',
    ],
  ],
]

const FIELDS: readonly (readonly [string, readonly string[]])[] = [
  ['table', ['columns: saturation density latent-heat glide']],
  [
    'diagnose',
    [
      'architecture: valve valve-receiver orifice-accumulator valve-receiver-variable stationary-orifice stationary-valve',
      'ruledOut: undercharge overcharge condenser-air evaporator-air restriction valve-stuck-open valve-stuck-closed compressor-leak air stroke-stuck-high stroke-stuck-low',
      'priors: usual equal',
    ],
  ],
  [
    'charge',
    [
      'want: correction full-charge',
      'tubeTemper: drawn annealed',
      'sections.tubeTemper: drawn annealed',
      'parts.old.tubeTemper: drawn annealed',
      'parts.new.tubeTemper: drawn annealed',
      'massUnit: lb oz g kg',
    ],
  ],
  [
    'oil',
    [
      'replaced: condenser evaporator drier accumulator hose compressor',
      'parts.part: condenser evaporator drier accumulator hose compressor',
      'compressorRule: drained-or-2-fl-oz-below-1 equal-to-drained drained-plus-1-fl-oz drained-in-bands-of-3-and-5-fl-oz drained-plus-20-ml drained-at-least-20-ml new-less-difference fixed-70-ml fixed-4-4-fl-oz fixed-207-ml new-less-70-ml',
      'leak: none slow sudden',
      'longHose: total-by-charge-five-cylinder total-by-charge-seven-cylinder extra-by-hose-length',
      'volumeUnit: fl-oz mL',
    ],
  ],
  [
    'recovery',
    ['equipmentMade: before-1993-11-15 from-1993-11-15', 'requalificationYears: 5 10 12'],
  ],
  [
    'leak-test',
    [
      'vacuumLimit: rise-1-inhg-in-5-min rise-2-inhg-in-5-min rise-5-mmhg-in-1-min stays-at-28-inhg-5-min stays-at-27.6-inhg-15-min settles-at-10-mbar stays-at-5-torr-2-h rise-500-micron-in-10-min',
      'method: electronic-4 electronic-7 electronic-14 tracer-gas-14 soap-film',
      'appliance: commercial-refrigeration industrial-process comfort-cooling',
    ],
  ],
  ['fractionation', ['escapes: vapour liquid']],
  [
    'evacuation',
    [
      'limit: rise-1-inhg-in-5-min rise-2-inhg-in-5-min rise-5-mmhg-in-1-min stays-at-28-inhg-5-min stays-at-27.6-inhg-15-min settles-at-10-mbar stays-at-5-torr-2-h rise-500-micron-in-10-min',
    ],
  ],
  [
    'charging',
    [
      'scale: under-source under-machine',
      'engine: off running',
      'side: high low',
      'judgeBy: weight subcooling superheat',
    ],
  ],
  [
    'cooling-check',
    ['air: recirculated outside', 'windows: open closed', 'engine: idle about-1000-rpm higher'],
  ],
]

describe('the words that are promised', () => {
  it.each(ANSWERS)('of an answer of %s', (name, words) => {
    // Patterns are named by their own table.
    const promised = answered(name).filter((line) => !line.startsWith('patterns: '))
    expect(promised).toEqual(words)
  })

  it.each(FIELDS)('of the fields of %s', (name, words) => {
    expect(asked(name)).toEqual(expect.arrayContaining([...words]))
  })

  it('of an answer of lesson', () => {
    const words = answered('lesson')
    expect(words).toEqual(
      expect.arrayContaining([
        'stage: predict buy revealed',
        'topic: both-low normal-pressures low-charge-suction high-head more-subcooling normal-superheat suction-normal sight-glass vent',
        'knowledge: known roughly',
        'supposed.cause: none undercharge overcharge condenser-air evaporator-air restriction valve-stuck-open valve-stuck-closed compressor-leak air stroke-stuck-high stroke-stuck-low',
        'suspected: none undercharge overcharge condenser-air evaporator-air restriction valve-stuck-open valve-stuck-closed compressor-leak air stroke-stuck-high stroke-stuck-low',
        'choices: none undercharge overcharge condenser-air evaporator-air restriction valve-stuck-open valve-stuck-closed compressor-leak air stroke-stuck-high stroke-stuck-low',
        'reveal.cause: none undercharge overcharge condenser-air evaporator-air restriction valve-stuck-open valve-stuck-closed compressor-leak air stroke-stuck-high stroke-stuck-low',
        'reveal.verdict: right same-class wrong',
        'reveal.predictions.gauge: lowSide highSide superheat subcooling vent',
        'reveal.predictions.predicted: up same down',
        'reveal.predictions.expected: up same down',
        'reveal.left.causes: none undercharge overcharge condenser-air evaporator-air restriction valve-stuck-open valve-stuck-closed compressor-leak air stroke-stuck-high stroke-stuck-low reading-or-test-wrong',
        'reveal.leftByAll.causes: none undercharge overcharge condenser-air evaporator-air restriction valve-stuck-open valve-stuck-closed compressor-leak air stroke-stuck-high stroke-stuck-low reading-or-test-wrong',
        'reveal.best: low-side high-side suction-line liquid-line device-inlet evaporator-outlet discharge-line vent condenser-air-out weighed-charge',
        'reveal.others.moves.vent: up same down',
        'reveal.others.reading: low-side high-side suction-line liquid-line device-inlet evaporator-outlet discharge-line vent condenser-air-out weighed-charge',
      ]),
    )
    // The case that is shown at its end is told as the step that simulates it tells it.
    for (const choice of answered('simulate').filter((line) =>
      /^(?:readings|parts|sweep)/u.test(line),
    )) {
      expect(words).toContain(`reveal.${choice}`)
    }
  })
})
