import { servePlanning } from './run-plan.ts'

// the same file is the command and, on a thread of its own, the planning
if (!servePlanning()) {
  const { command } = await import('./command.ts')
  await command(process.argv.slice(2))
}
