import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { hidesLetters, jsonText, visible, visibleAll } from '../../shared/visible.ts'

describe('a text as it can be printed', () => {
  it('has what acts on a terminal or turns the direction written out, and all else as it is', () => {
    expect(visible('a\u001B[31mb\u0007\u009B\u202Ec\u2066')).toBe(
      'a\\u001b[31mb\\u0007\\u009b\\u202ec\\u2066',
    )
    expect(visible('52 °F\t±2\nÄ冷媒 e\u0301')).toBe('52 °F\t±2\nÄ冷媒 e\u0301')
  })

  it('is made of every text in plain data', () => {
    expect(visibleAll({ 'a\u0007': ['\u001B', 5, true, { b: '\u007F' }] })).toEqual({
      'a\\u0007': ['\\u001b', 5, true, { b: '\\u007f' }],
    })
  })

  it('is as JSON the same value, whatever the value is', () => {
    fc.assert(
      fc.property(fc.jsonValue({ stringUnit: 'binary' }), (value) => {
        const text = jsonText(value)
        expect(JSON.parse(text)).toEqual(JSON.parse(JSON.stringify(value)))
        expect(visible(text)).toBe(text)
        if (!hidesLetters(JSON.stringify(value))) expect(jsonText(value, false)).toBe(text)
      }),
    )
  })
})
