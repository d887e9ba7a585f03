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
  charge: [['labelCharge']],
  oil: [['oilTotal'], ['labelCharge']],
  recovery: [['labelCharge'], ['systemPressure', 'systemTemperature'], ['systemTemperature']],
  'air-check': [['pressure', 'temperature'], ['temperature']],
  contamination: [['pressure', 'temperature'], ['temperature']],
  rules: [['labelCharge']],
  evacuation: [['temperature'], ['vacuum']],
  charging: [['labelCharge']],
  'cooling-check': [['ambient'], ['ventTemperature'], ['suctionPressure'], ['dischargePressure']],
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
}

/** What a second name of a refrigerant fills: of a conversion the new one. */
export const SECOND_NAME: Readonly<Record<string, string>> = { retrofit: 'newRefrigerant' }
