/**
 * Fields that had another name before, and what they are called now; several where it depends on the
 * operation. Whoever uses an old name is told the new one: it is never taken silently.
 */
export const RENAMED: Readonly<Record<string, readonly string[]>> = {
  charge: ['labelCharge', 'startMass'],
  fullCharge: ['labelCharge'],
  originalCharge: ['labelCharge'],
  case: ['job'],
  ambientTemperature: ['ambient'],
  outdoorTemperature: ['ambient'],
  outdoorDryBulb: ['ambient'],
  indoorWetBulb: ['returnWetBulb'],
  airIn: ['returnAir'],
  internalVolume: ['volume'],
  containerVolume: ['volume'],
  compressor: ['compressorDrive'],
  equipment: ['machine'],
  kind: ['machine'],
  place: ['law'],
  hoseBore: ['serviceHoseBore', 'vacuumHoseBore'],
  hoseLength: ['serviceHoseLength', 'vacuumHoseLength', 'longHoseLength'],
  hoses: ['vacuumHoses'],
  hoseAtStart: ['serviceHoseStarts'],
  hoseAtEnd: ['serviceHoseHolds'],
  hosePressure: ['serviceHosePressure'],
  tolerance: ['chargeTolerance'],
  scaleResolution: ['scaleDivision'],
  staticPressure: ['systemPressure'],
  lowPressure: ['suctionPressure'],
  highPressure: ['dischargePressure', 'liquidPressure'],
  dryBelow: ['holdBelow'],
  oil: ['newOil'],
  oilType: ['existingOil'],
  systemTotal: ['oilTotal'],
  on: ['date'],
  from: ['refrigerant'],
  to: ['newRefrigerant'],
  retrofitTo: ['newRefrigerant'],
}

/** What an unknown field is called now, of the fields that there are. */
export const renamedTo = (name: string, fields: readonly string[]): readonly string[] =>
  (Object.hasOwn(RENAMED, name) ? (RENAMED[name] ?? []) : []).filter((now) => fields.includes(now))
