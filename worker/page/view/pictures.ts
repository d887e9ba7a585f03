import { html, nothing, type TemplateResult } from 'lit-html'
import { diagramsOf, type KindName } from '../../../shared/diagram/index.ts'
import { isDrawing, pictureNow } from '../compute/compute.ts'
import { readKept, writeKept } from '../kept.ts'
import { isOperationName } from '../operations.ts'
import { redraw } from '../redraw.ts'

const OPEN = 'pictures'
/** Kinds that somebody wants to see, remembered on the device. */
let open: readonly string[] = readKept(OPEN, [])

/** The pictures of an answer, drawn only where somebody opened them. */
export function picturesView(operation: string, input: unknown): TemplateResult | typeof nothing {
  if (!isOperationName(operation)) return nothing
  return html`${diagramsOf(operation).map(({ kind, summary }) => {
    const toggled = (event: Event) => {
      const now = (event.target as HTMLDetailsElement).open
      if (now === open.includes(kind)) return
      open = now ? [...open, kind] : open.filter((entry) => entry !== kind)
      writeKept(OPEN, open)
      redraw()
    }
    return html`<details class="fold picture" .open=${open.includes(kind)} @toggle=${toggled}>
      <summary>Picture: ${summary.charAt(0).toLowerCase() + summary.slice(1)}</summary>
      ${open.includes(kind) ? pictureView(pictureNow(operation, kind, input, widthNow()), isDrawing(operation, kind)) : nothing}
    </details>`
  })}`
}

/** A picture that stands open; nothing where there is nothing to draw. `about` as for `pictureNow`. */
export function figureView(
  operation: string,
  kind: KindName,
  input: unknown,
  width: number,
  about?: string,
): TemplateResult | typeof nothing {
  const text = isOperationName(operation)
    ? pictureNow(operation, kind, input, width, about)
    : undefined
  return text === undefined ? nothing : html`<figure class="drawn">${nodeOf(text)}</figure>`
}

/** Steps of 40 px: a window that is dragged asks for no picture with each pixel. */
const widthNow = () => {
  const told = document.querySelector('.told')?.clientWidth ?? 640
  return Math.min(960, Math.max(320, Math.floor((told - 48) / 40) * 40))
}

/** Pictures that are kept as nodes, so that a letter elsewhere draws none of them anew. */
const MOST_KEPT = 6
const made = new Map<string, Node>()

function pictureView(text: string | undefined, drawing: boolean): TemplateResult {
  if (text === undefined) {
    return html`<p class="empty">${drawing ? 'Drawing …' : 'There is nothing to draw yet.'}</p>`
  }
  return html`<div class="drawn">${nodeOf(text)}</div>`
}

/** Our own pictures, read as XML: nothing in them can run, and no text becomes markup of the page. */
function nodeOf(text: string): Node {
  const before = made.get(text)
  if (before) return before
  if (made.size >= MOST_KEPT) made.clear()
  const parsed = new DOMParser().parseFromString(text, 'image/svg+xml').documentElement
  const node = document.importNode(parsed, true)
  made.set(text, node)
  return node
}
