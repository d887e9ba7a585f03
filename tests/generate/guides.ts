import { readdirSync, readFileSync, writeFileSync } from 'node:fs'
import { Marked } from 'marked'
import type { Guide } from '../../shared/guides.ts'

const FOLDER = new URL('../../data/guide/', import.meta.url)
export const PAGES_FILE = new URL('pages.json', FOLDER)

/** Every `data/guide/*.md` as HTML: rendered here, so that the edge carries no renderer. */
export function guides(): readonly Guide[] {
  return readdirSync(FOLDER)
    .filter((file) => file.endsWith('.md'))
    .sort()
    .map((file) =>
      guideOf(file.slice(0, -'.md'.length), readFileSync(new URL(file, FOLDER), 'utf8')),
    )
}

function guideOf(name: string, markdown: string): Guide {
  const title = /^# (.+)$/mu.exec(markdown)?.[1]
  if (title === undefined) throw new Error(`${name}.md has no title: it begins with "# ".`)
  return { name, title, html: renderer().parse(markdown, { async: false }).trim() }
}

/** Headings can be linked to; what is wider than a phone is scrolled by itself, by keyboard too. */
function renderer(): Marked {
  const taken = new Set<string>()
  return new Marked({
    renderer: {
      heading({ tokens, depth, text }) {
        const id = text
          .toLowerCase()
          .replace(/[^a-z0-9]+/gu, '-')
          .replace(/^-|-$/gu, '')
        if (taken.has(id)) throw new Error(`Two headings are called "${text}".`)
        taken.add(id)
        return `<h${depth} id="${id}">${this.parser.parseInline(tokens)}</h${depth}>\n`
      },
    },
    hooks: {
      postprocess: (html) =>
        html
          .replace(
            /<table>/gu,
            '<div class="scroll" role="region" aria-label="Table" tabindex="0"><table>',
          )
          .replace(/<\/table>/gu, '</table></div>')
          .replace(/<th>/gu, '<th scope="col">')
          .replace(/<pre>/gu, '<pre tabindex="0">'),
    },
  })
}

/** What the file holds. */
export const pagesText = (): string => `${JSON.stringify(guides(), null, 2)}\n`

if (import.meta.main) writeFileSync(PAGES_FILE, pagesText())
