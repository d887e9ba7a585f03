import { describe, expect, it } from 'vitest'
import data from '../../../data/service/card.json' with { type: 'json' }
import { changed, EXAMPLES, type Order, run, without } from './examples.ts'

const { crane, forwarder, groomer, loader } = EXAMPLES
const bare = without(
  groomer,
  'recovery',
  'evacuation',
  'leakTest',
  'record',
  'readings',
  'cooling',
  'charging',
)

/** Tasks of the card by their words, slots being whatever is written there; the longest first. */
const TASKS = Object.entries(data.tasks)
  .map(([id, { text }]) => ({
    id,
    text,
    is: new RegExp(
      `^${text
        .split(/\{\w+(?:\|\w+)?\}/u)
        .map((part) => part.replace(/[.*+?^${}()|[\]\\]/gu, '\\$&'))
        .join('.+')}$`,
      'u',
    ),
  }))
  .sort((a, b) => b.text.length - a.text.length)

/** "step: tasks" of a card; what a calculation says of itself is left out. */
const tasksOf = (order: Order) =>
  run(order).result.card.steps.map(({ id, lines }) => {
    const ids = lines.flatMap(({ text }) => TASKS.find(({ is }) => is.test(text))?.id ?? [])
    return `${id}: ${ids.join(' ')}`.trim()
  })

describe('the tasks on the card', () => {
  it('of a system that is opened', () => {
    expect(tasksOf(bare)).toEqual([
      'before: engine-off certificate at-rest-expected identified',
      'recover: hoses-purged stays-down came-out',
      'open: proved-empty cap-at-once',
      'replace: seals drier-last',
      'oil: oil-in',
      'leak-test: standing',
      'evacuate: vacuum held',
      'charge: scale went-in',
      'prove: joints read-engine caps-back',
    ])
  })
  it('of one whose cab is lifted off with it', () => {
    expect(tasksOf({ ...bare, cabOff: true })).toEqual([
      'before: engine-off secured certificate at-rest-expected identified',
      'recover: hoses-purged stays-down came-out',
      'open: proved-empty cap-at-once',
      'cab: all-off on-blocks',
      'replace: seals drier-last',
      'oil: oil-in',
      'leak-test: standing',
      'evacuate: vacuum held',
      'charge: scale went-in',
      'prove: joints read-engine caps-back',
    ])
  })
  it('of couplings that are parted under charge', () => {
    expect(tasksOf(without(loader, 'couplings'))).toEqual([
      'before: engine-off secured certificate at-rest-expected',
      'part: fixed-half hiss capped caliper',
      'cab: all-off on-blocks',
      'rejoin: faces by-hand',
      'charge:',
      'prove: couplings-checked read-engine caps-back',
    ])
  })
  it('of parted couplings with parts, tests and oil besides, in the order of the visit', () => {
    const steps = (more: Order) => run({ ...loader, ...more }).result.card.steps.map(({ id }) => id)
    const { parts, oil, evacuation, leakTest } = groomer
    expect(steps({ parts, oil, evacuation, leakTest, cabOff: false })).toEqual([
      ...['before', 'part', 'replace', 'oil', 'rejoin', 'leak-test', 'evacuate', 'charge', 'prove'],
    ])
    expect(steps({ evacuation, cabOff: true })).toEqual([
      ...['before', 'part', 'cab', 'rejoin', 'evacuate', 'charge', 'prove'],
    ])
    expect(steps({ leakTest, parts: [{ part: 'hose' }] })).toEqual(
      expect.arrayContaining(['replace', 'leak-test']),
    )
  })
  it('of a search for the cause', () => {
    expect(tasksOf(without(forwarder, 'readings'))).toEqual([
      'before: engine-off at-rest-expected',
      'measure: read-engine',
    ])
  })
  it('of a machine with high voltage in it', () => {
    expect(tasksOf(crane)).toEqual([
      'before: engine-off high-voltage certificate at-rest-expected identified',
      'recover:',
      'open: proved-empty cap-at-once',
      'replace: seals drier-last',
      'oil: oil-in',
      'leak-test: standing',
      'evacuate: vacuum held',
      'charge: scale went-in',
      'prove: joints read-electric caps-back',
    ])
  })
  it('of carbon dioxide', () => {
    expect(
      tasksOf({
        ...without(bare, 'existingOil', 'oilTotal', 'oil', 'parts'),
        refrigerant: 'R-744',
      }),
    ).toEqual([
      'before: engine-off certificate at-rest-expected',
      'recover: let-out',
      'open: proved-empty cap-at-once',
      'leak-test: standing',
      'evacuate: vacuum held',
      'charge: scale went-in',
      'prove: joints read-engine caps-back',
    ])
  })
  it('of a building', () => {
    expect(tasksOf(changed(bare, 'machine', { kind: 'stationary' }))).toEqual([
      'before: power-off certificate at-rest-expected identified',
      'recover: hoses-purged stays-down came-out',
      'open: proved-empty cap-at-once',
      'replace: seals drier-last',
      'oil: oil-in',
      'leak-test: standing',
      'evacuate: vacuum held',
      'charge: scale went-in',
      'prove: joints read-unit caps-back',
    ])
  })
})
