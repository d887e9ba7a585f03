import { html } from 'hono/html'
import { GUIDES } from '../../shared/guides.ts'
import type { Document } from '../openapi/document.ts'
import { isObject, type Json, type JsonObject } from '../openapi/schemas.ts'
import { type Html, layout } from './layout.ts'
import { prose } from './prose.ts'
import { type FieldRow, fieldRows, isQuantity, kindOf, list } from './schema-rows.ts'

const object = (value: Json | undefined): JsonObject => (isObject(value) ? value : {})
const text = (value: Json | undefined): string => (typeof value === 'string' ? value : '')

interface Entry {
  readonly method: string
  readonly address: string
  readonly operation: JsonObject
}

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
  const isBatch = ({ operation }: Entry) => list(operation.tags).includes('batches')
  const single = entries.filter((entry) => !isBatch(entry))
  return layout(
    `${text(document.info.title)} API`,
    html`<h1>${text(document.info.title)} API</h1>
${prose(text(document.info.description))}
<p>The same as a document for programs: <a href="/openapi.json">/openapi.json</a>.</p>
<nav id="addresses" aria-label="Addresses"><ul>
${single.map(({ operation }) => html`<li><a href="#${text(operation.operationId)}">${text(operation.operationId)}</a></li>`)}
<li><a href="#batches">Batches: many inputs at once</a></li>
<li><a href="#quantities">How quantities are written</a></li>
<li><a href="#problems">Problems</a></li>
${GUIDES.map(({ name, title }) => html`<li><a href="/reference/guide/${name}">${title}</a></li>`)}
</ul></nav>
<main>
${single.map((entry) => entryHtml(entry, schemas))}
${batchesHtml(entries.filter(isBatch))}
${kindsHtml(schemas)}
${problemsHtml(document)}
</main>`,
  )
}

function entryHtml({ method, address, operation }: Entry, schemas: JsonObject): Html {
  const request = jsonPart(operation.requestBody)
  const answer = jsonPart(object(operation.responses)['200'])
  const parameters = list(operation.parameters).map(object)
  const example = object(object(object(request).examples).usual).value
  return html`<section id="${text(operation.operationId)}">
<h2>${text(operation.summary)}</h2>
<p><code>${method} ${address}</code></p>
${prose(text(operation.description))}
${parameters.length > 0 ? html`<h3>Parameters</h3>${table(parameters.map(parameterRow), 'asked')}` : ''}
${request ? html`<h3>Body</h3>${table(fieldRows(object(request.schema), schemas), 'asked')}` : ''}
${example === undefined ? '' : html`<h3>Example</h3><pre>${curl(method, address, example)}</pre>`}
${answer ? answerHtml(fieldRows(object(answer.schema), schemas)) : ''}
<p class="up"><a href="#addresses">All addresses</a></p>
</section>`
}

/** Folded away: answers are long and alike, and who looks for what to send shall not scroll past them. */
const answerHtml = (rows: readonly FieldRow[]): Html =>
  html`<details><summary>Answer, ${rows.length} fields</summary>${table(rows, 'given')}</details>`

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

/** Of what is asked, the needed fields stand out; of what is given, those that may be missing. */
const table = (rows: readonly FieldRow[], side: 'asked' | 'given'): Html =>
  html`<div class="scroll"><table>
<thead><tr><th scope="col">Field</th><th scope="col">${side === 'asked' ? 'Takes' : 'Is'}</th><th scope="col">Meaning</th></tr></thead>
<tbody>
${rows.map((row) => rowHtml(row, side))}
</tbody>
</table></div>`

function rowHtml({ name, needed, kind, description, examples }: FieldRow, side: string): Html {
  const mark =
    side === 'asked' && needed
      ? html` <span class="needed">needed</span>`
      : side === 'given' && !needed
        ? html` <small>may be missing</small>`
        : ''
  const shown = examples === '' || side === 'given' ? '' : html`, e.g. <code>${examples}</code>`
  return html`<tr><td><code>${name}</code>${mark}</td><td>${kind}</td><td>${description}${shown}</td></tr>`
}

const curl = (method: string, address: string, example: Json) =>
  `curl -X ${method} http://127.0.0.1:8787${address} \\
  -H 'Content-Type: application/json' \\
  -d '${JSON.stringify(example, null, 2).replaceAll("'", `'\\''`)}'`

/** Batches are alike, so they are told once. */
const batchesHtml = (entries: readonly Entry[]): Html => html`<section id="batches">
<h2>Batches: many inputs at once</h2>
<p>Every operation takes many inputs in one request: a JSON list (<code>application/json</code>) or a JSON object a line (<code>application/x-ndjson</code>). It answers in the same form and order, an entry an input: <code>{ "row": 1, "answer": … }</code>, or <code>{ "row": 2, "problem": … }</code> where one fails; the others go on.</p>
<pre tabindex="0">${curlLines('/v1/saturation/batch', ['{"refrigerant":"R-134a","pressure":"32 psig"}', '{"refrigerant":"R-407C","pressure":"80 psig"}'])}</pre>
<div class="scroll" tabindex="0" role="region" aria-label="Batches"><table>
<thead><tr><th scope="col">Address</th><th scope="col">Limit</th></tr></thead>
<tbody>
${entries.map(({ address, operation }) => html`<tr><td><code>POST ${address}</code></td><td>${text(operation.description).split('. ', 1)[0] ?? ''}</td></tr>`)}
</tbody></table></div>
</section>`

const curlLines = (address: string, lines: readonly string[]) =>
  `printf '%s\\n' ${lines.map((line) => `'${line}'`).join(' \\\n  ')} |
  curl http://127.0.0.1:8787${address} -H 'Content-Type: application/x-ndjson' --data-binary @-`

/** The kinds of quantity with examples, and the parts that every answer has. */
function kindsHtml(schemas: JsonObject): Html {
  const shared = Object.entries(schemas).map(([name, schema]) => [name, object(schema)] as const)
  const kinds = shared.filter(([, schema]) => isQuantity(schema))
  const parts = shared.filter(([name]) => ['Quantity', 'Caution', 'Source'].includes(name))
  return html`<section id="quantities">
<h2>How quantities are written</h2>
<p>As text with its unit, <code>"32 psig"</code>, with its uncertainty where it has one, <code>"210 ±4 psig"</code>, or as an object, <code>{ "value": 210, "unit": "psig", "plusMinus": 4 }</code>. A bare number is refused, since it could be two things.</p>
<div class="scroll"><table><tbody>
${kinds.map(([name, { examples }]) => html`<tr><td>${name}</td><td><code>${list(examples).join(', ')}</code></td></tr>`)}
</tbody></table></div>
${parts.map(([name, schema]) => html`<h3>${name}</h3><p>${text(schema.description)}</p>${table(fieldRows(schema, schemas), 'given')}`)}
</section>`
}

function problemsHtml(document: Document): Html {
  const responses = Object.entries(object(document.components.responses))
  const codes = object(object(object(document.components.schemas).Problem).properties).code
  return html`<section id="problems">
<h2>Problems</h2>
<p>A request that has no answer gets problem details (RFC 9457, <code>application/problem+json</code>): a program decides by <code>code</code>, a person reads <code>detail</code> and <code>hint</code>.</p>
<div class="scroll"><table><tbody>
${responses.map(([name, response]) => html`<tr><td>${name.replace('Problem', '')}</td><td>${text(object(response).description)}</td></tr>`)}
</tbody></table></div>
<ul>
${list(object(codes).enum).map((code) => html`<li id="problem-${String(code)}"><code>${String(code)}</code></li>`)}
</ul>
</section>`
}
