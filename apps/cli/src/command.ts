import { Command, CommanderError, InvalidArgumentError, Option } from 'commander'
import { check, lay, map, newPlan, note, schema, sizes, slips, web, widths, words } from './commands.ts'
import { completionScript, SHELLS } from './completion.ts'
import { EXIT, Halt } from './exit.ts'
import { cannotPrint } from './files.ts'

export const VERSION = '0.1.0'

/** Reads the words of the command line and does what they say; the exit code follows the contract. */
export async function command(words: readonly string[]): Promise<void> {
  process.stdout.on('error', (error: NodeJS.ErrnoException) => {
    // a reader that has seen enough (head, less) closes the pipe: not a fault
    if (error.code === 'EPIPE') process.exit(EXIT.done)
    report(cannotPrint(error))
    process.exit()
  })
  const program = build()
  try {
    if (words.length === 0) {
      program.outputHelp()
      return
    }
    await program.parseAsync(words as string[], { from: 'user' })
  } catch (error) {
    if (error instanceof CommanderError) {
      process.exitCode = error.exitCode === 0 ? EXIT.done : EXIT.wrongUse
      return
    }
    const halt = error instanceof Halt ? error : null
    if (halt === null) {
      const { programFault } = await import('./run-plan.ts')
      report(programFault(error, words.includes('--debug')))
    } else report(halt)
  }
}

function report(halt: Halt): void {
  if (halt.lines.length > 0) process.stderr.write(`${halt.lines.join('\n')}\n`)
  process.exitCode = halt.code
}

function build(): Command {
  const program = new Command('lengthwise')
    .description('How much cloth to buy for bedding, and where to cut it.')
    .version(VERSION, '--version', 'print the version')
    .helpOption('-h, --help', 'print this help')
    .helpCommand('help [command]', 'help for a command')
    .addHelpText(
      'after',
      `
Examples:
  lengthwise new my-plan.yaml             a sample plan to fill in
  lengthwise lay my-plan.yaml             what to buy, and in which order to cut
  lengthwise map my-plan.yaml -o map.pdf  the cutting map for the table

PLAN may be - for standard input. Results go to standard output, talk to standard error.
Exit: 0 done, 1 cannot be cut from this cloth, 64 wrong use, 65 mistakes in the plan,
66 cannot be read, 70 program fault, 73 cannot write, 130 interrupted.`,
    )
    .exitOverride()
    .configureOutput({ writeErr: (text) => process.stderr.write(text.replace(/^error: /, '')) })
    .showSuggestionAfterError()
    .showHelpAfterError('See lengthwise --help. Nothing was done.')

  const sub = (name: string, description: string): Command =>
    common(program.command(name).description(description).exitOverride().helpOption('-h, --help', 'print this help'))

  sub('new', 'write a sample plan with comments').argument('<file>', 'where to').action(newPlan)
  sub('check', 'read a plan and report every mistake; lay nothing out')
    .argument('<plan>')
    .option('--json', 'problems as JSON')
    .action(check)
  planning(sub('lay', 'lay the pieces out: what to buy, and the order of cutting').argument('<plan>'))
    .option('--width <width>', 'only this width of the cloth, such as 150cm')
    .addOption(new Option('--json', 'the layout file').conflicts(['plain', 'csv', 'svg']))
    .addOption(new Option('--plain', 'one piece a line, tabs between').conflicts(['csv', 'svg']))
    .addOption(new Option('--csv', 'pieces and what to buy, for a spreadsheet').conflicts('svg'))
    .option('--svg <folder>', 'the pages of the cutting map as SVG files')
    .action(lay)
  planning(sub('widths', 'compare cloth widths').argument('<plan>'))
    .option('--try <widths>', 'these widths instead, such as 112cm,150cm')
    .option('--json', 'as JSON')
    .action(widths)
  planning(
    paper(sub('map', 'write the cutting map').argument('<plan>').requiredOption('-o, --output <file>', 'a PDF file')),
  ).action(map)
  planning(sub('note', 'the note for the shop, at most 40 columns').argument('<plan>')).action(note)
  planning(
    paper(
      sub('slips', 'write the slips to pin to the pieces')
        .argument('<plan>')
        .requiredOption('-o, --output <file>', 'a PDF file'),
    ),
  ).action(slips)
  sub('sizes', 'named sizes, each with its source')
    .argument('[region]', 'such as uk or nordic')
    .option('--json', 'as JSON')
    .action(sizes)
  sub('web', 'write the page, or serve it on this machine')
    .option('-o, --output <file>', 'an HTML file; without it the page is served')
    .option('--port <number>', 'port to serve on', readPort, 4170)
    .action(web)
  sub('schema', 'JSON Schema of a file')
    .addArgument(choice('<file>', ['plan', 'layout']))
    .action(schema)
  sub('words', 'what a term means').argument('[term]').action(words)
  sub('completion', 'a script that completes commands')
    .addArgument(choice('<shell>', SHELLS))
    .action((shell: string) => {
      process.stdout.write(completionScript(shell, program))
    })
  return program
}

const choice = (name: string, values: readonly string[]) => new Command().createArgument(name).choices(values)

const common = (command: Command): Command =>
  command
    .addOption(new Option('--unit <unit>', 'print lengths in').choices(['cm', 'mm', 'in']))
    .option('-q, --quiet', 'no talk on standard error')
    .option('--no-color', 'no bold type')
    .option('-f, --force', 'replace a file that is there')
    .option('--debug', 'the stack of a program fault')

const planning = (command: Command): Command =>
  command
    .addOption(
      new Option('--effort <effort>', 'how long to look').choices(['quick', 'usual', 'thorough']).default('usual'),
    )
    .option('--time <time>', 'end after this time, such as 10s, with the best so far', readSeconds)

const paper = (command: Command): Command =>
  command
    .addOption(new Option('--paper <paper>', 'paper').choices(['a4', 'letter']).default('a4'))
    .option('--large', 'larger lettering')

function readSeconds(text: string): number {
  const match = /^(\d+(?:\.\d+)?)\s*(s|min)?$/.exec(text)
  if (!match) throw new InvalidArgumentError('Write a time such as 10s or 2min.')
  return Number(match[1]) * (match[2] === 'min' ? 60 : 1)
}

function readPort(text: string): number {
  const port = Number(text)
  if (!Number.isInteger(port) || port < 0 || port > 65535)
    throw new InvalidArgumentError('Write a port from 0 to 65535.')
  return port
}
