/** One plain style for the pages about the service: readable in a yard, printable, no scripts, no fonts to fetch. */
export const STYLE = `
:root { color-scheme: light dark; --ink: #1b1b18; --paper: #fbfaf6; --rule: #b9b4a6; --mark: #a33b12; --box: #f0ede3; }
@media (prefers-color-scheme: dark) { :root { --ink: #e9e6dc; --paper: #191917; --rule: #57534a; --mark: #f0955f; --box: #24231f; } }
* { box-sizing: border-box; }
body { margin: 0 auto; padding: 1.5rem 1rem 4rem; max-width: 54rem; color: var(--ink); background: var(--paper); font: 1.0625rem/1.5 system-ui, sans-serif; }
h1 { font-size: 1.9rem; margin: 0 0 .5rem; }
h2 { margin: 2rem 0 .5rem; padding-top: .75rem; border-top: 3px solid var(--ink); font-size: 1.35rem; }
h3 { margin: 1.5rem 0 .25rem; font-size: 1rem; }
a { color: var(--mark); }
code, pre { font: .9em/1.45 ui-monospace, monospace; }
pre { padding: .75rem; overflow-x: auto; background: var(--box); border-left: 3px solid var(--mark); }
.scroll { overflow-x: auto; }
details { margin: .25rem 0; }
main code { overflow-wrap: anywhere; }
td:last-child { width: 55%; min-width: 14rem; }
table { border-collapse: collapse; width: 100%; }
th, td { padding: .35rem .75rem .35rem 0; text-align: left; vertical-align: top; border-bottom: 1px solid var(--rule); }
nav ul { columns: 15rem; padding: 0; list-style: none; }
nav a, summary { display: inline-block; min-width: 24px; padding: .6rem 0; }
summary { display: list-item; cursor: pointer; font-weight: 600; color: var(--mark); }
/* A finger needs 24 px (WCAG 2.2, 2.5.8). */
td a, .links a, p > a { display: inline-block; min-height: 24px; min-width: 24px; line-height: 24px; }
.links li { padding: .25rem 0; }
.up { margin: .5rem 0 0; font-size: .9em; }
.up a { display: inline-block; padding: .6rem 0; }
td code { overflow-wrap: anywhere; }
.needed { color: var(--mark); font-weight: 600; }
:focus-visible { outline: 3px solid var(--mark); outline-offset: 2px; }
@media (max-width: 40rem) {
  thead { display: none; }
  tr { display: block; padding: .5rem 0; border-bottom: 1px solid var(--rule); }
  td { display: inline; padding: 0 .5rem 0 0; border: 0; }
  td:last-child { display: block; min-width: 0; width: auto; }
}
@media print { nav, .up { display: none; } details::details-content { content-visibility: visible; block-size: auto; } body { max-width: none; } }
`
