import { type DBSchema, type IDBPDatabase, openDB } from 'idb'
import type { Draft } from '../../../shared/form/index.ts'

/** An order as it stands on this device. */
export interface Kept {
  readonly id: string
  readonly draft: Draft
  /** Time of the last change, ms since 1970. */
  readonly changedAt: number
}

interface Schema extends DBSchema {
  orders: { key: string; value: Kept }
}

const orders = new Map<string, Kept>()
let database: IDBPDatabase<Schema> | undefined
/** Why nothing is kept, where nothing is. */
let refused: string | undefined

/** Reads all orders; where the browser keeps nothing they last as long as the page is open. */
export async function openStore(): Promise<void> {
  try {
    database = await openDB<Schema>('chargewright', 1, {
      upgrade: (fresh) => void fresh.createObjectStore('orders', { keyPath: 'id' }),
    })
    for (const order of await database.getAll('orders')) orders.set(order.id, order)
  } catch (error) {
    refused = error instanceof Error ? error.message : String(error)
  }
}

/** Whether orders outlive the page. */
export const whyNotKept = (): string | undefined => refused

/** All orders, the last changed first. */
export const allOrders = (): readonly Kept[] =>
  [...orders.values()].sort((one, other) => other.changedAt - one.changedAt)

export const orderNow = (id: string): Kept | undefined => orders.get(id)

/** Letters that no two orders share. Not by randomUUID, which plain http does not have. */
const newId = () =>
  [...crypto.getRandomValues(new Uint8Array(8))]
    .map((byte) => byte.toString(16).padStart(2, '0'))
    .join('')

/** Keeps an order, a new one where it has no id yet. */
export function keepOrder(draft: Draft, id: string = newId()): string {
  const order: Kept = { id, draft, changedAt: Date.now() }
  orders.set(id, order)
  // Written through to the disk: the phone may be gone the next moment.
  const writing = database?.transaction('orders', 'readwrite', { durability: 'strict' })
  void writing?.store.put(order).catch(refuse)
  void writing?.done.catch(refuse)
  return id
}

export function dropOrder(id: string): void {
  orders.delete(id)
  void database?.delete('orders', id).catch(refuse)
}

function refuse(error: unknown): void {
  refused = error instanceof Error ? error.message : String(error)
}

/** Asks the browser once not to clear them; undefined where it cannot be asked. */
export async function askToPersist(): Promise<boolean | undefined> {
  const storage = navigator.storage as StorageManager | undefined
  if (!storage?.persist) return undefined
  return (await storage.persisted()) || storage.persist()
}
