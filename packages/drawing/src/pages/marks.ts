import type { Placed, Result } from '@lengthwise/planner'
import type { Length } from '@lengthwise/units'
import type { Style } from '../cloth/style.ts'
import { PITCH } from '../cloth/style.ts'
import type { Measure } from '../measure.ts'
import { byNumber } from '../words/hands.ts'
import { counted, labelsListed, listed } from '../words/list.ts'
import type { Leaf } from './leaf.ts'
import { BOTTOM, FRAME, leaf, setRuns } from './leaf.ts'

type Kind = Placed['marks'][number]['kind']

/** What each kind of mark is called, one and several, in the order in which they are told. */
const KINDS: readonly (readonly [kind: Kind, one: string, several: string])[] = [
  ['fold', 'fold', 'folds'],
  ['seam', 'stitching', 'stitching'],
  ['zip-end', 'zip end', 'zip ends'],
  ['tie', 'tie', 'ties'],
  ['button', 'button or snap', 'buttons or snaps'],
  ['corner-square', 'square', 'squares'],
]

/** The marks that the sewing order speaks of, with their places: a line for all pieces that are marked alike. */
export function markLeaves(result: Result, measure: Measure, style: Style): readonly Leaf[] {
  const alike = new Map<string, { readonly words: string; readonly top: string; readonly labels: string[] }>()
  for (const cloth of result.cloths)
    for (const p of cloth.placed) {
      const words = markWords(p, measure)
      if (words === '') continue
      // where an arrow to the top of the print does not show it
      const top = cloth.cloth.print.way === 'one-way' || !ASIDE.includes(p.top) ? '' : `, top\u00a0at\u00a0${p.top}`
      const line = alike.get(top + words) ?? { words, top, labels: [] }
      line.labels.push(p.label)
      alike.set(top + words, line)
    }
  const lines = [...alike.values()]
    .map(({ words, top, labels }) => ({ words, top, labels: byNumber(labels) }))
    .sort((a, b) => Number(a.labels[0]) - Number(b.labels[0]))
  if (lines.length === 0) return []
  const title = 'Marks to carry over'
  const lead =
    'As each piece comes away: lay it right side up, its top away from you, measure from its own edges, put pins through and chalk the marks on the wrong side.'
  const leaves = [leaf('pieces', title, [lead], style)]
  for (const { words, top, labels } of lines) {
    const runs = [[`${labelsListed(labels)}${top}: `, 700] as const, [`${words}.`, 500] as const]
    const pitch = style.small * PITCH
    const { lines: rows } = setRuns(runs, 0, 0, FRAME.width, style.small)
    if (leaves.at(-1)!.y + rows * pitch > BOTTOM) leaves.push(leaf('pieces', `${title}, goes on`, [], style))
    const on = leaves.at(-1)!
    on.y += pitch * 1.1
    on.parts.push({ role: 'paragraph', marks: setRuns(runs, 0, on.y, FRAME.width, style.small).marks })
    on.y += (rows - 1) * pitch
  }
  leaves.at(-1)!.y += 7
  return leaves
}

const ASIDE: readonly Placed['top'][] = ['left', 'right']

/** 'folds 4.5, 79.5 and 154.5 cm from the left; zip ends 11.5 and 191.5 cm from the left, on the bottom edge' */
export function markWords(p: Placed, measure: Measure): string {
  const piece = topUp(p)
  return KINDS.flatMap(([kind, one, several]) => {
    const spots = piece.spots.filter((spot) => spot.kind === kind)
    if (spots.length === 0) return []
    const name = spots.length === 1 ? one : several
    if (kind === 'corner-square') return [squareWords(spots, measure)]
    if (kind === 'fold' || kind === 'seam') return [`${name} ${lineWords(spots, piece, measure)}`]
    return [`${name} ${pointWords(spots, piece, measure)}`]
  }).join('; ')
}

interface Spot {
  readonly kind: Kind
  /** from the left and from the top */
  readonly x: number
  readonly y: number
  readonly runs: 'across' | 'along'
  readonly size: number
}

/** A piece with its marks as it lies before one whose chalked arrow points away. */
interface TopUp {
  readonly wide: number
  readonly tall: number
  readonly spots: readonly Spot[]
}

function topUp({ top, width, length: long, marks }: Placed): TopUp {
  const aside = top === 'left' || top === 'right'
  const spots = marks.map(({ kind, x, y, runs = 'across', size = 0 as Length }): Spot => {
    // a square counts by its middle, so that no corner of it has to be followed round
    const [right, down] = kind === 'corner-square' ? [x + size / 2, y + size / 2] : [x, y]
    const [fromLeft, fromTop] = {
      start: [right, down],
      end: [width - right, long - down],
      left: [long - down, right],
      right: [down, width - right],
    }[top] as [number, number]
    return { kind, x: fromLeft, y: fromTop, runs: aside === (runs === 'along') ? 'across' : 'along', size }
  })
  return aside ? { wide: long, tall: width, spots } : { wide: width, tall: long, spots }
}

/** Lines right across, each from the edge next to it; three and more of one direction from one edge, for one tape to tell. */
function lineWords(spots: readonly Spot[], { wide, tall }: TopUp, measure: Measure): string {
  const placesOf = (runs: Spot['runs']): number[] =>
    ascending(spots.filter((s) => s.runs === runs).map((s) => (runs === 'across' ? s.y : s.x)))
  const [down, right] = [placesOf('across'), placesOf('along')]
  const insets = [...insetsOf(down, tall), ...insetsOf(right, wide)]
  if (down.length === 2 && right.length === 2 && new Set(insets).size === 1)
    return `${measured([insets[0]!], measure)} inside every edge`
  return [fromEdges(down, tall, UPRIGHT, measure), fromEdges(right, wide, LEVEL, measure)]
    .filter((words) => words !== '')
    .join(', ')
}

// how far two places lie inside the edges next to them
const insetsOf = ([first, second]: readonly number[], whole: number): readonly number[] =>
  first === undefined || second === undefined ? [] : [first, whole - second]

function fromEdges(
  places: readonly number[],
  whole: number,
  [near, far]: readonly [string, string],
  measure: Measure,
): string {
  if (places.length === 0) return ''
  if (places.length > 2) return `${measured(places, measure)} from the ${near}`
  const insets = insetsOf(places, whole)
  if (insets.length === 2 && insets[0] === insets[1])
    return `${measured([insets[0]!], measure)} from the ${near} and the ${far}`
  return places.map((place) => fromNearest(place, whole, [near, far], measure)).join(', ')
}

function fromNearest(place: number, whole: number, [near, far]: readonly [string, string], measure: Measure): string {
  const [inset, edge] = place * 2 <= whole ? [place, near] : [whole - place, far]
  return inset === 0 ? `on the ${edge} edge` : `${measured([inset], measure)} from the ${edge}`
}

/** Places along an edge, rows of them together. */
function pointWords(spots: readonly Spot[], { wide, tall }: TopUp, measure: Measure): string {
  const [rows, columns] = [grouped(spots, 'y'), grouped(spots, 'x')]
  if (spots.length === 4 && rows.size === 2 && columns.size === 2) {
    const [right, down] = [columns, rows].map((group) => ascending([...group.keys()])) as [number[], number[]]
    return `in all four corners, ${fromEdges(right, wide, LEVEL, measure)}, ${fromEdges(down, tall, UPRIGHT, measure)}`
  }
  // as few rows as there can be, down or across
  const down = rows.size <= columns.size
  return [...(down ? rows : columns)]
    .map(([place, row]) =>
      [
        `${measured(ascending(row.map((s) => (down ? s.x : s.y))), measure)} from the ${down ? 'left' : 'top'}`,
        fromNearest(place, down ? tall : wide, down ? UPRIGHT : LEVEL, measure),
      ].join(', '),
    )
    .join(', and ')
}

function grouped(spots: readonly Spot[], by: 'x' | 'y'): ReadonlyMap<number, readonly Spot[]> {
  const groups = new Map<number, Spot[]>()
  for (const spot of spots) groups.set(spot[by], [...(groups.get(spot[by]) ?? []), spot])
  return groups
}

function squareWords(spots: readonly Spot[], measure: Measure): string {
  const where = spots.length === 4 ? 'all four corners' : `the ${counted(spots.length)} corners on the map`
  return `a square of ${measured([spots[0]!.size], measure)} in ${where}`
}

const ascending = (places: readonly number[]): number[] => [...places].sort((a, b) => a - b)

/** '4.5, 79.5 and 154.5 cm', to what a tape can find. */
function measured(places: readonly number[], measure: Measure): string {
  const found = places.map(
    (place) => (measure.unit === 'in' ? place : Math.round(place / UNITS_PER_MM) * UNITS_PER_MM) as Length,
  )
  return listed(found.map((place, i) => (i === found.length - 1 ? measure.full(place) : measure.bare(place))))
}

const UPRIGHT = ['top', 'bottom'] as const
const LEVEL = ['left', 'right'] as const

const UNITS_PER_MM = 320
