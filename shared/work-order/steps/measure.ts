import type { WorkOrderInput } from '../input.ts'
import type { Outcomes } from '../run.ts'
import { figure, type StepBody, take, want } from '../step.ts'

/** What the gauges and pipe thermometers say of the running machine. */
export function readingsInto(body: StepBody, input: WorkOrderInput, { readings }: Outcomes): void {
  const found = take(body, readings)
  want(
    body,
    'readings',
    input.readings,
    ['suctionPressure', 'Low-side pressure, running'],
    ['suctionTemperature', 'Suction-line temperature at the same place'],
    ['liquidPressure', 'High-side pressure at the liquid line'],
    ['liquidTemperature', 'Liquid-line temperature at the same place'],
  )
  if (!input.place?.ambient && input.readings?.ambient === undefined) {
    body.missing.push({
      what: 'Air entering the condenser, in the shade',
      path: ['place', 'ambient'],
    })
  }
  if (!found) return
  figure(body, 'Superheat', found.superheat)
  figure(body, 'Subcooling', found.subcooling)
  figure(body, 'Condensing above ambient', found.condensingOverAmbient)
  figure(body, 'Compression ratio, absolute', found.compressionRatio?.value)
  for (const { message, causes, settle } of found.findings) {
    body.findings.push(
      [
        message,
        causes.length > 0 ? `Likely: ${causes.join('; ')}.` : '',
        settle.length > 0 ? `To tell them apart: ${settle.join('; ')}.` : '',
      ]
        .filter((text) => text !== '')
        .join(' '),
    )
  }
  for (const { meaning, settle } of found.verdicts) {
    body.findings.push(settle ? `${meaning} ${settle}` : meaning)
  }
  body.findings.push(...found.statements)
}
