import { answerText } from '../shared/answer/answer-text.ts'
import { fieldsOf } from '../shared/input/index.ts'
import type { Operation } from '../shared/operation.ts'
import { refrigerant } from '../shared/refrigerant/index.ts'
import { hidesLetters, printable } from '../shared/visible.ts'
import { inputFromQuery } from './query.ts'

/** Saturation by a query: `GET /v1/refrigerants/<id>/saturation?pressure=32 psig`. */
export interface SaturationQuery {
  /** The answer as JSON. @throws {CalcError} */
  answer(id: string, query: Readonly<Record<string, readonly string[]>>): string
}

export function saturationQuery(saturation: Operation): SaturationQuery {
  const fields = fieldsOf(saturation).filter(({ name }) => name !== 'refrigerant')
  return {
    answer(name, query) {
      const { id } = refrigerant(name).info
      const input = { ...inputFromQuery(fields, query), refrigerant: id }
      const hides = Object.values(query).some((values) => values.some(hidesLetters))
      return printable(answerText(saturation, input), hides)
    },
  }
}

const ADDRESS = /^\/v1\/refrigerants\/(\w[\w.-]{0,39})\/saturation(?:\?([\w.%&=+-]*))?$/u

/** Refrigerant and query of such an address; nothing where it is another, or spelt in a way that needs care. */
export function askedOf(address: string): Parameters<SaturationQuery['answer']> | undefined {
  const match = ADDRESS.exec(address)
  if (!match) return undefined
  const [, id = '', text = ''] = match
  const query: Record<string, string[]> = {}
  try {
    for (const pair of text.split('&').filter((each) => each !== '')) {
      const [name = '', value = '', ...more] = pair.split('=').map(decoded)
      if (more.length > 0 || !/^\w+$/u.test(name) || name in {}) return undefined
      const before = query[name]
      if (before) before.push(value)
      else query[name] = [value]
    }
  } catch {
    return undefined
  }
  return [id, query]
}

const decoded = (text: string) => decodeURIComponent(text.replaceAll('+', ' '))
