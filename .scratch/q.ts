import { EXAMPLES, run, changed, without, stepOf } from '../tests/shared/work-order/examples.ts'
const { loader, groomer } = EXAMPLES as any
const a = run({...loader, charge:{}})
console.log(a.assumptions)
console.log(run({...loader, charge:{}, couplings: loader.couplings.map(({couplingType,...r}:any)=>r)}).assumptions.filter(a=>a.field==='charge.sealed'))
const g = run(groomer).result.checklist.find(e=>e.what==='Mass charged'); console.log(g)
const o = { ...without(loader, 'charge'), labelCharge:'2 kg', couplings:[{name:'Liquid',couplingType:'two-valve',spillFrom:'5 mL',spillTo:'90 mL',phase:'liquid',temperature:'75 °F'}], charging:{scaleStart:'9 kg',scaleDivision:'2 g'}, charge:{whatIf:true}} as any
console.log(run(o).result.missing.map(m=>m.path.join('.')+': '+m.what), stepOf(run(o),'charge').problems)
