import { run } from './program.ts'
import { terminal } from './terminal.ts'

/** The command line of this process; returns the status that it ends with. */
export const start = () => run(process.argv.slice(2), terminal(process))
