import { EXAMPLES, run } from '../tests/shared/work-order/examples.ts'
const { crane, groomer } = EXAMPLES as any
const a = run({...crane, leakTest: groomer.leakTest})
console.log(a.result.computed.leakTest?.federal, a.result.card.steps.find(s=>s.id==='leak-test'))
