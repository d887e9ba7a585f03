import { workOrder } from '../shared/work-order/work-order.ts'
import { cardLines } from '../cli/render/card.ts'
import { inkOf } from '../cli/render/ink.ts'
import { readFileSync } from 'node:fs'
const ex = ['quarry-loader','harbour-crane','snow-groomer','log-forwarder'].map(e=>JSON.parse(readFileSync(`data/examples/${e}.json`,'utf8')))
const page={ink:inkOf(false as never),width:80,precise:false}
const seen: any[]=[]
for (const job of ['diagnose','couplers-parted','section-opened','system-opened','pressure-lost'])
for (const kind of ['road-vehicle','stationary','refrigerated-cargo'])
for (const compressorDrive of ['open','electric'])
for (const refrigerant of ['R-134a','R-744','R-290','R-1234yf'])
for (const full of [0,1,2,3,4]) {
  const base = full===0? {machine:{name:'M'}} : ex[full-1]
  const order = {...base, invented:true, job, refrigerant, cabOff: true, machine:{...base.machine,kind,compressorDrive}, ...(full===2?{existingOil:'PAG 46'}:{})}
  if (full===0) delete (order as any).place
  try {
    const a = workOrder.run(order) as any
    const lines = cardLines(a,page)
    const wide = Math.max(...lines.map(l=>l.length))
    seen.push({n:lines.length,wide,key:[job,kind,compressorDrive,refrigerant,full].join(' '),stops:a.result.card.stops.length, text:lines.join('\n'), level:a.level, headline:a.headline})
  } catch(e:any){ console.log('ERR',job,kind,compressorDrive,refrigerant,full,e.message, e.code?'':e.stack) }
}
seen.sort((a,b)=>b.n-a.n)
console.log(seen.length, seen.slice(0,8).map(s=>`${s.n} ${s.wide} ${s.key} stops ${s.stops}`).join('\n'))
console.log(seen[0].text)
const c = seen.filter(s=>s.key.startsWith(process.argv[2]??'couplers-parted stationary open R-744 0'))
for (const s of c.slice(0,3)) console.log('-----',s.key,s.level,s.headline,'\n'+s.text)
