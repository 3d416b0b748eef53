import { readdirSync, readFileSync } from 'node:fs'
import { readPlan } from '@lengthwise/plan-file'
import type { PieceRow, Result } from '@lengthwise/planner'
import { plan } from '@lengthwise/planner'
import { expect, test } from 'vitest'

type Mark = PieceRow['marks'][number]
type Edge = 'head' | 'foot' | 'left' | 'right'

const FIXTURES = new URL('../fixtures/', import.meta.url)
const plans = readdirSync(FIXTURES).filter((name) => name.endsWith('.yaml'))

/** How the sewing order speaks of each kind of mark. */
const SAID: Readonly<Record<Mark['kind'], RegExp>> = {
  fold: /\bfold marks?\b/,
  seam: /\bstitching marks?\b/,
  'zip-end': /\bzip-end marks\b/,
  tie: /\btie marks?\b/,
  button: /\b(?:button|snap) marks\b/,
  'corner-square': /\bcorner marks?\b/,
}

/** Words that take in an edge of what lies head up on the bed. */
const EDGES: Readonly<Record<Edge, RegExp>> = {
  head: /\bhead\b|all four edges|all round/,
  foot: /\bfoot\b|lower edge|free edge|all four edges|all round/,
  left: /\bleft\b|\bsides?\b|all four edges|all round/,
  right: /\bright\b|\bsides?\b|all four edges|all round/,
}

// told with their long side up, so that their edges have other names in the steps
const LONG_SIDE_UP = /^(pillowcase|cushion|sham|bolster)-/

interface Sewn {
  readonly item: string
  readonly steps: readonly string[]
  readonly pieces: readonly PieceRow[]
}

function sewnIn(result: Result): readonly Sewn[] {
  return [...new Set(result.sewing.map((step) => step.item))].map((item) => {
    const first = item.split(/, | to /)[0]!
    return {
      item,
      steps: result.sewing.filter((step) => step.item === item).map((step) => step.text.replace(/\u00a0/g, ' ')),
      // copies sewn alike have the same pieces
      pieces: result.pieces.filter((piece) => piece.item === first),
    }
  })
}

/** The edge next to a line right across a piece, and how far it is, in millimetres. */
function edgeOf(
  { cutWidth, cutLength }: PieceRow,
  { x, y, runs }: Mark,
): { readonly edge: Edge; readonly far: number } {
  const [at, whole, before, after] =
    runs === 'along' ? ([x, cutWidth, 'left', 'right'] as const) : ([y, cutLength, 'head', 'foot'] as const)
  return 2 * at <= whole ? { edge: before, far: at / 320 } : { edge: after, far: (whole - at) / 320 }
}

/** Lengths in a sentence, in millimetres: '2.5 cm', '1 1/2 in'. */
const lengthsIn = (words: string): readonly number[] =>
  [...words.matchAll(/(\d+(?:\.\d+)?)?(?: ?(\d+)\/(\d+))? (cm|mm|in)\b/g)].map(
    ([, whole, over, under, unit]) =>
      (Number(whole ?? 0) + Number(over ?? 0) / Number(under ?? 1)) * { cm: 10, mm: 1, in: 25.4 }[unit as 'cm'],
  )

/** What is wrong between the marks of a thing and the steps it is sewn by. */
function disagreements({ item, steps, pieces }: Sewn): readonly string[] {
  const wrong: string[] = []
  const marks = pieces.flatMap((piece) => piece.marks.map((mark) => ({ piece, mark })))
  for (const [kind, said] of Object.entries(SAID)) {
    const marked = marks.some(({ mark }) => mark.kind === kind)
    const told = steps.some((step) => said.test(step))
    if (marked && !told) wrong.push(`${item}: no step speaks of its ${kind} marks`)
    if (told && !marked) wrong.push(`${item}: a step speaks of ${kind} marks, and there are none`)
  }
  if (LONG_SIDE_UP.test(item)) return wrong
  // turns, seams and flaps add up to the place of the line
  const turns = steps.filter((step) => SAID.fold.test(step)).map(lengthsIn)
  const within = [0, ...turns.map(([a = 0, b = 0]) => a + b)]
  for (const { piece, mark } of marks) {
    if (mark.kind !== 'fold' && mark.kind !== 'seam') continue
    const { edge, far } = edgeOf(piece, mark)
    const uses = steps.filter((step) => {
      const [a = 0, b = 0] = lengthsIn(step)
      const places = [a, b, a + b, ...lengthsIn(step)].flatMap((place) => within.map((turn) => place + turn))
      return SAID[mark.kind].test(step) && EDGES[edge].test(step) && places.some((p) => Math.abs(p - far) < 0.6)
    })
    if (uses.length === 0) wrong.push(`${piece.piece}: no step uses its ${mark.kind} ${far} mm from the ${edge}`)
  }
  for (const step of steps)
    for (const [, edge] of step.matchAll(/^Hem the (head|foot|left|right)\b/g))
      if (!marks.some(({ piece, mark }) => mark.kind === 'fold' && edgeOf(piece, mark).edge === edge))
        wrong.push(`${item}: nothing is marked where a step hems the ${edge}`)
  return wrong
}

function planned(name: string): Result {
  const order = readPlan(readFileSync(new URL(name, FIXTURES), 'utf8'))
  if (!order.ok) throw new Error(order.problems.map((each) => each.message).join('\n'))
  return plan(order.value, { effort: 'quick', compareWidths: false })
}

test.each(plans)('%s: each mark is used by a step, and each mark that a step speaks of is there', (name) => {
  expect(sewnIn(planned(name)).flatMap(disagreements)).toEqual([])
})

test('a fold that nobody folds, a mark that is not there and a hem of another depth are each noticed', () => {
  const result = planned('whole-bed.yaml')
  const all = sewnIn(result)
  const skirt = all.find(({ item }) => item === 'bed-skirt-1')!
  const folded = skirt.pieces.map((piece) => ({
    ...piece,
    marks: piece.marks.map((mark) => (mark.kind === 'seam' ? { ...mark, kind: 'fold' as const } : mark)),
  }))
  expect(disagreements({ ...skirt, pieces: folded })).not.toEqual([])
  const sheet = all.find(({ item }) => item === 'flat-sheet-1')!
  expect(disagreements({ ...sheet, pieces: sheet.pieces.map((piece) => ({ ...piece, marks: [] })) })).not.toEqual([])
  const deeper = sheet.steps.map((step) => step.replace('then 10 cm deep', 'then 12 cm deep'))
  expect(disagreements({ ...sheet, steps: deeper })).not.toEqual([])
})
