import type { ClothEdge, ClothEdges } from '@lengthwise/pieces'
import type { Rect } from '@lengthwise/solver'
import { length } from '@lengthwise/units'
import type { Part, Runs } from './parts.ts'
import { leaves } from './parts.ts'
import type { Box, Division, MeasuredFrom, Outcome } from './result.ts'

/** The cloth being divided. */
export interface InHand {
  readonly from: 'bolt' | 'sheet' | 'remnant'
  readonly width: number
  readonly length: number
  readonly edges: ClothEdges
  readonly divideBy: 'tearing' | 'thread' | 'shears'
  /** how far from a hem's stitching shears may still run along it */
  readonly finger: number
}

/** What a part that is not divided further is called. */
export interface Names {
  labelOf(placement: number): string
  /** null: not worth keeping */
  remnantOf(box: Rect): string | null
}

/**
 * The divisions in the order a person makes them: across the cloth from the cut end, then within each length in hand.
 * Each is measured from an edge that exists when its turn comes. Flags begin anew on each cloth.
 */
export function divisionsOf(root: Part, cloth: InHand, names: Names): readonly Division[] {
  const divisions: Division[] = []
  const flags = { tears: 0, shears: 0 }
  divide(root, clothEdges(cloth))
  return divisions

  function divide(part: Part, edges: EdgesInHand): void {
    if (part.kind === 'maze') snipAround(part, edges)
    if (part.kind !== 'cuts') return
    // first the whole row of cuts in one direction, each leaving the rest in hand
    const { runs, parts } = part
    const edgesOf: EdgesInHand[] = []
    let inHand = edges
    let hand = part.box
    let rest = insideOf(parts, names)
    parts.slice(0, -1).forEach((before, i) => {
      const inBefore = insideOf([before], names)
      rest = withoutFirst(rest, inBefore)
      const at = runs === 'across' ? end(before.box) : right(before.box)
      const then = parts.slice(i + 1)
      const gives = [outcomeOf([before], inBefore, names), outcomeOf(then, rest, names)] as const
      const division = cut({ runs, at, hand, edges: inHand, before, rest: then }, gives)
      divisions.push(division)
      const made: MeasuredFrom = { kind: 'division', flag: division.flag }
      edgesOf.push(runs === 'across' ? { ...inHand, end: made } : { ...inHand, right: made })
      inHand = runs === 'across' ? { ...inHand, start: made } : { ...inHand, left: made }
      hand =
        runs === 'across' ? { ...hand, y: at, length: end(hand) - at } : { ...hand, x: at, width: right(hand) - at }
    })
    edgesOf.push(inHand)
    // then each part by itself
    parts.forEach((p, i) => {
      divide(p, edgesOf[i]!)
    })
  }

  function cut(c: Cut, gives: Division['gives']): Division {
    const how = howToDivide(cloth, c.runs, c.at, c.hand)
    const [from, to] = c.runs === 'across' ? [c.hand.x, right(c.hand)] : [c.hand.y, end(c.hand)]
    return {
      n: divisions.length + 1,
      flag: flagFor(how, flags),
      how,
      runs: c.runs,
      at: length(c.at),
      from: length(from),
      to: length(to),
      hand: boxOf(c.hand),
      measure: measureFrom(c),
      gives,
    }
  }

  // no cut runs right across: each follows its piece edges, and the parts fall free with the last of them
  function snipAround(part: Extract<Part, { kind: 'maze' }>, edges: EdgesInHand): void {
    const whole = outcomeOf(part.parts, insideOf(part.parts, names), names)
    for (const line of part.lines) {
      const how = 'shears'
      const from = line.runs === 'across' ? edges.start : edges.left
      const distance = line.at - (line.runs === 'across' ? part.box.y : part.box.x)
      divisions.push({
        n: divisions.length + 1,
        flag: flagFor(how, flags),
        how,
        runs: line.runs,
        at: length(line.at),
        from: length(line.from),
        to: length(line.to),
        hand: boxOf(part.box),
        measure: { distance: length(distance), from },
        gives: [whole, whole],
      })
    }
  }
}

/** A division to come: the rectangle in hand, what comes off, and what stays in hand. */
interface Cut {
  readonly runs: Runs
  readonly at: number
  readonly hand: Rect
  readonly edges: EdgesInHand
  readonly before: Part
  readonly rest: readonly Part[]
}

/** Where each edge of the rectangle in hand came from. */
type EdgesInHand = Readonly<Record<'start' | 'end' | 'left' | 'right', MeasuredFrom>>

function clothEdges(cloth: InHand): EdgesInHand {
  const bolt = cloth.from === 'bolt'
  const at = (edge: Extract<MeasuredFrom, { kind: 'cloth-edge' }>['edge']): MeasuredFrom => ({
    kind: 'cloth-edge',
    edge,
  })
  const kind = (edge: ClothEdge) => edge.kind
  return {
    start: at(bolt ? 'cut-end' : kind(cloth.edges.head) === 'hem' ? 'head-hem' : 'head-end'),
    end: at(bolt ? 'bolt-end' : kind(cloth.edges.foot) === 'hem' ? 'foot-hem' : 'foot-end'),
    left: at(named('left', cloth.edges.left)),
    right: at(named('right', cloth.edges.right)),
  }
}

function named<S extends 'left' | 'right'>(side: S, edge: ClothEdge): `${S}-selvedge` | `${S}-hem` | `${S}-edge` {
  if (edge.kind === 'selvedge') return `${side}-selvedge`
  return edge.kind === 'hem' ? `${side}-hem` : `${side}-edge`
}

/**
 * Tear, draw a thread or cut. Along a hem nothing is torn, since a hem need not follow the grain: up to a finger's width
 * from its stitching shears are used. A tear that crosses a hem starts with shears through the hem; where little more than
 * the hem is crossed, shears do it all.
 */
export function howToDivide(cloth: InHand, runs: Runs, at: number, hand: Rect): Division['how'] {
  if (cloth.divideBy === 'shears') return 'shears'
  const depth = (edge: ClothEdge) => (edge.kind === 'hem' ? edge.depth : 0)
  const { edges } = cloth
  const hems = {
    start: hand.y === 0 ? depth(edges.head) : 0,
    end: end(hand) === cloth.length ? depth(edges.foot) : 0,
    left: hand.x === 0 ? depth(edges.left) : 0,
    right: right(hand) === cloth.width ? depth(edges.right) : 0,
  }
  const [low, high, crossedLow, crossedHigh] =
    runs === 'across' ? [hems.start, hems.end, hems.left, hems.right] : [hems.left, hems.right, hems.start, hems.end]
  const [fromLow, fromHigh] = runs === 'across' ? [at, cloth.length - at] : [at, cloth.width - at]
  if ((low > 0 && fromLow <= low + cloth.finger) || (high > 0 && fromHigh <= high + cloth.finger)) return 'shears'
  if (cloth.divideBy === 'thread') return 'thread'
  const crossed = crossedLow + crossedHigh
  if (crossed === 0) return 'tear'
  const run = runs === 'across' ? hand.width : hand.length
  return run - crossed <= cloth.finger ? 'shears' : 'shears-through-hem-then-tear'
}

/**
 * Of the two sides the one that must be true is measured, so that the other takes what the cloth has more or less than it
 * should: the far side where it has nothing left over in this direction and the near side has, else the near one. A side
 * that holds cuts which end inside is left as it is, and so is the end that came off the bolt: it is not squared.
 */
function measureFrom(c: Cut): Division['measure'] {
  const across = c.runs === 'across'
  const near = across ? c.edges.start : c.edges.left
  const far = across ? c.edges.end : c.edges.right
  const fromNear = c.at - (across ? c.hand.y : c.hand.x)
  const fromFar = (across ? end(c.hand) : right(c.hand)) - c.at
  const straight = far.kind === 'division' || far.edge !== 'bolt-end'
  const exact = straight && canGive(c.before, c.runs) && c.rest.every((part) => mustBeTrue(part, c.runs))
  return exact ? { distance: length(fromFar), from: far } : { distance: length(fromNear), from: near }
}

/** Does a part have something left over in this direction, wherever it is crossed? */
function canGive(part: Part, runs: Runs): boolean {
  if (part.kind !== 'cuts') return part.kind === 'left-over'
  const each = (inner: Part): boolean => canGive(inner, runs)
  return part.runs === runs ? part.parts.some(each) : part.parts.every(each)
}

/** Is there a way through a part in this direction that meets pieces alone? */
function mustBeTrue(part: Part, runs: Runs): boolean {
  if (part.kind !== 'cuts') return part.kind === 'piece'
  const each = (inner: Part): boolean => mustBeTrue(inner, runs)
  return part.runs === runs ? part.parts.every(each) : part.parts.some(each)
}

function flagFor(how: Division['how'], flags: { tears: number; shears: number }): string {
  if (how === 'shears') {
    flags.shears += 1
    return `C${flags.shears}`
  }
  flags.tears += 1
  return `T${flags.tears}`
}

/** What parts will come apart into, in the order in which it comes free. */
interface Inside {
  readonly labels: readonly string[]
  readonly remnants: readonly string[]
}

function insideOf(parts: readonly Part[], names: Names): Inside {
  const inside = parts.flatMap(leaves)
  return {
    labels: inside.flatMap((leaf) => (leaf.kind === 'piece' ? [names.labelOf(leaf.placement)] : [])),
    remnants: inside.flatMap((leaf) => (leaf.kind === 'left-over' ? [names.remnantOf(leaf.box)] : [])).filter(isName),
  }
}

const withoutFirst = (all: Inside, first: Inside): Inside => ({
  labels: all.labels.slice(first.labels.length),
  remnants: all.remnants.slice(first.remnants.length),
})

function outcomeOf(parts: readonly Part[], inside: Inside, names: Names): Outcome {
  const box = boxOf(parts.map((p) => p.box).reduce(around))
  const [only] = parts
  if (only && parts.length === 1) {
    if (only.kind === 'piece') return { kind: 'piece', label: names.labelOf(only.placement), box }
    if (only.kind === 'trim') return { kind: 'trim', box }
    if (only.kind === 'left-over') {
      const name = names.remnantOf(only.box)
      return name === null ? { kind: 'waste', box } : { kind: 'remnant', name, box }
    }
  }
  return { kind: 'part', ...inside, box }
}

const isName = (name: string | null): name is string => name !== null
const end = (box: Rect): number => box.y + box.length
const right = (box: Rect): number => box.x + box.width

function around(a: Rect, b: Rect): Rect {
  const x = Math.min(a.x, b.x)
  const y = Math.min(a.y, b.y)
  return { x, y, width: Math.max(right(a), right(b)) - x, length: Math.max(end(a), end(b)) - y }
}

export const boxOf = (r: Rect): Box => ({
  x: length(r.x),
  y: length(r.y),
  width: length(r.width),
  length: length(r.length),
})
