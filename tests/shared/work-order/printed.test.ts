import { describe, expect, it } from 'vitest'
import { workOrderMarkdown } from '../../../shared/work-order/markdown.ts'
import { sheet } from '../../../shared/work-order/sheet.ts'
import { EXAMPLES, run } from './examples.ts'

const { groomer, loader } = EXAMPLES

describe.each(Object.entries(EXAMPLES))('the sheet of the %s', (_, order) => {
  const answer = run(order)
  const printed = workOrderMarkdown(answer)

  it('has one title, the card, and behind it cautions, first aid and the steps in order', () => {
    expect(printed.match(/^# /gmu)).toHaveLength(1)
    const headings = [...printed.matchAll(/^## (.*)$/gmu)].map(([, text]) => text ?? '')
    const { card, steps } = answer.result
    expect(headings.slice(0, card.steps.length + 3)).toEqual([
      'Danger',
      ...card.steps.map(({ title }, index) => `${index + 1} ${title}`),
      'Records',
      'Appendix',
    ])
    const behind = headings.slice(card.steps.length + 3)
    expect(behind[0]).toBe('Cautions')
    const aid = answer.cautions.some(({ id }) => id.startsWith('first-aid'))
    expect(behind.includes('First aid')).toBe(aid)
    const numbered = behind.filter((text) => /^\d+\. /u.test(text))
    expect(numbered).toHaveLength(steps.length)
    steps.forEach(({ title }, index) => {
      expect(numbered[index]).toMatch(new RegExp(`^${index + 1}\\. ${title} \\(`, 'u'))
    })
    expect(headings).toContain('To be written down')
    expect(headings.at(-1)).toBe('Sources')
  })

  it('says nothing twice, on the card or behind it', () => {
    const items = [...printed.matchAll(/^(?:- (?:\[[ x]\] )?|\| )(.*)$/gmu)].map(
      ([, text]) => text ?? '',
    )
    const long = items.filter((text) => text.length > 30 && !text.startsWith('['))
    expect(long.filter((text, at) => long.indexOf(text) !== at)).toEqual([])
    expect(printed.match(/Rules: /gu)?.length ?? 0).toBeLessThanOrEqual(1)
  })

  it('has every caution in whole behind the card', () => {
    for (const { text } of answer.cautions) {
      expect(printed.split('## Appendix')[1]).toContain(text)
    }
  })

  it('says at the top that it is a demonstration', () => {
    expect(printed).toContain('> Demonstration: the machine is invented')
  })

  it('ticks what is written down and leaves a box for the rest', () => {
    const { card, checklist, steps } = answer.result
    const boxes = [...card.steps.flatMap(({ lines }) => lines), ...card.records].filter(
      ({ ticked }) => ticked !== undefined,
    )
    const onCard = boxes.filter(({ ticked }) => ticked).length
    const filled = checklist.filter((entry) => entry.filled).length
    expect(printed.match(/^- \[x\] /gmu)).toHaveLength(filled + onCard)
    const open = steps.flatMap(({ instructions, missing }) => [...instructions, ...missing]).length
    expect(printed.match(/^- \[ \] /gmu)).toHaveLength(
      open + checklist.length - filled + boxes.length - onCard,
    )
  })

  it('refers only to sources that it lists', () => {
    const listed = new Set([...printed.matchAll(/^- \[(\d+)\] /gmu)].map(([, number]) => number))
    expect(listed.size).toBe(answer.sources.length)
    const referred = [...printed.matchAll(/^- (?!\[\d).* \[(\d+)\]$/gmu)].map(
      ([, number]) => number,
    )
    expect(referred.length).toBeGreaterThan(3)
    for (const number of referred) expect(listed).toContain(number)
  })

  it('prints every figure, and nothing undefined', () => {
    for (const { figures } of answer.result.steps) {
      for (const { value } of figures) {
        if (typeof value !== 'object') continue
        expect(printed).toContain(String(value.value))
      }
    }
    expect(printed).not.toMatch(/undefined|NaN|\[object|null/u)
  })

  it('prints every block of the sheet', () => {
    const blocks = sheet(answer)
    expect(printed.split('\n\n').length).toBeGreaterThanOrEqual(blocks.length)
    for (const block of blocks) {
      if (block.kind !== 'list') continue
      for (const { text } of block.items) expect(text.trim()).not.toBe('')
    }
  })
})

describe('what users wrote', () => {
  const nasty = 'A | B\n# <script>alert(1)</script> [x](http://e.example) `c` *b* ![i](j) &lt;'
  const answer = run({
    ...loader,
    story: nasty,
    machine: { ...(loader.machine as object), name: '1. | # Loader' },
    couplings: [
      { name: '- [ ] | x', couplingType: 'two-valve', spillVolume: '5 mL', phase: 'vapour' },
    ],
  })
  const printed = workOrderMarkdown(answer)

  it('cannot change the layout of the sheet', () => {
    expect(printed.match(/^# /gmu)).toHaveLength(1)
    expect(printed).not.toContain('<script>')
    expect(printed).not.toMatch(/[^\\]\]\(http/u)
    for (const row of printed.split('\n').filter((text) => text.startsWith('| '))) {
      expect(row.replace(/\\\|/gu, '').match(/\|/gu), row).toHaveLength(3)
    }
  })
})

it('prints what was refused with the place on the order', () => {
  const printed = workOrderMarkdown(
    run({ ...groomer, recovery: { ...(groomer.recovery as object), cylinder: 'disposable' } }),
  )
  expect(printed).toContain('(refused)')
  expect(printed).toContain('(at recovery.cylinder)')
})
