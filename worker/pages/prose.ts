import { html } from 'hono/html'
import type { Html } from './layout.ts'

/** A description as the document has it: paragraphs, and lists of lines that begin with a dash. */
export function prose(text: string): readonly Html[] {
  return text
    .split(/\n{2,}/u)
    .filter((block) => block.trim() !== '')
    .map((block) => {
      const lines = block.split('\n')
      if (!lines.every((line) => line.startsWith('- '))) return html`<p>${block}</p>`
      return html`<ul>${lines.map((line) => html`<li>${line.slice(2)}</li>`)}</ul>`
    })
}
