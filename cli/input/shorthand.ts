/** Fields that one word fills, in the order in which its parts stand: "32psig/48F". */
export type Group = readonly [string, ...string[]]

/**
 * Where quantities go that are typed without an option, a group a place on the machine; a word fills
 * the first group that is still empty and takes what it holds.
 */
export const WORDS: Readonly<Record<string, readonly Group[]>> = {
  saturation: [['pressure'], ['temperature']],
  table: [['from'], ['to'], ['step']],
  readings: [
    ['suctionPressure', 'suctionTemperature'],
    ['liquidPressure', 'liquidTemperature'],
    ['ambient'],
  ],
  diagnose: [
    ['suctionPressure', 'suctionTemperature'],
    ['dischargePressure', 'liquidTemperature'],
    ['ambient'],
    ['returnAir'],
    ['ventTemperature'],
  ],
  charge: [['labelCharge']],
  oil: [['oilTotal'], ['labelCharge']],
  recovery: [['labelCharge'], ['systemPressure', 'systemTemperature'], ['systemTemperature']],
  'air-check': [['pressure', 'temperature'], ['temperature']],
  contamination: [['pressure', 'temperature'], ['temperature']],
  rules: [['labelCharge']],
  'leak-test': [
    ['startPressure', 'startTemperature'],
    ['endPressure', 'endTemperature'],
    ['elapsed'],
  ],
  fractionation: [['temperature'], ['lost'], ['startMass']],
  evacuation: [['temperature'], ['vacuum']],
  charging: [['labelCharge'], ['scaleStart']],
  retrofit: [['labelCharge']],
  'cooling-check': [['ambient'], ['ventTemperature'], ['suctionPressure'], ['dischargePressure']],
  lesson: [['topic']],
  simulate: [['modelMachine'], ['fault'], ['severity'], ['ambient'], ['returnAir']],
}

/** Options of one letter for the fields that a day is full of. */
export const LETTERS: Readonly<Record<string, string>> = {
  machine: '-m',
  meteringDevice: '-d',
  compressorDrive: '-c',
  law: '-l',
  ambient: '-a',
  altitude: '-e',
  units: '-u',
  job: '-j',
  couplingType: '-t',
}

/**
 * The line of a working day for each calculation, as a person types it: in its help, and behind an error
 * as a line that works. No word in it needs quotation marks.
 */
export const EVERYDAY: Readonly<Record<string, string>> = {
  saturation: 'saturation 134a 32psig',
  table: 'table 407C 0F 120F',
  readings: 'readings 134a 32psig/48F 210psig/122F -m vehicle -d valve',
  diagnose: 'diagnose 134a 45psig/60F 330psig/125F 90F -m off-road -d valve',
  charge:
    'charge 134a 3lb8oz -t two-valve --parted liquid:18mm/4mm+2mm,suction:25mm/5mm+3mm --coldest 60F',
  oil: 'oil 134a 8floz --replaced condenser,drier --new-oil pag46 -c open',
  recovery: 'recovery 134a 3lb8oz 75psig/75F',
  'air-check': 'air-check 134a 90psig/75F',
  contamination: 'contamination 134a 90psig/75F',
  rules: 'rules 134a 3lb8oz -l us -m off-road -c open --action open --certificates us-609',
  'leak-test': 'leak-test 150psig/80F 147psig/70F 12h',
  fractionation: 'fractionation 407C 77F 40% --escapes vapour',
  evacuation: 'evacuation 75F 800micron',
  charging: 'charging 134a 2lb6oz 24.5lb',
  'cooling-check': 'cooling-check 134a 95F 52F',
  retrofit: 'retrofit R-12 134a 3lb -m off-road -c open',
  'work-order': 'work-order --new loader-7.yaml',
  simulate: 'simulate loader undercharge 80% 95F',
  lesson: 'lesson high-head --seed 7',
}

/** What a second name of a refrigerant fills: of a conversion the new one. */
export const SECOND_NAME: Readonly<Record<string, string>> = { retrofit: 'newRefrigerant' }
