import type { Command } from 'commander'
import { type RefrigerantInfo, refrigerant, refrigerants } from '../../shared/refrigerant/index.ts'
import { MARKS } from '../../shared/sources.ts'
import { EXIT, type ExitStatus } from '../exit.ts'
import { gridLines } from '../render/grid.ts'
import { inkOf } from '../render/ink.ts'
import type { Page } from '../render/pairs.ts'
import { treeLines } from '../render/tree.ts'
import { hanging } from '../render/wrap.ts'
import type { Streams } from '../streams.ts'

/** `refrigerants`: what can be named in a calculation; `refrigerants R-134a`: what is known of one. */
export function refrigerantsCommand(
  program: Command,
  streams: Streams,
  done: (status: ExitStatus) => void,
): Command {
  return program
    .command('refrigerants')
    .summary('List the refrigerants, or show one')
    .description(
      'Lists the refrigerants that the calculations know, or shows what is known of one: composition, safety class, warming and ozone potential, usual oils, sources.',
    )
    .argument('[name]', 'Designation or another name: R-134a, 134a, propane')
    .option('--json', 'Print exactly one JSON value')
    .addHelpText('after', '\nExample:\n  chargewright refrigerants R-1234yf')
    .action((name: string | undefined, options: { json?: boolean }) => {
      const page: Page = { ink: inkOf(streams.color.out), width: streams.width, precise: false }
      if (name === undefined) {
        streams.out(options.json ? json(refrigerants()) : listText(refrigerants(), page))
      } else {
        const { info } = refrigerant(name)
        streams.out(options.json ? json(info) : detailText(info, page))
      }
      done(EXIT.answered)
    })
}

const json = (value: unknown) => `${JSON.stringify(value)}\n`

function listText(list: readonly RefrigerantInfo[], page: Page): string {
  const rows = list.map(({ id, kind, safetyClass, odp, gwp, name }) => ({
    refrigerant: id,
    kind,
    class: safetyClass.value,
    odp: odp.value,
    gwp: gwp.map((entry) => potential(entry)).at(-1) ?? 'not known',
    name: name.length > 40 ? `${name.slice(0, 39)}…` : name,
  }))
  const narrow = rows.map(({ name, ...row }) => row)
  const lines = gridLines(rows, 0, page) ?? gridLines(narrow, 0, page)
  return `${(lines ?? list.map(({ id }) => id)).join('\n')}\n`
}

const potential = ({ value, below, report }: RefrigerantInfo['gwp'][number]) =>
  `${below ? 'below ' : ''}${value} (${report})`

function detailText(info: RefrigerantInfo, page: Page): string {
  const figures = {
    kind: info.kind,
    composition: info.composition
      .map(
        ({ substance, massFraction }) =>
          `${substance} ${Number((massFraction * 100).toFixed(3))} %`,
      )
      .join(', '),
    safetyClass: `${info.safetyClass.value} (ASHRAE 34)`,
    odp: info.odp.value,
    gwp: info.gwp.map(potential).join(', '),
    alsoCalled: info.aliases.join(', '),
  }
  const oils = info.oils.map(({ oil, use }) => `${oil}: ${use}`)
  const burning = info.flammability.map(
    ({ quantity, value, unit }) => `${quantity}: ${value} ${unit}`,
  )
  const sources = Object.values(info.sources).flatMap(({ mark, title, url }) =>
    hanging(
      `  ${page.ink.quiet(mark.replace('-', ' '))}`,
      url === undefined ? title : `${title}; ${url}`,
      19,
      page.width,
    ),
  )
  const blocks = [
    [page.ink.title(`${info.id}  ${info.name}`)],
    treeLines({ ...figures, oils, flammability: burning, notes: info.notes }, 2, page),
    [page.ink.heading('Sources'), ...sources],
    marksUsed(info).flatMap((mark) =>
      hanging('', page.ink.quiet(`${mark.replace('-', ' ')}: ${MARKS[mark]}`), 2, page.width),
    ),
  ]
  return `${blocks
    .filter((lines) => lines.length > 0)
    .map((lines) => lines.join('\n'))
    .join('\n\n')}\n`
}

const marksUsed = (info: RefrigerantInfo) =>
  [...new Set(Object.values(info.sources).map(({ mark }) => mark))].filter(
    (mark) => mark !== 'verified',
  )
