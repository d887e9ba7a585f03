import type { Settings } from '../settings.ts'

/** Everything is in the program, as it is where it is not built for the edge: nothing to wait for. */
export const dataComes = (_: Settings): Promise<void> | undefined => undefined
