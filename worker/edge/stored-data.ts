import { addressOf } from '../documents/addresses.ts'
import type { Settings } from '../settings.ts'
import { fillAll, type Json } from './parts.ts'

/** Name of the file that belongs to this program; put in when it is built. */
declare const DATA_NAME: string

let isHere = false

/**
 * What to wait for before a request is answered; nothing once the data is here.
 *
 * Each request that comes before asks for the file itself: at the edge none may wait for what another
 * one began.
 *
 * @throws where the file cannot be read; the next request tries again.
 */
export const dataComes = (settings: Settings): Promise<void> | undefined =>
  isHere ? undefined : fetched(settings)

async function fetched({ ASSETS }: Settings): Promise<void> {
  const address = addressOf(DATA_NAME)
  const response = await ASSETS?.fetch(new Request(`http://files.invalid${address}`))
  if (!response?.ok) {
    throw new Error(`${address} is not among the files (${response?.status}): npm run build:edge`)
  }
  const rest = (await response.json()) as Record<number, Json>
  if (isHere) return
  fillAll(rest)
  isHere = true
}
