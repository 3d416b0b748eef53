import type { PlanOptions } from './result.ts'

/** How far a run looks, all counted in steps: a plan and an effort always give the same answer. */
export interface Effort {
  /** steps of search for one layout */
  readonly layoutSteps: number
  /** choices of ways looked at, half made or whole */
  readonly choices: number
  /** choices of ways laid out */
  readonly layouts: number
  /** steps of search for all layouts of one width together */
  readonly steps: number
  /** sharings among owned lengths tried for one cloth */
  readonly sharings: number
  /** widths tried for 'N or more is enough' */
  readonly narrower: number
  readonly stop: (() => boolean) | null
}

const EFFORTS: Readonly<Record<NonNullable<PlanOptions['effort']>, Omit<Effort, 'stop'>>> = {
  quick: { layoutSteps: 200_000, choices: 4_000, layouts: 40, steps: 1_000_000, sharings: 200, narrower: 20 },
  usual: { layoutSteps: 1_500_000, choices: 20_000, layouts: 200, steps: 2_500_000, sharings: 2_000, narrower: 80 },
  thorough: {
    layoutSteps: 50_000_000,
    choices: 400_000,
    layouts: 4_000,
    steps: 1_000_000_000,
    sharings: 40_000,
    narrower: 400,
  },
}

export const effortOf = (options: PlanOptions): Effort => ({
  ...EFFORTS[options.effort ?? 'usual'],
  stop: options.stop ?? null,
})
