import { mutate } from './mutate.ts'
import { HELP, readOptions } from './options.ts'
import { project } from './project.ts'
import { report } from './report.ts'

const say = (line: string): void => {
  process.stdout.write(`${line}\n`)
}

// An interruption ends the tests that are running and leaves no copy behind.
process.once('SIGINT', () => process.exit(130))

const options = readOptions(process.argv.slice(2), Date.now())
if (!options) {
  say(HELP)
} else {
  say(`seed ${options.seed}`)
  const verdicts = await mutate(project, options, say)
  if (!options.list) say(`\n${report(verdicts, options.seed)}`)
}
