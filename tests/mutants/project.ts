import { execFileSync } from 'node:child_process'
import { existsSync } from 'node:fs'
import { join } from 'node:path'

/** What the faults are put into: a tree of files, its rooms and its tests. */
export interface Project {
  /** Absolute, with a slash at its end. */
  readonly root: string
  /** Each room by name: the folder whose files take the faults. */
  readonly rooms: Readonly<Record<string, string>>
  /** Whether a test file looks at all. */
  readonly looks: (file: string) => boolean
}

const shared = ['quantity', 'fields', 'instrument', 'answer', 'dangers', 'physics'].concat([
  'substance',
  'refrigerant',
  'rules',
  'service',
  'work-order',
  'cycle',
  'diagnosis',
])

/**
 * Left out: the worker's own runtime, the bundle and the spawned command line cost seconds
 * and see nothing that the doors' tests in this process do not; the tests of this runner.
 */
const BLIND = /^tests\/(?:worker\/|mutants\/|bundle\.|cli\/process\.)/u

export const project: Project = {
  root: new URL('../..', import.meta.url).pathname,
  rooms: {
    ...Object.fromEntries(shared.map((room) => [room, `shared/${room}`])),
    frame: 'shared/operation',
    'data/service': 'data/service',
    'data/rules': 'data/rules',
  },
  looks: (file) => /^tests\/.*\.test\.ts$/u.test(file) && !BLIND.test(file),
}

/** Every file of the tree that is the project's own, as it stands now. */
export function filesOf(root: string): readonly string[] {
  const listed = execFileSync('git', ['ls-files', '-z', '-co', '--exclude-standard'], {
    cwd: root,
    encoding: 'utf8',
  })
  return listed
    .split('\0')
    .filter((file) => file !== '' && existsSync(join(root, file)))
    .sort()
}

/** The files of a room that take faults. */
export const roomFiles = (files: readonly string[], folder: string): readonly string[] =>
  files.filter(
    (file) =>
      (file.startsWith(`${folder}/`) || file === `${folder}.ts`) &&
      /(?<!\.d)\.(?:ts|json)$/u.test(file),
  )
