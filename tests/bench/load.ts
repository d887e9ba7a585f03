import autocannon from 'autocannon'

/** The load in a process of its own: `load.ts <url> <questions> <requests>`; prints how many were answered. */
const [url = '', questions = '[]', amount = '1000'] = process.argv.slice(2)
/** A question in JSON is sent by body, any other is a query. */
const requests = (JSON.parse(questions) as readonly string[]).map((question) =>
  question.startsWith('{')
    ? { method: 'POST' as const, headers: { 'content-type': 'application/json' }, body: question }
    : { method: 'GET' as const, path: new URL(url).pathname + question },
)
const start = performance.now()
const {
  non2xx,
  errors,
  requests: sent,
} = await autocannon({
  url,
  requests,
  connections: 20,
  amount: Number(amount),
})
if (non2xx > 0 || errors > 0) throw new Error(`${non2xx} were no success, ${errors} failed.`)
const seconds = (performance.now() - start) / 1e3
console.log(JSON.stringify({ count: sent.total, perSecond: sent.total / seconds }))
