import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { parseJson } from '../../../shared/input/index.ts'

/** The name that is refused; undefined where none is. */
function refused(text: string): string | undefined {
  try {
    parseJson(text)
    return undefined
  } catch (error) {
    return (error as Error).message
  }
}

describe('JSON with a name twice', () => {
  it('is refused at any depth, however the name is spelt', () => {
    for (const text of [
      '{"a":1,"a":1}',
      '{"a":1,"b":":","a":2}',
      '{"a\\"":1,"a\\"":2}',
      '{"a":"\\\\","a":":"}',
      '{"a":1,"\\u0061":2}',
      '{"a":{"b":1,"b":2}}',
      '{"a":[{"b":1,"b":2}]}',
      '[{"b":1,"b":2}]',
      '{"__proto__":1,"__proto__":2}',
      '{"1":1,"1":2}',
    ]) {
      expect(refused(text), text).toMatch(/is given twice in one object/u)
    }
  })

  it('is not seen in one that has each once, colons and quotation marks in its texts', () => {
    for (const text of [
      '{}',
      '{"a":":","b":"\\":\\"","c:":"\\\\"}',
      '{"a":{"a":{"a":1}},"b":[{"a":1},{"a":2}]}',
      '["a","a"]',
      '"a:a"',
    ]) {
      expect(parseJson(text)).toEqual(JSON.parse(text))
    }
    fc.assert(
      fc.property(fc.jsonValue(), (value) => {
        const text = JSON.stringify(value)
        expect(parseJson(text)).toEqual(JSON.parse(text))
      }),
    )
  })

  it('is found in a flat object wherever it stands', () => {
    fc.assert(
      fc.property(
        fc.dictionary(fc.string(), fc.string(), { minKeys: 1 }),
        fc.nat(),
        (given, at) => {
          const pairs = Object.entries(given).map((pair) =>
            pair.map((part) => JSON.stringify(part)).join(':'),
          )
          const twice = [...pairs, pairs[at % pairs.length]].join(',')
          expect(refused(`{${twice}}`)).toMatch(/is given twice/u)
          expect(refused(`{${pairs.join(',')}}`)).toBeUndefined()
        },
      ),
    )
  })

  it('does not run out of anything in a deep text', () => {
    const deep = 20_000
    expect(refused(`${'['.repeat(deep)}{"a":1,"a":2}${']'.repeat(deep)}`)).toMatch(/given twice/u)
  })
})
