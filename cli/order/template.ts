import { visible } from '../../shared/visible.ts'
import { type Answers, orderOf } from '../../shared/work-order/begin.ts'

/** A text as YAML reads it back, whatever is in it. */
const quoted = (text: string) =>
  /^[\w ./-]*[A-Za-z][\w ./-]*$/u.test(text) && !/^(?:yes|no|true|false|null|on|off)$/iu.test(text)
    ? text
    : visible(JSON.stringify(text))

/** A line that is filled in, or waits behind a # with what to write. */
const line = (name: string, value: string | undefined, wait: string, indent = '') =>
  value === undefined || value === ''
    ? `${indent}# ${name}: ${wait}`
    : `${indent}${name}: ${quoted(value)}`

const READINGS = [
  '',
  '# Gauges and pipe thermometers, engine warm, 1000 rpm, full cold, fan high:',
  '# readings:',
  '#   suctionPressure: 32 psig',
  '#   suctionTemperature: 48 °F',
  '#   liquidPressure: 210 psig',
  '#   liquidTemperature: 122 °F',
]

const DIAGNOSIS = [
  '',
  '# The same from when it was sound tells most; and what else is known of it:',
  '# baseline:',
  '#   suctionPressure: 30 psig',
  '#   suctionTemperature: 46 °F',
  '#   liquidPressure: 215 psig',
  '#   liquidTemperature: 118 °F',
  '#   ambient: 85 °F',
  '# diagnosis:',
  '#   liquidStore: receiver',
  '#   displacement: fixed',
]

const OPENED = [
  '',
  '# Parts that are replaced; an accumulator, condenser, drier, evaporator, hose or compressor takes oil:',
  '# parts:',
  '#   - part: drier',
  '#     name: Receiver-drier',
  '',
  '# What comes out, and the cylinder it goes into (WC and TW stand on its collar):',
  '# recovery:',
  '#   recovered: 2 lb 4 oz',
  '#   cylinder: refillable',
  '#   waterCapacity: 47.7 lb',
  '#   tare: 28.0 lb',
  '#   grossNow: 41.5 lb',
  '',
  '# Standing test with nitrogen:',
  '# leakTest:',
  '#   lowSideRating: 200 psig',
  '#   startPressure: 150 psig',
  '#   startTemperature: 75 °F',
  '#   endPressure: 150 psig',
  '#   endTemperature: 75 °F',
  '#   elapsed: 1 h',
  '',
  '# Vacuum reached, and the rise with the valve closed:',
  '# evacuation:',
  '#   vacuum: 400 micron',
  '',
  '# Scale before the valve is opened:',
  '# charging:',
  '#   scaleStart: 24.50 lb',
]

const COUPLINGS = [
  '',
  '# Each coupling: what shuts its halves (two-valve, one-valve, no-valve, diaphragm) and what it can',
  "# have spilt: the maker's spillVolume, or a caliper on the parted halves.",
  '# couplings:',
  '#   - name: Liquid line',
  '#     line: liquid',
  '#     couplingType: two-valve',
  '#     mouthDiameter: 18 mm',
  '#     firstDepth: 4 mm',
  '#     secondDepth: 2 mm',
]

/** A new order: what is known, and behind # only what this job will ask for. */
export function templateOf(answers: Answers, form: 'yaml' | 'json'): string {
  if (form === 'json') return `${JSON.stringify(orderOf(answers), null, 2)}\n`
  const { job = 'couplers-parted' } = answers
  const own = job === 'diagnose' ? [] : job === 'couplers-parted' ? COUPLINGS : OPENED
  return [
    '# A work order. Lines behind # wait for a figure: take the # away, or use',
    '# chargewright work-order FILE --set name=value --save',
    'version: 2',
    '# date: 2026-01-31',
    'machine:',
    `  name: ${quoted(answers.name ?? 'Machine')}`,
    '  # serial: fleet or serial number',
    '  # hours: 6412',
    `  kind: ${answers.kind ?? 'off-road'}`,
    line('compressorDrive', answers.compressorDrive, 'open or electric', '  '),
    line('meteringDevice', answers.meteringDevice, 'valve, orifice or tube', '  '),
    `refrigerant: ${quoted(answers.refrigerant ?? 'R-134a')}`,
    line('labelCharge', answers.labelCharge, '2 lb 6 oz'),
    line('existingOil', answers.existingOil, 'PAG 46'),
    "# oilTotal: 8 fl oz   (the maker's figure)",
    ...(answers.law ? ['place:', `  law: ${answers.law}`] : ['place:', '  # law: us']),
    '  # altitude: 1200 ft',
    '  # ambient: 75 °F',
    '# person:',
    '#   name: who does the work',
    '#   certificates: [us-609]',
    '#   forPay: true',
    `job: ${job}`,
    answers.cabOff === 'yes' ? 'cabOff: true' : '# cabOff: true   (the cab is lifted or tilted)',
    ...own,
    ...READINGS,
    ...(job === 'diagnose' ? DIAGNOSIS : []),
    '',
  ]
    .join('\n')
    .replace(
      'place:\n  # law: us\n  # altitude: 1200 ft\n  # ambient: 75 °F',
      '# place:\n#   law: us\n#   altitude: 1200 ft\n#   ambient: 75 °F',
    )
}
