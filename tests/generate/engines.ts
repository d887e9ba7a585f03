import { readFileSync, writeFileSync } from 'node:fs'
import semver from 'semver'

/**
 * npm is run by whatever Node there is, from 20 on, and every script by the pinned one in node_modules.
 * So a package that asks for a newer Node than npm's gets it, and npm's warning that it does not is wrong.
 * npm reads what packages ask for from the lock file: there, and nowhere else, it is taken out.
 */
const LOCK = new URL('../../package-lock.json', import.meta.url)

/** The oldest Node that starts a set-up. */
export const OLDEST = '20.20.2'

interface Lock {
  readonly packages: Record<
    string,
    { engines?: { readonly node?: string }; readonly optional?: boolean }
  >
}

const lock = (): Lock => JSON.parse(readFileSync(LOCK, 'utf8')) as Lock

/** Packages of a lock file that npm on the oldest Node would warn of. */
export const warnedOf = ({ packages }: Lock = lock()): readonly string[] =>
  Object.entries(packages).flatMap(([name, { engines, optional }]) =>
    engines?.node !== undefined && !optional && !semver.satisfies(OLDEST, engines.node)
      ? [name]
      : [],
  )

if (import.meta.main) {
  const whole = lock()
  for (const name of warnedOf(whole)) delete whole.packages[name]?.engines
  writeFileSync(LOCK, `${JSON.stringify(whole, null, 2)}\n`)
}
