import type { Rect } from '../model.ts'
import { END, LEFT, RIGHT, START } from '../model.ts'
import type { Kind, Problem } from '../problem.ts'
import type { Random } from './random.ts'

/** One way to put one kind down, flat for the inner loops. */
export interface Shape {
  readonly kind: number
  readonly posture: number
  readonly width: number
  readonly length: number
  readonly flush: number
}

/**
 * A problem with a trial length, as the tree search reads it. Positions are absolute, so flush sides, zones, phases and flaws are
 * tested where a piece is set down.
 */
export interface Trial {
  readonly problem: Problem
  readonly width: number
  readonly length: number
  /** every posture of every kind, larger areas first */
  readonly shapes: readonly Shape[]
  readonly counts: readonly number[]
  /** area of one piece of each kind */
  readonly areas: readonly number[]
  /** what leaving a piece of each kind out costs: its area, and more the longer its longer side, as such pieces hardly come in later */
  readonly dues: readonly number[]
  /** kinds that must touch the start or the end: once out, they hardly come in again */
  readonly rare: readonly boolean[]
  /** neither sides, zones, ties nor flaws: blocks may be moved and closed up freely */
  readonly plain: boolean
  /** per kind: the residue its position must have, fixed for this trial; null where it has no tie */
  readonly phases: readonly (Phase | null)[]
}

interface Phase {
  readonly axis: 'along' | 'across'
  readonly repeat: number
  readonly residue: number
}

/**
 * `random` chooses, for each group that keeps phase, which of its kinds may start at 0: any choice is sound, none is a proof.
 */
export function trialOf(problem: Problem, length: number, random: Random): Trial {
  const { kinds } = problem
  const shapes = kinds.flatMap((kind, index) =>
    kind.postures.map(({ width, length: along, flush }, posture) => ({
      kind: index,
      posture,
      width,
      length: along,
      flush,
    })),
  )
  return {
    problem,
    width: problem.width,
    length,
    shapes: shapes.sort((a, b) => b.width * b.length - a.width * a.length || a.kind - b.kind || a.posture - b.posture),
    counts: kinds.map((kind) => kind.count),
    areas: kinds.map((kind) => kind.area),
    dues: kinds.map(({ area, postures }) => {
      const side = Math.max(postures[0]!.width, postures[0]!.length)
      return area + Math.floor((side * side) / 10)
    }),
    rare: kinds.map((kind) => kind.postures.every(({ flush }) => (flush & (START | END)) !== 0)),
    plain: isPlain(problem),
    phases: phasesOf(kinds, random),
  }
}

/** Neither sides, zones, ties nor flaws: pieces may lie anywhere. */
export function isPlain({ zones, flaws, kinds }: Problem): boolean {
  return (
    zones.left + zones.right + zones.start + zones.end === 0 &&
    flaws.length === 0 &&
    kinds.every((kind) => kind.tie === null && kind.postures.every((posture) => posture.flush === 0))
  )
}

function phasesOf(kinds: readonly Kind[], random: Random): (Phase | null)[] {
  const groups = new Map<string, Kind[]>()
  for (const kind of kinds) {
    if (kind.tie === null) continue
    const key = `${kind.tie.axis} ${kind.tie.group}`
    groups.set(key, [...(groups.get(key) ?? []), kind])
  }
  const origins = new Map<string, number>()
  for (const [key, members] of groups) {
    const absolute = members.some((member) => member.tie!.absolute)
    origins.set(key, absolute ? 0 : -members[random.below(members.length)]!.tie!.offset)
  }
  return kinds.map(({ tie }) => {
    if (tie === null) return null
    const residue = tie.offset + origins.get(`${tie.axis} ${tie.group}`)!
    return { axis: tie.axis, repeat: tie.repeat, residue: ((residue % tie.repeat) + tie.repeat) % tie.repeat }
  })
}

/** Where one piece goes when set down in `room` as near its start and left as the rules allow; null: nowhere found in it. */
export function seat(trial: Trial, room: Rect, shape: Shape): { x: number; y: number } | null {
  const { zones, flaws, length: fieldLength } = trial.problem
  const phase = trial.phases[shape.kind]!
  const zoneEnd = fieldLength === null ? 0 : zones.end
  const fixedAlong = (shape.flush & (START | END)) !== 0
  let fromX = room.x
  let fromY = room.y
  for (;;) {
    const x = seatOnAxis(fromX, room.x + room.width, shape.width, trial.width, zones.left, zones.right, {
      first: (shape.flush & LEFT) !== 0,
      last: (shape.flush & RIGHT) !== 0,
      phase: phase?.axis === 'across' ? phase : null,
    })
    const y = seatOnAxis(fromY, room.y + room.length, shape.length, trial.length, zones.start, zoneEnd, {
      first: (shape.flush & START) !== 0,
      last: (shape.flush & END) !== 0,
      phase: phase?.axis === 'along' ? phase : null,
    })
    if (x === null || y === null) return null
    const hit = flaws.find(
      (flaw) =>
        flaw.x < x + shape.width && x < flaw.x + flaw.width && flaw.y < y + shape.length && y < flaw.y + flaw.length,
    )
    if (hit === undefined) return { x, y }
    // a flaw in the way is passed along the strip, or across it where the piece must touch an end
    if (fixedAlong) fromX = hit.x + hit.width
    else fromY = hit.y + hit.length
  }
}

interface AxisRules {
  readonly first: boolean
  readonly last: boolean
  readonly phase: Phase | null
}

/** The least position from `from` on whose piece ends by `to`, out of the zones unless it is flush with their side. */
function seatOnAxis(
  from: number,
  to: number,
  size: number,
  whole: number,
  zoneFirst: number,
  zoneLast: number,
  { first, last, phase }: AxisRules,
): number | null {
  let at = first ? 0 : last ? whole - size : Math.max(from, zoneFirst)
  if (phase !== null) {
    const short = (((phase.residue - at) % phase.repeat) + phase.repeat) % phase.repeat
    if (short !== 0 && (first || last)) return null
    at += short
  }
  if (first && last && size !== whole) return null
  const end = last ? whole : whole - zoneLast
  return at < from || at + size > Math.min(to, end) ? null : at
}
