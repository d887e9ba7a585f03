import type { RefrigerantInfo } from '../../shared/refrigerant/index.ts'
import { MARKS } from '../../shared/sources.ts'
import { gridLines } from './grid.ts'
import type { Page } from './pairs.ts'
import { treeLines } from './tree.ts'
import { hanging } from './wrap.ts'

/** All refrigerants, a line each. */
export function listText(list: readonly RefrigerantInfo[], page: Page): string {
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

/** What is known of one refrigerant. */
export function detailText(info: RefrigerantInfo, page: Page): string {
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
