import type { Answer, Request } from '@lengthwise/solver'
import { check } from '@lengthwise/solver'
import type { Length } from '@lengthwise/units'
import { afterShrinking } from '@lengthwise/units'
import { buyLength, lengthOnTable, moneyFor } from './buying.ts'
import type { Refusal } from './fault.ts'
import { runsAlong } from './must-keep.ts'
import { rehearsalFaults } from './rehearse.ts'
import type { CutCloth, Placed, Result } from './result.ts'

/**
 * The whole answer checked from what it says, not from how it was made: every piece lies once on its cloth at its size, inside,
 * over no other, over no flaw, in no hem it does not keep; edges are what they are called; prints stand upright; the order of
 * divisions carried out on a model frees exactly what is listed; what is bought is the laid length after wash and shop's
 * step; sewn up, everything comes out at the size asked for.
 */
export function verify(result: Result): readonly Refusal[] {
  if (result.status === 'cannot-be-cut')
    return result.missing.length > 0 ? [] : [refuse('missing', 'nothing is missing')]
  return [
    ...result.cloths.flatMap((cloth) => clothFaults(result, cloth)),
    ...result.widths.flatMap((row) =>
      row.layout && !row.chosen ? clothFaults(result, row.layout, false).map((f) => inRow(f, row.layout!.width)) : [],
    ),
    ...countFaults(result),
    ...finishedFaults(result),
    ...proofFaults(result),
  ]
}

/** The solver's own checker on a layout as it was asked for. */
export const layoutFaults = (request: Request, answer: Answer): readonly Refusal[] =>
  check(request, answer).map((fault) => refuse(`layout-${fault.code}`, fault.message))

function clothFaults(result: Result, cloth: CutCloth, isChosen = true): Refusal[] {
  const faults: Refusal[] = []
  const say = (code: string, message: string) => faults.push(refuse(code, `${cloth.name}: ${message}`))
  const { usable } = cloth
  const rows = new Map(result.pieces.map((row) => [row.piece, row]))
  for (const [piece, other] of overlapping(cloth.placed))
    say('overlap', `pieces ${piece.label} and ${other.label} lie over each other`)
  for (const piece of cloth.placed) {
    if (
      piece.x < usable.x ||
      piece.y < usable.y ||
      piece.x + piece.width > usable.x + usable.width ||
      piece.y + piece.length > usable.y + usable.length
    )
      say('outside', `piece ${piece.label} leaves the cloth`)
    if (isChosen) sizeFault(rows.get(piece.piece), cloth, piece, say)
    edgeFaults(cloth, piece, say)
    if (cloth.repeat > 0 !== (piece.phase !== null) || (piece.phase !== null && piece.phase !== piece.y % cloth.repeat))
      say('phase', `piece ${piece.label} does not lie where the print says`)
  }
  for (const fault of rehearsalFaults(cloth)) say('order', fault)
  keptFaults(cloth, say)
  buyFaults(result, cloth, say)
  const used = cloth.placed.reduce((sum, p) => sum + p.width * p.length, 0)
  if (cloth.notUsed.area !== cloth.width * cloth.length - used) say('waste', 'the area not used is wrong')
  return faults
}

type Say = (code: string, message: string) => void

function sizeFault(row: Result['pieces'][number] | undefined, cloth: CutCloth, placed: Placed, say: Say): void {
  if (!row || row.cloth !== cloth.name) return void say('piece', `${placed.piece} is not to come from this cloth`)
  const [across, along] = placed.turned ? [row.cutLength, row.cutWidth] : [row.cutWidth, row.cutLength]
  // a torn edge loses a little, on each side
  const slack = cloth.cloth.divideBy === 'tearing' ? 2 * cloth.cloth.lostPerTear : 0
  if (placed.width < across || placed.width > across + slack) say('size', `piece ${placed.label} has the wrong width`)
  if (placed.length < along || placed.length > along + slack) say('size', `piece ${placed.label} has the wrong length`)
}

function edgeFaults(cloth: CutCloth, piece: Placed, say: Say): void {
  const sides = [
    { side: 'left', from: piece.x, depthAt: cloth.edges.left },
    { side: 'right', from: cloth.width - piece.x - piece.width, depthAt: cloth.edges.right },
    { side: 'start', from: piece.y, depthAt: cloth.edges.start },
    { side: 'end', from: cloth.length - piece.y - piece.length, depthAt: cloth.edges.end },
  ] as const
  for (const { side, from, depthAt } of sides) {
    const edge = piece.edges[side]
    const is = from > 0 || depthAt.kind === 'raw' ? 'cut' : depthAt.kind === 'hem' ? 'kept-hem' : 'selvedge'
    if (edge.kind !== is) say('edge', `piece ${piece.label}: its ${side} edge is ${is}, not ${edge.kind}`)
    if (depthAt.kind === 'hem' && from > 0 && from < depthAt.depth)
      say('hem', `piece ${piece.label} lies in the ${side} hem`)
  }
  const { way, top } = cloth.cloth.print
  const upright = { 'cut-end': 'start', bolt: 'end', left: 'left', right: 'right' } as const
  if (way === 'one-way' && piece.top !== upright[top]) say('print', `piece ${piece.label} stands on its head`)
}

/** A hem that must be kept ends on pieces that keep it and on remnants, all of it. */
function keptFaults(cloth: CutCloth, say: Say): void {
  const sides = { head: 'start', foot: 'end', left: 'left', right: 'right' } as const
  for (const hem of cloth.cloth.mustKeep) {
    const side = sides[hem]
    if (cloth.edges[side].kind !== 'hem') continue
    const kept = [...cloth.placed.filter((p) => p.edges[side].kind === 'kept-hem'), ...cloth.remnants]
    if (!runsAlong(side, cloth.usable, kept)) say('must-keep', `its ${hem} hem ends on waste`)
  }
}

function buyFaults(result: Result, cloth: CutCloth, say: Say): void {
  const { order } = result
  if (!cloth.buy) return
  const laid = Math.max(...cloth.placed.map((p) => p.y + p.length)) - cloth.usable.y
  const bought = buyLength(order, cloth.cloth, laid)
  if (laid !== cloth.proof.length) say('laid', 'the laid length is not where the last piece ends')
  if (cloth.buy.length !== bought) say('buy', 'the length to buy does not follow from the laid length')
  if (lengthOnTable(order, cloth.cloth, bought) !== cloth.length)
    say('buy', 'what is bought is not what lies on the table')
  const index = cloth.cloth.widths.findIndex((w) => w.width === cloth.buy!.width)
  if (index < 0 || moneyFor(cloth.cloth, index, bought) !== cloth.buy.cost) say('cost', 'the cost is wrong')
}

function countFaults(result: Result): Refusal[] {
  const faults: Refusal[] = []
  const names = result.cloths.flatMap((cloth) => cloth.placed.map((p) => p.piece))
  const placed = new Set(names)
  if (placed.size !== names.length) faults.push(refuse('twice', 'a piece is placed twice'))
  const labels = result.cloths.flatMap((cloth) => cloth.placed.map((p) => p.label))
  if (new Set(labels).size !== labels.length) faults.push(refuse('label', 'two pieces have one number'))
  for (const row of result.pieces)
    if (!placed.has(row.piece)) faults.push(refuse('unplaced', `${row.piece} is not placed`))
  if (placed.size !== result.pieces.length) faults.push(refuse('count', 'there are more pieces than the plan has'))
  return faults
}

function finishedFaults(result: Result): Refusal[] {
  return result.finished.flatMap((row) =>
    (['width', 'length'] as const).every((side) => row[side] >= row.asked[side] || isAsTheClothIs(result, row, side))
      ? []
      : [refuse('finished', `${row.item} comes out smaller than asked`)],
  )
}

/** One piece that lies from edge to edge of the cloth and keeps both: as large as the cloth leaves it, if that was sold as large as asked. */
function isAsTheClothIs(result: Result, row: Result['finished'][number], side: 'width' | 'length'): boolean {
  const { order } = result
  const names = result.pieces.filter((piece) => piece.item === row.item).map((piece) => piece.piece)
  return result.cloths.some(({ cloth, width, buy, placed }) =>
    placed.some(({ piece, turned, edges }) => {
      if (names.length !== 1 || piece !== names[0]) return false
      const across = turned === (side === 'length')
      const ends = across ? [edges.left, edges.right] : [edges.start, edges.end]
      const washed = (w: Length) => (order.wash === 'before-cutting' ? afterShrinking(w, cloth.shrinks.across) : w)
      const widths = cloth.widths.map((w) => w.width).filter((w) => washed(w) === width)
      const sold = across ? (buy?.width ?? cloth.size?.width ?? Math.max(0, ...widths)) : (cloth.size?.length ?? 0)
      return ends.every((edge) => edge.kind !== 'cut') && sold >= row.asked[side]
    }),
  )
}

function proofFaults(result: Result): Refusal[] {
  const { proof } = result
  if (proof.bound > proof.value) return [refuse('proof', 'the bound is above what was found')]
  if (proof.status === 'proved' && proof.bound !== proof.value)
    return [refuse('proof', 'proved, but bound and value differ')]
  return []
}

/** Pieces that lie over each other: only those that start before one ends can lie over it. */
function overlapping(placed: readonly Placed[]): (readonly [Placed, Placed])[] {
  const along = [...placed].sort((a, b) => a.y - b.y)
  return along.flatMap((piece, i) => {
    const over: (readonly [Placed, Placed])[] = []
    for (let k = i + 1; k < along.length && along[k]!.y < piece.y + piece.length; k++)
      if (overlap(piece, along[k]!)) over.push([piece, along[k]!])
    return over
  })
}

const overlap = (a: Placed, b: Placed): boolean =>
  a.x < b.x + b.width && b.x < a.x + a.width && a.y < b.y + b.length && b.y < a.y + a.length

const refuse = (code: string, message: string): Refusal => ({ code, message })
const inRow = (f: Refusal, width: number): Refusal => refuse(f.code, `at width ${width}: ${f.message}`)
