/**
 * How well the diagnosis does on the machine model itself, its machines drawn anew: an upper bound,
 * since it inverts the model that makes the readings. A plant of another structure tells more.
 *
 *     npm run evaluate                              180 machines a level
 *     npm run evaluate -- --structure foreign       the same on a plant of another structure
 *     npm run evaluate -- --count 60 --seed 7 --level model --priors usual
 */
import { parseArgs } from 'node:util'
import { type Evaluated, evaluated } from './cases.ts'
import { LEVELS, type Level, SETS, type SetName } from './plant.ts'
import { report } from './report.ts'
import { stepsReport } from './steps-report.ts'

const { values } = parseArgs({
  options: {
    count: { type: 'string', default: '180' },
    seed: { type: 'string', default: '404' },
    level: { type: 'string', multiple: true, default: [...LEVELS] },
    priors: { type: 'string', default: 'equal' },
    structure: { type: 'string', default: 'own' },
    set: { type: 'string', multiple: true, default: Object.keys(SETS) },
    steps: { type: 'string', default: '36' },
    failures: { type: 'string', default: '12' },
  },
})

const list: Evaluated[] = []
for (const level of values.level as Level[]) {
  const started = Date.now()
  for (const each of evaluated({
    seed: Number(values.seed),
    count: Number(values.count),
    level,
    priors: values.priors === 'usual' ? 'usual' : 'equal',
    structure: values.structure === 'foreign' ? 'foreign' : 'own',
    sets: values.set as SetName[],
  })) {
    list.push(each)
  }
  console.error(`${level}: ${Math.round((Date.now() - started) / 1000)} s`)
}
console.log(report(list, Number(values.failures)))
if (Number(values.steps) > 0 && values.structure !== 'foreign') {
  console.log(stepsReport(Number(values.steps), Number(values.seed)))
}
