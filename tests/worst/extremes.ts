import type { Operation } from '../../shared/operation.ts'
import { operations } from '../../shared/operations.ts'
import { randomFrom } from '../../shared/random.ts'
import { refrigerants } from '../../shared/refrigerant/index.ts'
import { OFFER_IDS } from '../../shared/service/lesson/market.ts'
import { TOPIC_IDS } from '../../shared/service/lesson/topics.ts'
import { SWEEP_NAMES } from '../../shared/service/simulate/fields.ts'
import { MODEL_MACHINES } from '../../shared/service/simulate/machines.ts'
import { MICRON, simulateRise } from '../generate/rise-simulation.ts'

type Tree = Record<string, unknown>

const MOST_ITEMS = 50
const MOST_READINGS = 2_000
const MOST_HOSES = 20
const MOST_SUSPECTS = 12
const BLENDS = ['R-448A', 'R-407C', 'R-438A', 'R-422D', 'R-404A', 'R-410A', 'R-134a', 'R-744']

const times = <T>(count: number, make: (index: number) => T): readonly T[] =>
  Array.from({ length: count }, (_, index) => make(index))

/** No two alike, each with a band of its own: nothing can be solved once for all. */
const contents = (index: number, phase: string) => ({
  phase,
  temperature: `${70 + index / 4} ±${2 + index / 100} F`,
  pressure: `${320 + index} ±${5 + index / 100} psig`,
  ...(phase === 'two-phase' ? { quality: `${20 + index / 2} ±3 %` } : {}),
})
const space = (index: number) => ({
  innerDiameter: `${6 + index / 40} ±0.2 mm`,
  length: `${3 + index / 50} ±0.1 m`,
})
const coupling = (index: number) => ({
  spillVolume: `${1.5 + index / 100} ±0.5 mL`,
  airInclusion: `${1 + index / 100} mL`,
  partings: 1 + (index % 3),
})
const part = (index: number, phase: string) => ({
  old: { volume: `${700 + index} ±20 mL` },
  new: { volume: `${800 + index} ±20 mL` },
  ...contents(index, phase),
})

function charges(): readonly Tree[] {
  const base = { labelCharge: '12 kg', ambient: '20 °C', altitude: '1200 ft' }
  return BLENDS.flatMap((refrigerant) =>
    ['liquid', 'vapour', 'two-phase'].flatMap((phase) => {
      const each = (make: (index: number) => object) =>
        times(MOST_ITEMS, (index) => ({ ...make(index), ...contents(index, phase) }))
      const parted = { ...base, refrigerant, job: 'couplers-parted', sealed: true }
      const section = { ...base, refrigerant, job: 'section-opened', sealed: true }
      const parts = times(MOST_ITEMS, (index) => part(index, phase))
      const sections = each(space)
      return [
        { ...parted, couplingType: 'two-valve', couplings: each(coupling) },
        { ...section, sections },
        { ...section, sections: sections.slice(0, 1), parts: parts.slice(1) },
        { ...section, sections: sections.slice(0, 1), couplings: each(coupling).slice(1) },
        { ...base, refrigerant, job: 'system-opened', parts },
      ]
    }),
  )
}

function vacuums(): readonly Tree[] {
  const random = randomFrom(7)
  const truths = ['leaking', 'wet', 'wet-and-leaking', 'levels-off-above-water'] as const
  return truths.flatMap((truth) =>
    [MOST_READINGS, 200].map((count) => {
      const points = simulateRise(
        {
          truth,
          leak: truth.includes('leak') ? 12 : 0,
          drying: truth.includes('wet') ? 25 : 0,
          outgassing: 60,
          outgassingConstant: 8,
          refrigerant: truth === 'levels-off-above-water' ? 4_000 : 0,
          refrigerantConstant: 10,
          startMicron: 400,
          temperatureC: 20,
          minutes: count / 30,
          everyMinutes: 1 / 30,
          noise: 0.01,
        },
        random,
      )
      const rise = points.slice(0, MOST_READINGS).map(({ timeS, pressurePa }) => ({
        time: `${timeS} s`,
        pressure: `${(pressurePa / MICRON).toFixed(0)} ±5 micron`,
      }))
      const vacuumHoses = times(MOST_HOSES, (index) => ({
        bore: `${6 + index} ±0.2 mm`,
        length: `${1 + index} ±0.1 m`,
      }))
      return { temperature: '68 ±2 °F', rise, vacuumHoses, volume: '6 ±1 L', waterMass: '10 g' }
    }),
  )
}

const suspicions = (): readonly Tree[] =>
  BLENDS.flatMap((refrigerant) =>
    ['20 ±2 °C', '60 ±3 °C'].flatMap((temperature) =>
      [80, 180, 300].map((psig) => ({
        refrigerant,
        temperature,
        pressure: `${psig} ±8 psig`,
        suspects: names.filter((name) => name !== refrigerant).slice(0, MOST_SUSPECTS),
      })),
    ),
  )

const leaks = (): readonly Tree[] =>
  BLENDS.flatMap((refrigerant) =>
    ['vapour', 'liquid'].flatMap((escapes) =>
      ['1 %', '60 %', '99 %'].map((liquidShare) => ({
        refrigerant,
        escapes,
        temperature: '25 ±2 °C',
        lost: '95 ±2 %',
        liquidShare,
        startMass: '6 ±0.1 lb',
      })),
    ),
  )

const names = refrigerants().map(({ id }) => id)

/** Of every step at once, as far as an order takes it. */
function orders(): readonly Tree[] {
  const order = operations.find(({ name }) => name === 'work-order')?.example ?? {}
  const [rise] = vacuums()
  const { refrigerant: _, ...charge } = charges().find((charge) => 'couplings' in charge) ?? {}
  return BLENDS.flatMap((refrigerant) => [
    { ...order, refrigerant },
    { ...order, refrigerant, evacuation: rise },
    { ...order, refrigerant, evacuation: rise, couplings: charge.couplings },
    { ...order, refrigerant, evacuation: rise, charge: { couplings: charge.couplings } },
  ])
}

/** Two thousand rows less a few. */
const tables = (): readonly Tree[] =>
  BLENDS.flatMap((refrigerant) => [
    { refrigerant, from: '-40 °F', to: '80 °F', step: '0.0601 °F' },
    { refrigerant, from: '20 psig', to: '240 psig', step: '0.1101 psi' },
  ])

/** Each fault of each invented machine over its range, in usual weather and in such as hardly is. */
const sweeps = (): readonly Tree[] =>
  MODEL_MACHINES.flatMap(({ id }) =>
    SWEEP_NAMES.flatMap((sweep) =>
      [
        {},
        { ambient: '44 °C', returnAir: '12.5 °C', relativeHumidity: '50 %', compressorRpm: 2000 },
        { ambient: '13 °C', returnAir: '26 °C', relativeHumidity: '20 %', compressorRpm: 1400 },
        { ambient: '40 °C', returnAir: '32 °C', relativeHumidity: '60 %', compressorRpm: 3100 },
      ].map((weather) => ({ ...weather, modelMachine: id, sweep, sweepPoints: 60 })),
    ),
  )

/** Cases of every topic to their end, with everything bought. */
function ends(): readonly Tree[] {
  const random = randomFrom(7)
  const predictions = {
    lowSide: 'up',
    highSide: 'up',
    superheat: 'same',
    subcooling: 'same',
    vent: 'same',
  }
  return TOPIC_IDS.flatMap((topic) =>
    times(12, (index) => ({
      seed: Math.floor(random() * 2 ** 31),
      topic,
      knowledge: index % 2 === 0 ? 'known' : 'roughly',
      predictions,
      bought: [...OFFER_IDS],
      named: 'none',
    })),
  )
}

const MADE: Readonly<Record<string, () => readonly Tree[]>> = {
  table: tables,
  charge: charges,
  evacuation: vacuums,
  contamination: suspicions,
  fractionation: leaks,
  'work-order': orders,
  simulate: sweeps,
  lesson: ends,
}

/** Inputs made to be dear: every list full, no two states alike; and the example with each refrigerant. */
export const extremesOf = ({ name, example }: Operation): readonly Tree[] => [
  ...(MADE[name]?.() ?? []),
  ...('refrigerant' in example
    ? names.map((refrigerant): Tree => ({ ...example, refrigerant }))
    : []),
]
