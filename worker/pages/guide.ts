import { raw } from 'hono/html'
import { GUIDES } from '../../shared/guides.ts'
import { type Html, layout } from './layout.ts'

/** A guide as a page, `/reference/guide/<name>`, or nothing where there is none of that name. */
export function guidePage(name: string): Html | undefined {
  const guide = GUIDES.find((entry) => entry.name === name)
  return guide && layout(guide.title, raw(`<main>\n${guide.html}\n</main>`))
}
