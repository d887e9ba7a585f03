import data from '../../data/page/teach.json' with { type: 'json' }

/** What the teaching view says besides the answers: edited in `data/page/teach.json`. */
export const TEACHING = data
