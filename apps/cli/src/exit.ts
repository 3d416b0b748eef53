/** Exit codes, numbers as in sysexits.h where that has one; the contract is in DEVELOPERS.md. */
export const EXIT = {
  done: 0,
  cannotBeCut: 1,
  wrongUse: 64,
  mistakesInPlan: 65,
  cannotRead: 66,
  programFault: 70,
  cannotWrite: 73,
  interrupted: 130,
} as const

export type ExitCode = (typeof EXIT)[keyof typeof EXIT]

/** Ends the command with a message in three parts: what and where, how to mend it, what was not done. */
export class Halt extends Error {
  readonly code: ExitCode
  readonly lines: readonly string[]
  constructor(code: ExitCode, lines: readonly string[]) {
    super(lines.join('\n'))
    this.code = code
    this.lines = lines
  }
}
