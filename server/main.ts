import { runCommand } from './cli.ts'
import { processTerminal } from './terminal.ts'

// A reader that closes early (`waybench library | head`) is no fault.
process.stdout.on('error', error => {
  if ((error as NodeJS.ErrnoException).code === 'EPIPE') process.exit(0)
  process.stderr.write(`Standard output cannot be written (${error.message}), so that the answer is not whole. Send it to another place.\n`)
  process.exit(2)
})

try {
  process.exitCode = await runCommand(process.argv.slice(2), processTerminal())
} catch (error) {
  // Only a fault of the program comes here; what a person typed was answered before.
  const message = error instanceof Error ? (process.env.WAYBENCH_DEBUG ? (error.stack ?? error.message) : error.message) : String(error)
  process.stderr.write(
    `Something went wrong inside Waybench: ${message}\nNothing saved was changed. Please report it with the command you gave.\n`,
  )
  process.exitCode = 70
}
