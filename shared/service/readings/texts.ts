import data from '../../../data/service/readings.json' with { type: 'json' }

/** Every sentence of this step: they are edited in `data/service/readings.json`. */
export const TEXTS = data
