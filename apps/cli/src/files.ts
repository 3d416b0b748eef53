import { existsSync, mkdirSync, readFileSync, renameSync, rmSync, statSync, writeFileSync } from 'node:fs'
import { basename, dirname, join } from 'node:path'
import { EXIT, Halt } from './exit.ts'

/** Plans larger than this are refused before they are read. */
const LARGEST_PLAN = 1_000_000

/** The text of a plan; `-` is standard input. */
export function readPlanText(plan: string): string {
  if (plan === '-') return readStandardInput()
  let size: number
  try {
    size = statSync(plan).size
  } catch (error) {
    throw cannotRead(plan, error)
  }
  if (size > LARGEST_PLAN)
    throw new Halt(EXIT.mistakesInPlan, [
      `${plan} is larger than 1 MB.`,
      'Split it into several plans.',
      'Nothing was laid out.',
    ])
  try {
    return readFileSync(plan, 'utf8')
  } catch (error) {
    throw cannotRead(plan, error)
  }
}

function readStandardInput(): string {
  if (process.stdin.isTTY)
    throw new Halt(EXIT.wrongUse, [
      'A plan was expected on standard input, and none comes.',
      'Give a file, or pipe a plan in: lengthwise lay - < my-plan.yaml',
      'Nothing was laid out.',
    ])
  try {
    return readFileSync(0, 'utf8')
  } catch (error) {
    throw cannotRead('standard input', error)
  }
}

const cannotRead = (what: string, error: unknown): Halt =>
  new Halt(EXIT.cannotRead, [
    `${what} cannot be read: ${reason(error)}.`,
    'Look at the name and the folder, or write a sample: lengthwise new my-plan.yaml',
    'Nothing was laid out.',
  ])

/** Writes a file whole or not at all; an existing one only with `force`. `-` is standard output. */
export function writeWhole(file: string, content: string | Uint8Array, force: boolean): void {
  if (file === '-') {
    process.stdout.write(content)
    return
  }
  if (existsSync(file) && !force)
    throw new Halt(EXIT.cannotWrite, [
      `${file} is there already.`,
      'Choose another name, or add --force to replace it.',
      'Nothing was written.',
    ])
  const beside = join(dirname(file), `.${basename(file)}.${process.pid}.part`)
  try {
    writeFileSync(beside, content)
    renameSync(beside, file)
  } catch (error) {
    rmSync(beside, { force: true })
    throw new Halt(EXIT.cannotWrite, [
      `${file} cannot be written: ${reason(error)}.`,
      'Look at the folder and whether you may write there.',
      'Nothing was written.',
    ])
  }
}

export function makeFolder(folder: string): void {
  try {
    mkdirSync(folder, { recursive: true })
  } catch (error) {
    throw new Halt(EXIT.cannotWrite, [
      `${folder} cannot be made: ${reason(error)}.`,
      'Choose a folder you may write to.',
      'Nothing was written.',
    ])
  }
}

const REASONS: Readonly<Record<string, string>> = {
  ENOENT: 'there is no such file or folder',
  EACCES: 'it may not be opened',
  EPERM: 'it may not be opened',
  EISDIR: 'it is a folder',
  ENOTDIR: 'a folder in its path is a file',
  ENOSPC: 'the disk is full',
  EROFS: 'the disk cannot be written to',
}
function reason(error: unknown): string {
  const code = error instanceof Error && 'code' in error ? String(error.code) : ''
  return REASONS[code] ?? (error instanceof Error ? error.message : String(error))
}
