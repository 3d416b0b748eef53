import { isMainThread, parentPort, Worker, workerData } from 'node:worker_threads'
import type { PlanOptions, Progress, Result } from '@lengthwise/planner'
import { plan } from '@lengthwise/planner'
import { EXIT, Halt } from './exit.ts'

type Order = Result['order']

export interface RunOptions extends Pick<PlanOptions, 'effort' | 'compareWidths'> {
  /** null: no limit but the effort */
  readonly seconds: number | null
  /** a line about progress; shown on a terminal only */
  readonly onProgress?: (progress: Progress) => void
}

/** A timer cannot wait longer, some 24 days, and would then ring at once. */
const LONGEST_WAIT = 2 ** 31 - 1

export interface Ran {
  readonly result: Result
  readonly interrupted: boolean
}

const ROLE = 'plan'

interface Task {
  readonly order: Order
  readonly options: Pick<PlanOptions, 'effort' | 'compareWidths'>
  /** word 0 turns 1 when the run is to end with the best so far */
  readonly stop: SharedArrayBuffer
}

type Message = { readonly progress: Progress } | { readonly result: Result } | { readonly fault: string }

let interrupted = false
let stopPlanning: (() => void) | null = null
let ready: Worker | null = null

function onInterrupt(): void {
  if (interrupted) process.exit(EXIT.interrupted)
  interrupted = true
  stopPlanning?.()
}

/** Ctrl-C is heard from the first moment of a command that plans: it asks for the best so far, and a second one ends it at once. */
export function hearInterrupts(): void {
  // taken off and put on again, it would lose what is on its way
  if (!process.listeners('SIGINT').includes(onInterrupt)) process.on('SIGINT', onInterrupt)
}

/** The planning thread begins to load while the plan is still being read. A command that never plans does not wait for it. */
export function readyToPlan(): void {
  ready = new Worker(new URL(import.meta.url), { workerData: ROLE })
  ready.unref()
}

/**
 * Plans on a thread of its own, so that Ctrl-C and the clock are heard while it works: both ask it to stop,
 * and it answers with the best layout it has.
 */
export async function runPlan(order: Order, options: RunOptions): Promise<Ran> {
  const stop = new SharedArrayBuffer(4)
  const { seconds, onProgress, ...planOptions } = options
  const task: Task = { order, options: planOptions, stop }
  if (!ready) readyToPlan()
  const worker = ready!
  ready = null
  worker.ref()
  const ask = (): void => void Atomics.store(new Int32Array(stop), 0, 1)
  hearInterrupts()
  stopPlanning = ask
  if (interrupted) ask()
  const timer = seconds === null ? undefined : setTimeout(ask, Math.min(seconds * 1000, LONGEST_WAIT))
  try {
    const result = await new Promise<Result>((resolve, reject) => {
      worker.on('message', (message: Message) => {
        if ('progress' in message) onProgress?.(message.progress)
        else if ('result' in message) resolve(message.result)
        else reject(new Error(message.fault))
      })
      worker.on('error', reject)
      worker.on('exit', (code) => reject(new Error(`the planning thread ended with ${code}`)))
      worker.postMessage(task)
    })
    return { result, interrupted }
  } finally {
    clearTimeout(timer)
    process.off('SIGINT', onInterrupt)
    // it has nothing more to say: no answer waits for its end
    void worker.terminate()
  }
}

/** True on the planning thread, where it also does the work. */
export function servePlanning(): boolean {
  if (isMainThread || workerData !== ROLE) return false
  parentPort?.once('message', doTask)
  return true
}

function doTask({ order, options, stop }: Task): void {
  const flag = new Int32Array(stop)
  const post = (message: Message): void => parentPort?.postMessage(message)
  try {
    const result = plan(order, {
      ...options,
      stop: () => Atomics.load(flag, 0) === 1,
      onProgress: (progress) => post({ progress }),
    })
    post({ result })
  } catch (error) {
    post({ fault: error instanceof Error ? (error.stack ?? error.message) : String(error) })
  }
}

/** What a fault of the program looks like to its user; the stack only with --debug. */
export const programFault = (error: unknown, debug: boolean): Halt =>
  new Halt(EXIT.programFault, [
    'The program made a mistake and will not show an unchecked answer.',
    debug ? (error instanceof Error ? (error.stack ?? error.message) : String(error)) : `It says: ${firstLine(error)}`,
    'Run it again with --debug and keep the plan: both help to mend it. Nothing was written.',
  ])

const firstLine = (error: unknown): string =>
  (error instanceof Error ? error.message : String(error)).split('\n')[0] ?? ''
