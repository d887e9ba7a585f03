import { html } from 'hono/html'
import { ABOUT } from '../../shared/about.ts'
import { GUIDES } from '../../shared/guides.ts'
import { type Html, layout } from './layout.ts'

/** What stands at the root where the page was not built: how to build it, and where to go on without it. */
export function frontPage(): Html {
  return layout(
    ABOUT.name,
    html`<main>
<h1>${ABOUT.name}</h1>
<p>${ABOUT.description}</p>
<p>The page was not built beside this server. <code>npm run build:page</code> makes it; then start the server again.</p>
<p><a href="/reference">Reference of the API</a> · <a href="/openapi.json">OpenAPI document</a> · <a href="/v1/refrigerants">Refrigerants</a></p>
<h2>Guides</h2>
<ul class="links">
${GUIDES.map(({ name, title }) => html`<li><a href="/reference/guide/${name}">${title}</a></li>`)}
</ul>
</main>`,
  )
}
