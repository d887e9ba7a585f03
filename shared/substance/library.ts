import r12 from '../../data/substances/R-12.json' with { type: 'json' }
import r13I1 from '../../data/substances/R-13I1.json' with { type: 'json' }
import r22 from '../../data/substances/R-22.json' with { type: 'json' }
import r32 from '../../data/substances/R-32.json' with { type: 'json' }
import r115 from '../../data/substances/R-115.json' with { type: 'json' }
import r124 from '../../data/substances/R-124.json' with { type: 'json' }
import r125 from '../../data/substances/R-125.json' with { type: 'json' }
import r134a from '../../data/substances/R-134a.json' with { type: 'json' }
import r142b from '../../data/substances/R-142b.json' with { type: 'json' }
import r143a from '../../data/substances/R-143a.json' with { type: 'json' }
import r152a from '../../data/substances/R-152a.json' with { type: 'json' }
import r218 from '../../data/substances/R-218.json' with { type: 'json' }
import r227ea from '../../data/substances/R-227ea.json' with { type: 'json' }
import r290 from '../../data/substances/R-290.json' with { type: 'json' }
import r600 from '../../data/substances/R-600.json' with { type: 'json' }
import r600a from '../../data/substances/R-600a.json' with { type: 'json' }
import r601a from '../../data/substances/R-601a.json' with { type: 'json' }
import r744 from '../../data/substances/R-744.json' with { type: 'json' }
import r1234yf from '../../data/substances/R-1234yf.json' with { type: 'json' }
import r1234zeE from '../../data/substances/R-1234ze(E).json' with { type: 'json' }
import r1270 from '../../data/substances/R-1270.json' with { type: 'json' }
import { CalcError } from '../errors.ts'
import type { HelmholtzModel } from './model.ts'
import { pureModel } from './pure.ts'
import type { SubstanceData } from './types.ts'

/** Every pure substance there is an equation for. */
export const SUBSTANCES: readonly SubstanceData[] = [
  r12,
  r13I1,
  r22,
  r32,
  r115,
  r124,
  r125,
  r134a,
  r142b,
  r143a,
  r152a,
  r218,
  r227ea,
  r290,
  r600,
  r600a,
  r601a,
  r744,
  r1234yf,
  r1234zeE,
  r1270,
]

const byId = new Map(SUBSTANCES.map((data) => [data.id, data]))
const models = new Map<string, HelmholtzModel>()

/** The data of one substance by its designation, such as 'R-134a'. */
export function substanceData(id: string): SubstanceData {
  const data = byId.get(id)
  if (data === undefined) {
    throw new CalcError('unknown-name', `There is no equation of state for '${id}'.`, {
      hint: `Known substances: ${[...byId.keys()].join(', ')}.`,
    })
  }
  return data
}

/** The Helmholtz model of one substance, built on first use and kept. */
export function substanceModel(id: string): HelmholtzModel {
  const known = models.get(id)
  if (known !== undefined) return known
  const model = pureModel(substanceData(id))
  models.set(id, model)
  return model
}
