import { LEFT, RIGHT } from '../model.ts'
import type { Problem } from '../problem.ts'
import type { Blocks } from './blocks.ts'
import type { Strictness } from './strictness.ts'

/** What holds of every join, tied or not. */
export class JoinRules {
  readonly zones: Problem['zones']
  private readonly blocks: Blocks
  private readonly strictness: Strictness

  constructor({ zones }: Problem, blocks: Blocks, strictness: Strictness) {
    this.zones = zones
    this.blocks = blocks
    this.strictness = strictness
  }

  /** Of all ways to put a row or a column together, one element at a time is enough: two rows are not put beside each other. */
  mayJoin(how: number, a: number, b: number): boolean {
    const { how: of } = this.blocks
    return (of[a] === how ? 1 : 0) + (of[b] === how ? 1 : 0) + this.strictness.chains < 2
  }

  /** How far a block with `own` flags moves or grows inside one with `all` flags: by the zones it must stay out of. */
  lift(own: number, all: number, low: number, high: number): number {
    const { zones } = this
    const gained = all & ~own
    const strict = this.strictness.zones
    return (
      (gained & low ? (low === LEFT ? zones.left : zones.start) + strict : 0) +
      (gained & high ? (high === RIGHT ? zones.right : zones.end) + strict : 0)
    )
  }
}

/** Two in a row; `low` and `high` tell whether the first touches the low side and the second the high side. */
export function joined(a: number, b: number, low: boolean, high: boolean, lowZone: number, highZone: number): number {
  if (low && high) return Math.max(a + b, lowZone + b, a + highZone)
  if (low) return Math.max(a, lowZone) + b
  if (high) return a + Math.max(b, highZone)
  return a + b
}
