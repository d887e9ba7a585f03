/**
 * A function that makes something of a key once and keeps it.
 *
 * @param most - Where keys are made of what people type: beyond so many nothing more is kept.
 */
export function keptBy<K, V>(make: (key: K) => V, most = Number.POSITIVE_INFINITY): (key: K) => V {
  const made = new Map<K, V>()
  return (key) => {
    const before = made.get(key)
    if (before !== undefined || made.has(key)) return before as V
    const now = make(key)
    if (made.size < most) made.set(key, now)
    return now
  }
}

/** The same of objects, each by itself: what was made of one goes with it. */
export function keptWith<K extends object, V>(make: (key: K) => V): (key: K) => V {
  const made = new WeakMap<K, { readonly value: V }>()
  return (key) => {
    const before = made.get(key)
    if (before !== undefined) return before.value
    const value = make(key)
    made.set(key, { value })
    return value
  }
}
