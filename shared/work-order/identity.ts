import { figureText } from '../answer/figure-text.ts'
import type { CompressorDrive, Job, Machine } from '../fields/index.ts'
import { say } from '../quantity/index.ts'
import { refrigerant } from '../refrigerant/index.ts'
import { JURISDICTIONS } from '../rules/library.ts'
import type { WorkOrderInput } from './input.ts'
import type { ReadLine } from './section.ts'

const JOB_NAMES: Readonly<Record<Job, string>> = {
  diagnose: 'Find out what is wrong; nothing is opened',
  'couplers-parted': 'Couplings parted and rejoined, all halves sealed',
  'section-opened': 'A section opened between closed valves or sealed couplings',
  'system-opened': 'The system opened',
  'pressure-lost': 'The system lost its pressure',
}

const COMPRESSOR_NAMES: Readonly<Record<CompressorDrive, string>> = {
  open: 'open drive',
  electric: 'electric or hermetic',
}

const MACHINE_NAMES: Readonly<Record<Machine, string>> = {
  'road-vehicle': 'road vehicle',
  bus: 'bus',
  'off-road': 'off-road machine',
  stationary: 'building',
  'refrigerated-cargo': 'refrigerated cargo',
}

/** The head of the sheet: what machine, what is in it, where, who, and what job. */
export function identity(input: WorkOrderInput): readonly ReadLine[] {
  const { machine, place, person } = input
  const { info } = refrigerant(input.refrigerant)
  const line = (label: string, value: string | undefined): ReadLine[] =>
    value === undefined ? [] : [{ label, value }]
  return [
    ...line('Order', input.order),
    ...line('Date', input.date),
    ...line('Machine', machine.name),
    ...line('Serial or fleet number', machine.serial),
    ...line('Hours', machine.hours),
    ...line('Kind', MACHINE_NAMES[machine.kind]),
    ...line('Compressor', machine.compressorDrive && COMPRESSOR_NAMES[machine.compressorDrive]),
    ...line('Feeds the evaporator', machine.meteringDevice?.replace('-', ' ')),
    ...line('Refrigerant', `${info.id}, safety class ${info.safetyClass.value}`),
    ...line(
      'Label charge',
      input.labelCharge &&
        figureText({ value: input.labelCharge }, { units: 'both', precise: false }, 'both'),
    ),
    ...line('Oil', input.existingOil),
    ...line('Oil of the whole system', input.oilTotal && say(input.oilTotal)),
    ...line('Law', place?.law && JURISDICTIONS[place.law].name),
    ...line('Altitude', place?.altitude && say(place.altitude)),
    ...line('Barometer', place?.barometer && say(place.barometer)),
    ...line('Air', place?.ambient && say(place.ambient)),
    ...line('Done by', person?.name),
    ...line('Job', JOB_NAMES[input.job]),
    ...line('What happened', input.story),
  ]
}
