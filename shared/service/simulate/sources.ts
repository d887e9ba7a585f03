import modelData from '../../../data/service/machines.json' with { type: 'json' }
import data from '../../../data/service/simulate.json' with { type: 'json' }
import { sourceTable } from '../../source-table.ts'
import type { Source } from '../../sources.ts'

const sourceOf = sourceTable(data.sources)
const modelSource = sourceTable(modelData.sources)

/** Behind every figure of the machine model: its card, and what its machines are. */
export const modelSources = (): readonly Source[] => [
  sourceOf('machine-model'),
  ...(Object.keys(modelData.sources) as (keyof typeof modelData.sources)[]).map(modelSource),
]

/** Behind the size that a severity stands for. */
export const severitySource = (): Source => sourceOf('fault-sizes-assumed')
