import { html, raw } from 'hono/html'
import { GUIDES } from '../../shared/guides.ts'
import type { Document } from '../openapi/document.ts'
import { isObject, type Json, type JsonObject } from '../openapi/schemas.ts'
import { curl, curlLines } from './curl.ts'
import { type Html, layout } from './layout.ts'
import { PROBLEM_CODES, problemTitle } from './problems.ts'
import { prose } from './prose.ts'
import { type FieldRow, fieldRows, isQuantity, kindOf, list } from './schema-rows.ts'

const object = (value: Json | undefined): JsonObject => (isObject(value) ? value : {})
const text = (value: Json | undefined): string => (typeof value === 'string' ? value : '')

interface Entry {
  readonly method: string
  readonly address: string
  readonly operation: JsonObject
}

const isBatch = ({ operation }: Entry) => list(operation.tags).includes('batches')
const isPicture = ({ operation }: Entry) => list(operation.tags).includes('pictures')

/** The API's description for reading, made from the OpenAPI document; works without scripts or network. */
export function referencePage(document: Document): Html {
  const entries: readonly Entry[] = Object.entries(document.paths).flatMap(([address, item]) =>
    Object.entries(object(item)).map(([method, operation]) => ({
      method: method.toUpperCase(),
      address,
      operation: object(operation),
    })),
  )
  const schemas = object(document.components.schemas)
  const single = entries.filter((entry) => !isBatch(entry) && !isPicture(entry))
  return layout(
    `${text(document.info.title)} API`,
    html`<header>
<h1>${text(document.info.title)} API</h1>
<p>Version ${text(document.info.version)}. For programs: <a href="/openapi.json">/openapi.json</a>.</p>
<details><summary>About it</summary>${prose(text(document.info.description))}</details>
</header>
<nav id="addresses" aria-label="Addresses"><ul>
${single.map(({ operation }) => html`<li><a href="#${text(operation.operationId)}">${text(operation.operationId)}</a></li>`)}
<li><a href="#pictures">Pictures of answers</a></li>
<li><a href="#batches">Batches: many inputs at once</a></li>
<li><a href="#quantities">How quantities are written</a></li>
<li><a href="#problems">Problems</a></li>
${GUIDES.map(({ name, title }) => html`<li><a href="/reference/guide/${name}">${title}</a></li>`)}
</ul></nav>
<main>
${single.map((entry) => entryHtml(entry, schemas))}
${picturesHtml(entries.filter(isPicture))}
${batchesHtml(entries.filter(isBatch))}
${kindsHtml(schemas)}
${problemsHtml(document)}
</main>`,
  )
}

/** What to send comes first; what comes back, and what it rests on, is folded away behind it. */
function entryHtml({ method, address, operation }: Entry, schemas: JsonObject): Html {
  const id = text(operation.operationId)
  const request = jsonPart(operation.requestBody)
  const answer = jsonPart(object(object(operation.responses)['200']))
  const parameters = list(operation.parameters).map(object)
  const example = object(object(object(request).examples).usual).value
  const fields = request ? fieldRows(object(request.schema), schemas) : []
  const description = text(operation.description)
  return html`<section id="${id}" aria-labelledby="${id}-title">
<h2 id="${id}-title">${text(operation.summary)}</h2>
<p><code>${method} ${address}</code></p>
${parameters.length > 0 ? folded(`Parameters of ${id}`, parameters.map(parameterRow), 'asked') : ''}
${request ? folded(`Fields of ${id}`, fields, 'asked') : ''}
${example === undefined ? '' : html`<details><summary>Example</summary><pre tabindex="0">${curl(method, address, example)}</pre></details>`}
${answer ? folded(`Answer of ${id}`, fieldRows(object(answer.schema), schemas), 'given') : ''}
${description === '' ? '' : html`<details><summary>What it is for, cautions, sources</summary>${prose(description)}</details>`}
<p class="up"><a href="#addresses">All addresses</a></p>
</section>`
}

function jsonPart(part: Json | undefined): JsonObject | undefined {
  const media = object(object(part).content)['application/json']
  return media === undefined ? undefined : object(media)
}

const parameterRow = (parameter: JsonObject): FieldRow => {
  const schema = object(parameter.schema)
  return {
    name: text(parameter.name),
    needed: parameter.required === true,
    kind: kindOf(schema, {}),
    description: text(parameter.description),
    examples: list(schema.examples).slice(0, 2).join(', '),
  }
}

/** Fields that stand open: more of them are folded away. */
const FEW = 6

type Side = 'asked' | 'given'

/** What is asked stands open where it is short; the needed fields always do. */
function folded(what: string, rows: readonly FieldRow[], side: Side): Html {
  if (rows.length === 0) return html`<p>${what}: none in particular.</p>`
  const needed = side === 'asked' ? rows.filter(({ needed }) => needed) : []
  const open = side === 'asked' && rows.length <= FEW
  const shown =
    open || needed.length === 0
      ? ''
      : html`<p>Needed: ${needed.map(({ name }, index) => html`${index > 0 ? ', ' : ''}<code>${name}</code>`)}</p>`
  return html`${shown}<details${open ? raw(' open') : ''}><summary>${what}: ${rows.length}</summary>${table(what, rows, side)}</details>`
}

/** What is wider than the page is scrolled by itself, by keyboard too. */
const scrolled = (what: string, content: Html): Html =>
  html`<div class="scroll" role="region" aria-label="${what}" tabindex="0"><table>${content}</table></div>`

/** Of what is asked, the needed fields stand out; of what is given, those that may be missing. */
const table = (what: string, rows: readonly FieldRow[], side: Side): Html =>
  scrolled(
    what,
    html`
<thead><tr><th scope="col">Field</th><th scope="col">${side === 'asked' ? 'Takes' : 'Is'}</th><th scope="col">Meaning</th></tr></thead>
<tbody>
${rows.map((row) => rowHtml(row, side))}
</tbody>
`,
  )

function rowHtml({ name, needed, kind, description, examples }: FieldRow, side: Side): Html {
  const mark =
    side === 'asked' && needed
      ? html` <span class="needed">needed</span>`
      : side === 'given' && !needed
        ? html` <small>may be missing</small>`
        : ''
  const shown = examples === '' || side === 'given' ? '' : html`, e.g. <code>${examples}</code>`
  return html`<tr><td><code>${name}</code>${mark}</td><td>${kind}</td><td>${description}${shown}</td></tr>`
}

/** Pictures are alike, so they are told once. */
function picturesHtml(all: readonly Entry[]): Html {
  const entries = all.filter(({ method }) => method === 'POST')
  const [first] = entries
  if (first === undefined) return html``
  const request = jsonPart(first.operation.requestBody)
  const example = object(object(object(request).examples).usual).value
  const parameters = list(first.operation.parameters).map(object).map(parameterRow)
  return html`<section id="pictures" aria-labelledby="pictures-title">
<h2 id="pictures-title">Pictures of answers</h2>
<p>An answer is drawn as SVG (<code>image/svg+xml</code>) by the input of its operation, whose <code>units</code> choose the system of the axes. A title and what it shows in words are in the picture. <a href="/v1/diagram">/v1/diagram</a> lists the kinds.</p>
${folded('Parameters of pictures', parameters, 'asked')}
<details><summary>Example</summary><pre tabindex="0">${curl('POST', `${first.address}?width=360`, example ?? {})}</pre></details>
<details><summary>Kinds: ${entries.length}</summary>${scrolled(
    'Kinds of picture',
    html`
<thead><tr><th scope="col">Address</th><th scope="col">Shows</th></tr></thead>
<tbody>
${entries.map(({ address, operation }) => html`<tr><td><code>POST ${address}</code></td><td>${text(operation.summary)}</td></tr>`)}
</tbody>
`,
  )}</details>
<p class="up"><a href="#addresses">All addresses</a></p>
</section>`
}

/** Batches are alike, so they are told once. */
const batchesHtml = (
  entries: readonly Entry[],
): Html => html`<section id="batches" aria-labelledby="batches-title">
<h2 id="batches-title">Batches: many inputs at once</h2>
<p>Every operation takes many inputs in one request: a JSON list (<code>application/json</code>) or a JSON object a line (<code>application/x-ndjson</code>). It answers in the same form and order, an entry an input: <code>{ "row": 1, "answer": … }</code>, or <code>{ "row": 2, "problem": … }</code> where one fails; the others go on.</p>
<pre tabindex="0">${curlLines('/v1/saturation/batch', ['{"refrigerant":"R-134a","pressure":"32 psig"}', '{"refrigerant":"R-407C","pressure":"80 psig"}'])}</pre>
${scrolled(
  'Limits of batches',
  html`
<thead><tr><th scope="col">Address</th><th scope="col">Limit</th></tr></thead>
<tbody>
${entries.map(({ address, operation }) => html`<tr><td><code>POST ${address}</code></td><td>${text(operation.description).split('. ', 1)[0] ?? ''}</td></tr>`)}
</tbody>
`,
)}
</section>`

/** The kinds of quantity with examples, and the parts that every answer has. */
function kindsHtml(schemas: JsonObject): Html {
  const shared = Object.entries(schemas).map(([name, schema]) => [name, object(schema)] as const)
  const kinds = shared.filter(([, schema]) => isQuantity(schema))
  const parts = shared.filter(([name]) => ['Quantity', 'Caution', 'Source'].includes(name))
  return html`<section id="quantities" aria-labelledby="quantities-title">
<h2 id="quantities-title">How quantities are written</h2>
<p>As text with its unit, <code>"32 psig"</code>, with its uncertainty where it has one, <code>"210 ±4 psig"</code>, or as an object, <code>{ "value": 210, "unit": "psig", "plusMinus": 4 }</code>. A bare number is refused, since it could be two things. <a href="/v1/units">/v1/units</a> lists the units.</p>
${scrolled(
  'Kinds of quantity',
  html`
<thead><tr><th scope="col">Kind</th><th scope="col">Examples</th></tr></thead>
<tbody>
${kinds.map(([name, { examples }]) => html`<tr><td>${name}</td><td><code>${list(examples).join(', ')}</code></td></tr>`)}
</tbody>
`,
)}
${parts.map(([name, schema]) => html`<h3>${name}</h3><p>${text(schema.description)}</p>${folded(`Fields of ${name}`, fieldRows(schema, schemas), 'given')}`)}
</section>`
}

function problemsHtml(document: Document): Html {
  const responses = Object.entries(object(document.components.responses))
  return html`<section id="problems" aria-labelledby="problems-title">
<h2 id="problems-title">Problems</h2>
<p>A request that has no answer gets problem details (RFC 9457, <code>application/problem+json</code>): a program decides by <code>code</code>, a person reads <code>detail</code> and <code>hint</code>; <code>type</code> is the address where the code is explained.</p>
<ul class="links">
${PROBLEM_CODES.map((code) => html`<li><a href="/problems/${code}"><code>${code}</code></a> ${problemTitle(code)}</li>`)}
</ul>
${scrolled(
  'Statuses',
  html`
<thead><tr><th scope="col">Status</th><th scope="col">When</th></tr></thead>
<tbody>
${responses.map(([name, response]) => html`<tr><td>${name.replace('Problem', '')}</td><td>${text(object(response).description)}</td></tr>`)}
</tbody>
`,
)}
</section>`
}
