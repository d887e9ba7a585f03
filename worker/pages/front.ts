import { html } from 'hono/html'
import { ABOUT } from '../../shared/about.ts'
import { GUIDES } from '../../shared/guides.ts'
import type { Operation } from '../../shared/operation.ts'
import { type Html, layout } from './layout.ts'

/** What this service is and where to go on. */
export function frontPage(operations: readonly Operation[]): Html {
  return layout(
    ABOUT.name,
    html`<main>
<h1>${ABOUT.name}</h1>
<p>${ABOUT.description}</p>
<p><a href="/reference">Reference of the API</a> · <a href="/openapi.json">OpenAPI document</a> · <a href="/v1/refrigerants">Refrigerants</a></p>
<h2>What can be asked</h2>
<div class="scroll" role="region" aria-label="Operations" tabindex="0"><table>
<thead><tr><th scope="col">Operation</th><th scope="col">Answers</th></tr></thead>
<tbody>
${operations.map(
  ({ name, summary }) =>
    html`<tr><td><a href="/reference#${name}"><code>${name}</code></a></td><td>${summary}</td></tr>`,
)}
</tbody>
</table></div>
<h2>Guides</h2>
<ul class="links">
${GUIDES.map(({ name, title }) => html`<li><a href="/reference/guide/${name}">${title}</a></li>`)}
</ul>
<h2>Before you rely on it</h2>
<p>The equipment maker's figure wins over any figure from here. Every answer says where its figures come from, how far that was checked, and what can hurt somebody. Work on refrigerant circuits belongs to people who are trained and certified for it where they work.</p>
</main>`,
  )
}
