import { describe, expect, it } from 'vitest'
import { SUBSTANCES, substanceModel } from '../../../shared/substance/library.ts'
import { stateAt } from '../../../shared/substance/state.ts'

describe.each(SUBSTANCES)('the critical point of $id', ({ id, critical }) => {
  it('is where the equation is nearly flat in density', () => {
    const model = substanceModel(id)
    const { dpdRho } = stateAt(model, critical.temperatureK, critical.densityMolPerM3)
    expect(Math.abs(dpdRho / (model.gasConstant * critical.temperatureK))).toBeLessThan(5e-4)
  })
})
