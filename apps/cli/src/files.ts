import {
  closeSync,
  existsSync,
  mkdirSync,
  openSync,
  readSync,
  renameSync,
  rmSync,
  statSync,
  writeFileSync,
} from 'node:fs'
import { basename, dirname, join } from 'node:path'
import { EXIT, Halt } from './exit.ts'

/** Plans larger than this are refused before they are read. */
const LARGEST_PLAN = 1_000_000

/** The text of a plan; `-` is standard input. */
export function readPlanText(plan: string): string {
  if (plan !== '-') return decoded(plan, readWhole(plan, plan))
  if (process.stdin.isTTY)
    throw new Halt(EXIT.wrongUse, [
      'A plan was expected on standard input, and none comes.',
      'Give a file, or pipe a plan in: lengthwise lay - < my-plan.yaml',
      'Nothing was laid out.',
    ])
  return decoded('standard input', readWhole(0, 'standard input'))
}

function readWhole(file: string | 0, name: string): Uint8Array {
  let descriptor: number | null = null
  try {
    descriptor = file === 0 ? 0 : openSync(file, 'r')
    return readToTheEnd(descriptor, name)
  } catch (error) {
    throw error instanceof Halt ? error : cannotRead(name, error)
  } finally {
    if (descriptor !== null && file !== 0) closeSync(descriptor)
  }
}

/** Piece by piece: who writes to a pipe may be slow, and may never end. */
function readToTheEnd(descriptor: number, name: string): Uint8Array {
  const pieces: Uint8Array[] = []
  let size = 0
  for (;;) {
    const piece = new Uint8Array(65_536)
    let read: number
    try {
      read = readSync(descriptor, piece)
    } catch (error) {
      if (codeOf(error) === 'EOF') break
      if (codeOf(error) !== 'EAGAIN') throw error
      // nothing has come yet
      Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, 20)
      continue
    }
    if (read === 0) break
    pieces.push(piece.subarray(0, read))
    size += read
    if (size > LARGEST_PLAN) throw tooLarge(name)
  }
  return Buffer.concat(pieces)
}

/** Letters of another encoding would be taken for others, in names that are printed. */
function decoded(plan: string, bytes: Uint8Array): string {
  try {
    return new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(bytes)
  } catch {
    throw new Halt(EXIT.cannotRead, [
      `${plan} cannot be read: it is not text in UTF-8.`,
      'Save it as UTF-8 and try again.',
      'Nothing was laid out.',
    ])
  }
}

const tooLarge = (plan: string): Halt =>
  new Halt(EXIT.mistakesInPlan, [
    `${plan} is larger than 1 MB.`,
    'Split it into several plans.',
    'Nothing was laid out.',
  ])

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
    if (existsSync(file) && isDevice(file)) writeFileSync(file, content)
    else {
      writeFileSync(beside, content)
      renameSync(beside, file)
    }
  } catch (error) {
    clear(beside)
    throw new Halt(EXIT.cannotWrite, [
      `${file} cannot be written: ${reason(error)}.`,
      'Look at the folder and whether you may write there.',
      'Nothing was written.',
    ])
  }
}

/** A pipe or a device is written to and not replaced. */
const isDevice = (file: string): boolean => {
  const is = statSync(file)
  return !is.isFile() && !is.isDirectory()
}

function clear(unfinished: string): void {
  try {
    rmSync(unfinished, { force: true })
  } catch {
    // there is none where its folder is no folder
  }
}

/** What is said when standard output takes no more. */
export const cannotPrint = (error: unknown): Halt =>
  new Halt(EXIT.cannotWrite, [
    `The answer cannot be written: ${reason(error)}.`,
    'Make room, or send it elsewhere.',
    'It was not written, or not to its end.',
  ])

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
  EEXIST: 'a file of that name is there already',
  ENAMETOOLONG: 'the name is too long',
  ENOENT: 'there is no such file or folder',
  EACCES: 'it may not be opened',
  EPERM: 'it may not be opened',
  EISDIR: 'it is a folder',
  ENOTDIR: 'a folder in its path is a file',
  ENOSPC: 'the disk is full',
  EROFS: 'the disk cannot be written to',
}
function reason(error: unknown): string {
  return REASONS[codeOf(error)] ?? (error instanceof Error ? error.message : String(error))
}

const codeOf = (error: unknown): string => (error instanceof Error && 'code' in error ? String(error.code) : '')
