import fc from 'fast-check'

// A change is judged by the cases that it was judged by before; FUZZ_SEED draws others.
fc.configureGlobal({
  ...fc.readConfigureGlobal(),
  seed: Number(process.env.FUZZ_SEED ?? 20261127),
})
