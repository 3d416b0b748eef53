import { hearInterrupts, readyToPlan, servePlanning } from './run-plan.ts'

const PLANNING = ['lay', 'widths', 'map', 'note', 'slips']

// the same file is the command and, on a thread of its own, the planning
if (!servePlanning()) {
  if (PLANNING.includes(process.argv[2] ?? '')) {
    hearInterrupts()
    readyToPlan()
  }
  const { command } = await import('./command.ts')
  await command(process.argv.slice(2))
}
