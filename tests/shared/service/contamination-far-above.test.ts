import { describe, expect, it } from 'vitest'
import { contamination } from '../../../shared/service/contamination.ts'

describe('a pressure far above saturation', () => {
  it('first of all may be that of a container full of liquid', () => {
    const answer = contamination.run({
      refrigerant: 'R-134a',
      pressure: '300 psig',
      temperature: '80 °F',
    })
    expect(answer.result.whatToDo[0]?.id).toBe('far-above')
    expect(answer.cautions.map(({ id }) => id)).toContain('full-cylinder')
    const less = contamination.run({
      refrigerant: 'R-134a',
      pressure: '108 psig',
      temperature: '80 °F',
    })
    expect(less.result.whatToDo.map(({ id }) => id)).not.toContain('far-above')
  })
})
