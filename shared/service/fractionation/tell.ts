import data from '../../../data/service/fractionation.json' with { type: 'json' }
import type { Step, Warning } from '../../operation.ts'
import { fraction, type Quantity, temperatureDifference } from '../../quantity/index.ts'
import type { Refrigerant } from '../../refrigerant/index.ts'
import type { TopUp } from './top-up.ts'
import type { Leak } from './work-out.ts'

const READS: Readonly<Record<TopUp, string>> = {
  'top-up-reads-close': 'reads close to the fresh blend',
  'recover-and-weigh-in': 'does not read like the fresh blend',
  'cannot-tell': 'cannot tell whether it reads like the fresh blend',
}

/** Rise of the burning share in what escapes that is worth a word. */
const BURNING_RISE = 1.05

/** How the compositions came about. */
export function stepsOf(
  r: Refrigerant,
  input: {
    readonly temperature: Quantity<'temperature'>
    readonly lost: Quantity<'fraction'>
    readonly escapes: 'vapour' | 'liquid'
  },
  leak: Leak,
  share: number,
  verdict: TopUp,
): readonly Step[] {
  const { temperature, lost, escapes } = input
  const composition = (masses: readonly number[]) =>
    r.info.composition
      .map(({ substance }, i) => `${substance} ${(100 * (masses[i] ?? 0)).toFixed(1)} %`)
      .join(', ')
  return [
    {
      what: `Let ${escapes} out`,
      formula: `change of each component = −(its share in the ${escapes}) × mass let out, liquid and vapour in equilibrium at every step`,
      values: {
        'fresh blend': composition(leak.fresh),
        temperature,
        'liquid share at the start': fraction(share),
        'mass let out': lost,
      },
      gives: composition(leak.left.masses),
    },
    {
      what: 'What got out',
      formula: '(fresh − (1 − lost) × left) ÷ lost, for each component',
      values: { lost },
      gives: composition(leak.escaped.masses),
    },
    {
      what: 'Topped up',
      formula: '(1 − lost) × left + lost × fresh, for each component',
      values: { lost },
      gives: composition(leak.toppedUp.masses),
    },
    {
      what: 'How far the chart is off, topped up',
      formula:
        'saturation temperature of the topped-up charge less that of the fresh blend, at one pressure: the larger of bubble and dew',
      values: {
        bubble: temperatureDifference(leak.toppedUp.boils.bubbleShiftK),
        dew: temperatureDifference(leak.toppedUp.boils.dewShiftK),
        'counts as close below': temperatureDifference(data.closeK),
      },
      gives: READS[verdict],
    },
  ]
}

/** What escapes may burn although the blend does not: its share is told, not whether it burns. */
export function burningWarnings(leak: Leak, substances: readonly string[]): readonly Warning[] {
  const burning = (masses: readonly number[]) =>
    masses.reduce((sum, w, i) => sum + (data.flammable.includes(substances[i] ?? '') ? w : 0), 0)
  const [fresh, out, left] = [leak.fresh, leak.escaped.masses, leak.left.masses].map(burning)
  const most = Math.max(out ?? 0, left ?? 0)
  if (!(most > BURNING_RISE * (fresh ?? 0))) return []
  const where = most === out ? 'What gets out' : 'What is left'
  return [
    {
      code: 'burning-share-rises',
      message: `${where} holds ${(100 * most).toFixed(0)} % of components that burn by themselves, against ${(100 * (fresh ?? 0)).toFixed(0)} % in the fresh blend. Whether that mixture burns is not worked out here: keep ignition sources away.`,
    },
  ]
}
