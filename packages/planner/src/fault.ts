/** What a check of our own refused. */
export interface Refusal {
  readonly code: string
  readonly message: string
}

/** The program contradicts itself: its own checks refuse its answer. Never a matter of the plan. */
export class ProgramFault extends Error {
  readonly refusals: readonly Refusal[]

  constructor(refusals: readonly Refusal[]) {
    super(`the answer was refused by its own checks: ${refusals.map((r) => `${r.code}: ${r.message}`).join('; ')}`)
    this.name = 'ProgramFault'
    this.refusals = refusals
  }
}
