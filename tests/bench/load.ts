import autocannon from 'autocannon'

/** The load in a process of its own: `load.ts <url> <body> <seconds>`; prints how many were answered. */
const [url = '', body = '', seconds = '1'] = process.argv.slice(2)
const { non2xx, errors, requests } = await autocannon({
  url: `${url}/v1/saturation`,
  method: 'POST',
  headers: { 'content-type': 'application/json' },
  body,
  connections: 20,
  duration: Number(seconds),
})
if (non2xx > 0 || errors > 0) throw new Error(`${non2xx} were no success, ${errors} failed.`)
console.log(JSON.stringify({ count: requests.total, perSecond: requests.average }))
