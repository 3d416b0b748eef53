import type { Tie } from '../model.ts'
import { END, START } from '../model.ts'
import type { Kind, Problem } from '../problem.ts'

/** Phases of groups that have pieces elsewhere, relative to a block's start, unmoved; -1 for others. Equal sets are the same object. */
export interface PhaseSet {
  readonly id: number
  readonly of: Int32Array
  /** sets of one shape become each other when the block is moved; `base` tells by how much */
  readonly shape: number
  readonly base: number
}

/**
 * Groups whose placements keep phase along the strip: y − offset is the same for all of a group, modulo the repeat. What matters
 * of a block is the phase of each group that still has pieces elsewhere, relative to the block's own start; a group
 * that is whole inside a block is forgotten. The field is a group of its own for pieces with an absolute phase.
 *
 * A block floats: its tied pieces may all move along by any amount from 0 to its slack at no cost, and beyond that each unit
 * makes the block one unit longer. So a piece beside a longer one needs no list of the places where it may lie. Moved by u and v,
 * blocks a and b beside each other take max(a + (u − slack a)⁺, b + (v − slack b)⁺), which as a function of both moved on together
 * is again a length and a slack. So is b after a, where b is pushed on by what a grows. Two ways lead to a phase
 * difference: either of the two is moved, the other is not.
 *
 * Blocks that share a group are moved against each other until its phases agree. Blocks that do not may have to be moved
 * as well, when pieces elsewhere tie their groups together. By how much: in a layout pushed as far to the start as
 * its ties let it, every position is reached from the start by a chain of pieces lying tight on each other and of steps from one
 * piece of a group to another. So, modulo the repeat, every group's phase is a sum of lengths and of differences of offsets, each
 * used at most once, and two groups' phases differ by a difference of such sums: only these are tried.
 */
export class Phases {
  readonly repeat: number
  readonly groups: number
  /** per kind: its group, or -1 */
  private readonly groupOf: Int32Array
  private readonly kinds: readonly Kind[]
  /** differences that two groups' phases may have; null: any */
  private readonly differences: Uint8Array | null
  /** the group of pieces with an absolute phase, or -1 */
  readonly field: number
  private readonly tight: boolean
  private readonly leftOut: number
  private readonly known = new Map<string, PhaseSet>()
  private readonly shapes = new Map<string, number>()
  /** by the numbers of both sets */
  private readonly pairs: Pair[][] = []

  /** Null when the fronts cannot keep these ties: across the strip, of several repeats, or together with ends to touch. */
  static of(problem: Problem, tight: boolean, leftOut = 0): Phases | null {
    const ties = problem.kinds.flatMap((k) => (k.tie ? [k.tie] : []))
    const groups = new Set(ties.map(nameOf))
    const repeats = new Set(ties.map((t) => t.repeat))
    const ends = problem.kinds.some((k) => k.postures.some((p) => p.flush & (START | END)))
    return ties.some((t) => t.axis === 'across') || repeats.size !== 1 || ends || groups.size > MOST_GROUPS
      ? null
      : new Phases(problem, ties[0]!.repeat, tight, leftOut)
  }

  private constructor(problem: Problem, repeat: number, tight: boolean, leftOut: number) {
    this.tight = tight
    this.leftOut = leftOut
    this.repeat = repeat
    this.kinds = problem.kinds
    const names: string[] = []
    let field = -1
    this.groupOf = Int32Array.from(problem.kinds, ({ tie }) => {
      if (!tie) return -1
      const name = nameOf(tie)
      const known = names.indexOf(name)
      if (known >= 0) return known
      if (tie.absolute) field = names.length
      return names.push(name) - 1
    })
    this.field = field
    this.groups = names.length
    this.differences = differencesOf(problem, repeat)
  }

  /** Phase of a piece's group relative to the piece's own start; null for an untied kind. */
  ofPiece(kind: number): PhaseSet | null {
    const group = this.groupOf[kind]!
    if (group < 0) return null
    const out = new Int32Array(this.groups).fill(-1)
    out[group] = modulo(-this.kinds[kind]!.tie!.offset, this.repeat)
    return this.intern(out)
  }

  /** How far the tied pieces of a block of everything that starts at `from` must move along to meet the field's phase. */
  fromField(phases: PhaseSet, from: number): number {
    return modulo(-phases.of[this.field]! - from, this.repeat)
  }

  /** Which groups are whole within these counts, as bits. The field's never is. */
  closed(counts: readonly number[]): number {
    let out = 2 ** this.groups - 1
    for (const [i, k] of this.kinds.entries()) {
      const group = this.groupOf[i]!
      if (group >= 0 && counts[i] !== k.count) out &= ~(1 << group)
    }
    return this.field >= 0 ? out & ~(1 << this.field) : out
  }

  /** How two blocks may lie to each other, worked out once per pair of phase sets. */
  pair(a: PhaseSet | null, b: PhaseSet | null): Pair {
    const row = a?.id ?? 0
    const column = b?.id ?? 0
    const pairs = this.pairs[row] ?? []
    const known = pairs[column]
    if (known) return known
    const pair: Pair = {
      places: a && b ? this.places(a.of, b.of) : ANY,
      shared: !!a && !!b && share(a.of, b.of),
      merged: new Map(),
    }
    pairs[column] = pair
    this.pairs[row] = pairs
    return pair
  }

  /** How much farther on, modulo the repeat, b's tied pieces must lie than a's when b's start lies `lying` after a's instead of at the place. */
  fromPlace(place: number, lying: number): number {
    return modulo(place - lying, this.repeat)
  }

  /** The phases of both together, a's start `before` and b's `at` after the join's; those of whole groups are forgotten. */
  merge(
    pair: Pair,
    a: PhaseSet | null,
    before: number,
    b: PhaseSet | null,
    at: number,
    closed: number,
  ): PhaseSet | null {
    const key = (closed * this.repeat + modulo(before, this.repeat)) * this.repeat + modulo(at, this.repeat)
    let merged = pair.merged.get(key)
    if (merged === undefined) {
      merged = this.union(a?.of ?? null, before, b?.of ?? null, at, closed)
      pair.merged.set(key, merged)
    }
    return merged
  }

  private union(
    a: Int32Array | null,
    before: number,
    b: Int32Array | null,
    at: number,
    closed: number,
  ): PhaseSet | null {
    const out = new Int32Array(this.groups).fill(-1)
    let any = false
    for (let g = 0; g < this.groups; g++) {
      if (closed & (1 << g)) continue
      if (a && a[g]! >= 0) out[g] = modulo(a[g]! + before, this.repeat)
      else if (b && b[g]! >= 0) out[g] = modulo(b[g]! + at, this.repeat)
      else continue
      any = true
    }
    return any ? this.intern(out) : null
  }

  /** Residues at which b may start after a's start. */
  private places(a: Int32Array, b: Int32Array): readonly number[] {
    let only = -1
    for (let g = 0; g < this.groups; g++)
      if (a[g]! >= 0 && b[g]! >= 0) {
        const place = modulo(a[g]! - b[g]!, this.repeat)
        if (only >= 0 && only !== place) return []
        only = place
      }
    if (only >= 0) return [only]
    const out: number[] = []
    if (!this.tight) for (let place = 0; place < this.repeat; place++) if (this.useful(a, b, place)) out.push(place)
    out.length = Math.max(0, out.length - this.leftOut)
    return out
  }

  private intern(of: Int32Array): PhaseSet {
    const key = of.join()
    let known = this.known.get(key)
    if (!known) {
      const base = of.find((phase) => phase >= 0)!
      const relative = of.map((phase) => (phase < 0 ? -1 : modulo(phase - base, this.repeat))).join()
      const shape = this.shapes.get(relative) ?? this.shapes.size
      this.shapes.set(relative, shape)
      known = { id: this.known.size + 1, of, shape, base }
      this.known.set(key, known)
    }
    return known
  }

  private useful(a: Int32Array, b: Int32Array, shift: number): boolean {
    if (!this.differences) return true
    for (let g = 0; g < this.groups; g++)
      if (a[g]! >= 0)
        for (let h = 0; h < this.groups; h++)
          if (b[h]! >= 0 && !this.differences[modulo(b[h]! + shift - a[g]!, this.repeat)]) return false
    return true
  }
}

const ANY = [] as const

/** Two phase sets: residues at which the second may start after the first, and what they come to together. */
export interface Pair {
  readonly places: readonly number[]
  /** they have a group in common */
  readonly shared: boolean
  readonly merged: Map<number, PhaseSet | null>
}

function share(a: Int32Array, b: Int32Array): boolean {
  return a.some((phase, g) => phase >= 0 && b[g]! >= 0)
}

/** Are there groups whose phases are not tied to each other? */
export function severalGroups(problem: Problem): boolean {
  return new Set(problem.kinds.flatMap((k) => (k.tie ? [nameOf(k.tie)] : []))).size > 1
}

/** Groups are bits of a number, and more could not be searched through anyway. */
const MOST_GROUPS = 16

/** Beyond this many sums every difference is taken to be possible. */
const MOST_SUMS = 2000

function differencesOf(problem: Problem, repeat: number): Uint8Array | null {
  let sums = new Uint8Array(repeat)
  sums[0] = 1
  const plus = (choices: readonly number[]) => {
    const next = sums.slice()
    for (let s = 0; s < repeat; s++) if (sums[s]) for (const c of choices) next[modulo(s + c, repeat)] = 1
    sums = next
  }
  const offsets = new Map<string, number[]>()
  for (const k of problem.kinds) {
    const lengths = [...new Set(k.postures.map((p) => p.length))]
    for (let n = 0; n < Math.min(k.count, repeat); n++) plus(lengths)
    if (!k.tie) continue
    const name = nameOf(k.tie)
    offsets.set(name, [...(offsets.get(name) ?? (k.tie.absolute ? [0] : [])), k.tie.offset])
  }
  if (problem.zones.start > 0) plus([problem.zones.start])
  const all = new Set<number>([0])
  for (const of of offsets.values()) {
    plus(of.flatMap((a) => of.map((b) => a - b)))
    for (const o of of) all.add(o)
  }
  const phases = new Uint8Array(repeat)
  for (let s = 0; s < repeat; s++) if (sums[s]) for (const o of all) phases[modulo(s - o, repeat)] = 1
  const list = [...phases.keys()].filter((s) => phases[s])
  if (list.length > MOST_SUMS) return null
  const between = new Uint8Array(repeat)
  for (const a of list) for (const b of list) between[modulo(a - b, repeat)] = 1
  return between
}

function nameOf(tie: Tie): string {
  return tie.absolute ? 'absolute' : `group ${tie.group}`
}

function modulo(a: number, n: number): number {
  return ((a % n) + n) % n
}
