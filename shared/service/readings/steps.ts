import type { Step } from '../../operation.ts'
import { absolutePressure, type Quantity } from '../../quantity/index.ts'
import type { Figures, Side } from './figures.ts'
import type { Measured } from './measured.ts'
import type { Difference } from './shown.ts'

/** How each figure came about, for a trainer to follow. */
export function readingsSteps(m: Measured, f: Figures, atRest: boolean): readonly Step[] {
  const blend = m.refrigerant.info.kind !== 'pure'
  if (atRest) return sideSteps('low side', f.low, m, blend ? 'dew' : undefined)
  return [
    ...sideSteps('low side', f.low, m, blend ? 'dew' : undefined),
    ...less('Superheat', 'suction-line temperature − dew temperature of the suction pressure', {
      gives: f.superheat,
      minuend: ['suction-line temperature', m.suctionTemperature],
      subtrahend: ['dew temperature', f.low?.dew?.shown],
    }),
    ...sideSteps('high side', f.high, m, blend ? 'bubble' : undefined),
    ...less('Subcooling', 'bubble temperature of the liquid pressure − liquid-line temperature', {
      gives: f.subcooling,
      minuend: ['bubble temperature', f.high?.bubble?.shown],
      subtrahend: ['liquid-line temperature', m.liquidTemperature],
    }),
    ...less(
      'Condensing over ambient',
      blend
        ? 'mean of bubble and dew temperature of the high side − air entering the condenser'
        : 'condensing temperature − air entering the condenser',
      {
        gives: f.condensingOverAmbient,
        minuend: ['condensing temperature', f.condensing?.shown],
        subtrahend: ['air entering the condenser', m.ambient],
      },
    ),
    ...ratioStep(m, f),
  ]
}

type Term = readonly [string, Quantity | undefined]

function less(
  what: string,
  formula: string,
  {
    gives,
    minuend,
    subtrahend,
  }: { gives: Difference | undefined; minuend: Term; subtrahend: Term },
): readonly Step[] {
  const [first, second] = [minuend[1], subtrahend[1]]
  if (!gives || !first || !second) return []
  return [
    {
      what,
      formula,
      values: { [minuend[0]]: first, [subtrahend[0]]: second },
      gives: gives.shown,
    },
  ]
}

function sideSteps(
  name: string,
  side: Side | undefined,
  m: Measured,
  line: 'bubble' | 'dew' | undefined,
): readonly Step[] {
  if (!side) return []
  const { absolute } = side
  const gauge: readonly Step[] =
    side.reading.kind === 'absolutePressure'
      ? []
      : [
          {
            what: `Absolute pressure of the ${name}`,
            formula: 'gauge reading + barometric pressure',
            values: {
              'gauge reading': side.reading,
              'barometric pressure': m.place.air,
            },
            gives: absolute,
          },
        ]
  const saturated = (line === 'bubble' ? side.bubble : side.dew)?.shown
  if (!saturated) return gauge
  return [
    ...gauge,
    {
      what: `Saturation temperature of the ${name}`,
      formula: `${m.refrigerant.info.id}, ${line ? `${line} line` : 'saturation line'}, at this absolute pressure`,
      values: { 'absolute pressure': absolute },
      gives: saturated,
    },
  ]
}

function ratioStep(m: Measured, f: Figures): readonly Step[] {
  const discharge = f.pressureDifference && f.low && f.pressureDifference.si + f.low.absolute.si
  if (!f.ratio || !f.low || discharge === undefined) return []
  return [
    {
      what: 'Compression ratio',
      formula: m.dischargePressure
        ? 'absolute discharge pressure ÷ absolute suction pressure'
        : 'absolute liquid pressure ÷ absolute suction pressure (no discharge pressure given)',
      values: {
        'high side': absolutePressure(discharge),
        'low side': absolutePressure(f.low.absolute.si),
      },
      gives: Number(f.ratio.si.toFixed(2)),
    },
  ]
}
