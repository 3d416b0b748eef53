import type { Result } from '@lengthwise/planner'
import type { Problem } from '@lengthwise/units'
import type { Ask, Tell } from './messages.ts'
import { workerFor } from './parts.ts'
import type { Plan } from './plan.ts'

/** The answer as it stands. The last good one stays until the next is there. */
export interface Answer {
  readonly result: Result | null
  /** `result` belongs to the plan as it is now; otherwise it is from before the last change */
  readonly current: boolean
  readonly working: boolean
  /** what is being tried, in words; empty when nothing is */
  readonly progress: string
  readonly problems: readonly Problem[]
  /** the program's own checks refused the answer; null: no such thing */
  readonly fault: string | null
}

export const NO_ANSWER: Answer = {
  result: null,
  current: false,
  working: false,
  progress: '',
  problems: [],
  fault: null,
}

// long enough that the figures of one number are one question
const PAUSE = 180

/** Asks for a new answer after every change: the worker of the old question is ended, a fresh one waits for the next. */
export class Answerer {
  private busy: Worker | null = null
  private spare: Worker = workerFor('plan')
  private timer = 0
  private state: Answer = NO_ANSWER

  private readonly show: (answer: Answer) => void

  constructor(show: (answer: Answer) => void) {
    this.show = show
  }

  /** The plan has changed. `now` leaves the pause for typing out. */
  ask(plan: Plan, now = false): void {
    this.end()
    this.set({ current: false, working: true, progress: '' })
    this.timer = window.setTimeout(() => this.start(plan), now ? 0 : PAUSE)
  }

  /** Stop, and use the best so far. */
  stop(): void {
    this.end()
    const { result, current } = this.state
    this.set({ working: false, progress: '', ...(result && current ? { result: { ...result, timed: true } } : {}) })
  }

  private start(plan: Plan): void {
    const worker = this.spare
    this.spare = workerFor('plan')
    this.busy = worker
    worker.onmessage = (event: MessageEvent<Tell>) => this.hear(event.data)
    worker.onerror = (event) => this.hear({ tell: 'fault', message: event.message })
    worker.postMessage({ ask: 'plan', plan } satisfies Ask)
  }

  private hear(told: Tell): void {
    switch (told.tell) {
      case 'progress':
        this.set({ progress: told.words })
        break
      case 'better':
        this.set({ result: told.result, current: true, problems: [], fault: null })
        break
      case 'done':
        this.over({ result: told.result, current: true })
        break
      case 'problems':
        this.over({ current: false, problems: told.problems })
        break
      case 'fault':
        this.over({ current: false, fault: told.message })
        break
    }
  }

  private over(part: Partial<Answer>): void {
    this.end()
    this.set({ working: false, progress: '', problems: [], fault: null, ...part })
  }

  private end(): void {
    window.clearTimeout(this.timer)
    this.busy?.terminate()
    this.busy = null
  }

  private set(part: Partial<Answer>): void {
    this.state = { ...this.state, ...part }
    this.show(this.state)
  }
}

// a file that takes longer than this to read is refused rather than waited for
const PATIENCE = 10_000

/** One question to a worker of its own, for what is asked by pressing: opening a file, writing one. */
export function askOnce(ask: Ask): Promise<Tell> {
  const worker = workerFor('plan')
  return new Promise<Tell>((resolve) => {
    const timer = window.setTimeout(
      () => resolve({ tell: 'fault', message: 'It took too long and was given up' }),
      PATIENCE,
    )
    worker.onmessage = (event: MessageEvent<Tell>) => {
      window.clearTimeout(timer)
      resolve(event.data)
    }
    worker.onerror = (event) => resolve({ tell: 'fault', message: event.message })
    worker.postMessage(ask)
  }).finally(() => worker.terminate())
}
