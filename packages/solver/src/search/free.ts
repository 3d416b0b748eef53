/// <reference path="./maxrects-packer.d.ts" />
import { MaxRectsPacker, Rectangle } from 'maxrects-packer/dist/maxrects-packer.mjs'
import type { Problem, Spot } from '../problem.ts'
import { endOf } from '../problem.ts'
import type { Trial } from './trial.ts'

/**
 * Quick free layouts by the maximal-rectangles packer: several orders, each of its rules, in the shortest of growing lengths that
 * takes every piece. The packer drops pieces that do not fit without a word, so pieces are counted. Only for pieces that may lie
 * anywhere. Null when none is at most `longest`.
 */
export function packed(trial: Trial, bound: number, longest: number): Spot[] | null {
  const { problem } = trial
  let best: Spot[] | null = null
  let most = longest
  for (const byLength of [true, false]) {
    for (const logic of [0, 1]) {
      const spots = shortestPacked(problem, bound, most, byLength, logic)
      if (spots === null) continue
      best = spots
      most = endOf(problem, spots) - 1
      if (most < bound) return best
    }
  }
  return best
}

/** Lengths from the bound on, each step a little longer; then once more tight behind the last piece. */
function shortestPacked(
  problem: Problem,
  bound: number,
  most: number,
  byLength: boolean,
  logic: number,
): Spot[] | null {
  const step = Math.max(1, Math.floor(bound / 100))
  for (let length = bound; length <= most; length += step) {
    const spots = packedIn(problem, length, byLength, logic)
    if (spots !== null) return spots
  }
  return null
}

function packedIn(problem: Problem, length: number, byLength: boolean, logic: number): Spot[] | null {
  const rects = problem.kinds.flatMap(({ count, postures }, kind) =>
    Array.from({ length: count }, () => {
      const made = new Rectangle(postures[0]!.width, postures[0]!.length)
      made.data = kind
      made.allowRotation = false
      return made
    }),
  )
  rects.sort((a, b) =>
    byLength
      ? b.height - a.height || b.width - a.width
      : b.width * b.height - a.width * a.height || b.height - a.height,
  )
  const options = { smart: false, pot: false, square: false, allowRotation: false, logic }
  const packer = new MaxRectsPacker(problem.width, length, 0, options)
  packer.addArray(rects)
  const [bin] = packer.bins
  if (packer.bins.length !== 1 || bin!.rects.length !== rects.length) return null
  return bin!.rects.map(({ data, x, y }) => ({ kind: data as number, posture: 0, x, y }))
}
