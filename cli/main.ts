#!/usr/bin/env node
import { run } from './program.ts'
import { terminal } from './terminal.ts'

// A reader that stops early (`| head`) is no failure.
process.stdout.on('error', (error: NodeJS.ErrnoException) => {
  if (error.code === 'EPIPE') process.exit(0)
  throw error
})

process.exitCode = await run(process.argv.slice(2), terminal(process))
