/** How well a reading is known: instruments, their classes, and the air around the machine. */
export { CONTACT_SOURCE, type InstrumentClasses } from './classes.ts'
export {
  gaugeFor,
  type InstrumentId,
  reader,
  type Taken,
  withInstrument,
} from './instrument.ts'
export { type Place, type PlaceGiven, resolvePlace } from './place.ts'
export { GAUGE_STEP_PA, SCALE_STEP_KG } from './shown-steps.ts'
