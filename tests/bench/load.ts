import autocannon from 'autocannon'

/** The load in a process of its own: `load.ts <address> <body> <requests>`; prints how many were answered. */
const [url = '', body = '', amount = '1000'] = process.argv.slice(2)
/** Without a body it is a question by query. */
const asked =
  body === ''
    ? ({ method: 'GET' } as const)
    : ({ method: 'POST', headers: { 'content-type': 'application/json' }, body } as const)
const start = performance.now()
const { non2xx, errors, requests } = await autocannon({
  url,
  ...asked,
  connections: 20,
  amount: Number(amount),
})
if (non2xx > 0 || errors > 0) throw new Error(`${non2xx} were no success, ${errors} failed.`)
const seconds = (performance.now() - start) / 1e3
console.log(JSON.stringify({ count: requests.total, perSecond: requests.total / seconds }))
