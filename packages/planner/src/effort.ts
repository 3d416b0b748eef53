import type { PlanOptions } from './result.ts'

/** How far a run looks, all counted in steps: a plan and an effort always give the same answer. */
export interface Effort {
  /** steps of search for one layout while ways are chosen, and for one that matters */
  readonly lookSteps: number
  readonly deepSteps: number
  /** choices of ways looked at, half made or whole */
  readonly choices: number
  /** steps for all choices of ways together, shared among the combinations of widths */
  readonly steps: number
  /** sharings among owned lengths tried for one cloth */
  readonly sharings: number
  /** widths tried for 'N or more is enough', and steps for each */
  readonly narrower: number
  readonly narrowSteps: number
  readonly stop: (() => boolean) | null
}

const EFFORTS: Readonly<Record<NonNullable<PlanOptions['effort']>, Omit<Effort, 'stop'>>> = {
  quick: {
    lookSteps: 50_000,
    deepSteps: 200_000,
    choices: 2_000,
    steps: 600_000,
    sharings: 200,
    narrower: 20,
    narrowSteps: 20_000,
  },
  usual: {
    lookSteps: 200_000,
    deepSteps: 800_000,
    choices: 20_000,
    steps: 2_000_000,
    sharings: 2_000,
    narrower: 80,
    narrowSteps: 60_000,
  },
  thorough: {
    lookSteps: 2_000_000,
    deepSteps: 50_000_000,
    choices: 400_000,
    steps: 1_000_000_000,
    sharings: 40_000,
    narrower: 400,
    narrowSteps: 5_000_000,
  },
}

export const effortOf = (options: PlanOptions): Effort => ({
  ...EFFORTS[options.effort ?? 'usual'],
  stop: options.stop ?? null,
})
