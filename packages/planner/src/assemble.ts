import type { ClothOnTable, Copy, Order, Piece, Way } from '@lengthwise/pieces'
import { copiesOf } from '@lengthwise/pieces'
import type { Certificate, Rect } from '@lengthwise/solver'
import type { Length } from '@lengthwise/units'
import { length } from '@lengthwise/units'
import { buyLength, lengthOnTable, moneyFor } from './buying.ts'
import { comesApart, keepsOf } from './comes-apart.ts'
import type { Cutting } from './cutting.ts'
import { bundlesOf, turnIn } from './demand.ts'
import { inOneDirection } from './directions.ts'
import { boxOf, divisionsOf } from './divisions.ts'
import { laidOn } from './field.ts'
import { flagged } from './flags.ts'
import { leaves } from './parts.ts'
import type { Box, CutCloth, Placed, PlacedEdge } from './result.ts'
import type { Setting } from './setting.ts'
import type { Spread } from './share.ts'
import type { Turn } from './turn.ts'
import { isTurned, marksAsTheyLie, topOf } from './turn.ts'
import { fingerWidth, whoseWords } from './words.ts'

/** A piece of one copy, by name. */
export interface OnePiece {
  /** 'duvet-cover-1/front/centre' */
  readonly name: string
  readonly piece: Piece
  readonly copy: Copy
  readonly way: Way
}

/** Numbers that go on through all cloths of a plan. */
export interface Numbers {
  labels: number
  remnants: number
}

/** The copies that a cutting makes, with the ways chosen for them, in the order of the plan. */
export function copiesWithWays(order: Order, { ways }: Cutting): readonly { readonly copy: Copy; readonly way: Way }[] {
  const next = new Map<number, number>()
  return copiesOf(order).flatMap((copy) => {
    const ofItem = ways[copy.itemIndex]!
    if (ofItem.length === 0) return []
    const nth = next.get(copy.itemIndex) ?? 0
    next.set(copy.itemIndex, nth + 1)
    const way = ofItem[nth]
    if (!way) throw new RangeError(`copiesWithWays: no way for ${copy.id}`)
    return [{ copy, way }]
  })
}

/** All single pieces of a copy. */
export function piecesOf({ copy, way }: { readonly copy: Copy; readonly way: Way }): readonly OnePiece[] {
  return way.pieces.flatMap((piece) => named(copy, way, piece))
}

const named = (copy: Copy, way: Way, piece: Piece): OnePiece[] =>
  Array.from({ length: piece.count }, (_, i) => ({
    name: `${copy.id}${piece.name}${piece.count > 1 ? `-${i + 1}` : ''}`,
    piece,
    copy,
    way,
  }))

/** Every cloth that is used, with what is cut from it and in which order. */
export function cutCloths(
  order: Order,
  cutting: Cutting,
  numbers: Numbers = { labels: 0, remnants: 0 },
): readonly { readonly cloth: CutCloth; readonly spread: Spread }[] {
  const copies = copiesWithWays(order, cutting)
  const cut = cutting.cloths.flatMap(({ setting, share }) => {
    if (!share) return []
    const waiting = waitingPieces(setting, copies)
    return share.spreads.map((spread, i) => ({
      cloth: cutCloth(order, setting, spread, i + 1, waiting, numbers),
      spread,
    }))
  })
  const cloths = inOneDirection(
    cut.map(({ cloth }) => cloth),
    copies.flatMap(piecesOf),
  )
  const numbered = flagged(cloths)
  return cut.map(({ spread }, i) => ({ cloth: numbered[i]!, spread }))
}

/** By bundle: what stands for each of them, one list per member. */
type Waiting = Map<string, OnePiece[][][]>

function waitingPieces(setting: Setting, copies: readonly { readonly copy: Copy; readonly way: Way }[]): Waiting {
  const waiting: Waiting = new Map()
  const bundles = new Map([...new Set(copies.map((c) => c.way))].map((way) => [way, bundlesOf(way, setting.ground)]))
  for (const { copy, way } of copies)
    for (const { bundle, count } of bundles.get(way) ?? []) {
      const queue = waiting.get(bundle.key) ?? []
      waiting.set(bundle.key, queue)
      const members = bundle.members.map((member) => named(copy, way, member.piece))
      if (bundle.members[0]?.piece.tie) queue.push(members)
      else for (let i = 0; i < count; i++) queue.push([[members[0]![i]!]])
    }
  return waiting
}

function cutCloth(
  order: Order,
  setting: Setting,
  spread: Spread,
  nth: number,
  waiting: Waiting,
  numbers: Numbers,
): CutCloth {
  const { cloth, table } = setting
  const { answer, asked } = spread
  const { ground } = asked
  const laid = laidOn(ground, answer.length ?? 0)
  const bought = spread.nth === null ? buyLength(order, cloth, laid) : null
  const whole = {
    width: table.width,
    length:
      bought === null ? (table.length ?? lengthOnTable(order, cloth, cloth.have)) : lengthOnTable(order, cloth, bought),
  }
  const root = comesApart(order, ground, answer, whole)
  const free = leaves(root)

  // who is who, in the order in which the pieces come free
  const faces = new Map<string, OnePiece[][]>()
  const ones = new Map<number, OnePiece>()
  const labels = new Map<number, string>()
  for (const leaf of free) {
    if (leaf.kind !== 'piece') continue
    const { key, nth: copy, member } = asked.origins[answer.placements[leaf.placement]!.demand]!
    const face = `${key}#${copy}`
    const stands = copy < 0 ? waiting.get(key)?.shift() : (faces.get(face) ?? waiting.get(key)?.shift())
    const one = stands?.[member]?.shift()
    if (!stands || !one) throw new RangeError(`cutCloth: nothing waits for ${key}`)
    if (copy >= 0) faces.set(face, stands)
    ones.set(leaf.placement, one)
    labels.set(leaf.placement, String(++numbers.labels))
  }
  const keeps = keepsOf(order)
  const remnants = free
    .filter((leaf) => leaf.kind === 'left-over' && keeps(leaf.box))
    .map((leaf) => ({ ...boxOf(leaf.box), name: `R${++numbers.remnants}`, wouldMake: [] as string[] }))

  const edges = {
    left: table.edges.left,
    right: table.edges.right,
    start: cloth.from === 'bolt' ? ({ kind: 'raw' } as const) : table.edges.head,
    end: cloth.from === 'bolt' ? ({ kind: 'raw' } as const) : table.edges.foot,
  }
  const placed = free.flatMap((leaf) => {
    if (leaf.kind !== 'piece') return []
    const { posture, demand } = answer.placements[leaf.placement]!
    const one = ones.get(leaf.placement)!
    const turn = turnIn(one.piece, ground, asked.request.demands[demand]!.postures[posture]!)
    return [placedPiece(one, leaf.box, turn, labels.get(leaf.placement)!, whole, edges, table)]
  })
  const area = whole.width * whole.length
  const used = placed.reduce((sum, p) => sum + p.width * p.length, 0)
  const kept = remnants.reduce((sum, r) => sum + r.width * r.length, 0)
  const divisions = divisionsOf(
    root,
    {
      from: cloth.from,
      ...whole,
      edges: { head: edges.start, foot: edges.end, left: edges.left, right: edges.right },
      divideBy: cloth.divideBy,
      finger: fingerWidth(order),
    },
    {
      labelOf: (placement) => labels.get(placement)!,
      remnantOf: (box) => remnants.find((r) => r.x === box.x && r.y === box.y && keeps(box))?.name ?? null,
    },
  )
  const { certificate } = answer
  return {
    cloth,
    name: cloth.name,
    from: cloth.from,
    piece: nth,
    cutLike: nth,
    ...whole,
    usable: {
      x: length(ground.origin.x),
      y: length(ground.origin.y),
      width: table.usableWidth,
      length: length(whole.length - 2 * ground.origin.y),
    },
    edges,
    buy:
      bought === null
        ? null
        : {
            width: cloth.widths[setting.widthIndex]!.width,
            length: bought,
            cost: moneyFor(cloth, setting.widthIndex, bought),
          },
    proof: {
      status: answer.status === 'proved' ? 'proved' : answer.status === 'stopped' ? 'stopped' : 'best-found',
      length: length(laid),
      bound: length(laidOn(ground, answer.bound)),
      by: certificate.by,
      certificate: numbersOf(certificate),
    },
    notUsed: { percent: percentOf(area - used, area), area: area - used, keepPercent: percentOf(kept, area) },
    placed,
    divisions,
    trims: free.filter((leaf) => leaf.kind === 'trim').map((leaf) => boxOf(leaf.box)),
    remnants,
    waste: free.filter((leaf) => leaf.kind === 'left-over' && !keeps(leaf.box)).map((leaf) => boxOf(leaf.box)),
    repeat: table.repeat,
  }
}

/** To one decimal place. */
const percentOf = (part: number, whole: number): number => (whole === 0 ? 0 : Math.round((1000 * part) / whole) / 10)

function placedPiece(
  one: OnePiece,
  rect: Rect,
  turn: Turn,
  label: string,
  whole: { width: Length; length: Length },
  edges: CutCloth['edges'],
  { cloth, repeat }: ClothOnTable,
): Placed {
  const box: Box = boxOf(rect)
  const edge = (at: boolean, of: CutCloth['edges']['left']): PlacedEdge =>
    !at || of.kind === 'raw' ? { kind: 'cut' } : of.kind === 'hem' ? { kind: 'kept-hem', depth: of.depth } : of
  return {
    ...box,
    piece: one.name,
    label,
    words: one.piece.words,
    whose: whoseWords(one.copy),
    turned: isTurned(turn),
    top: topOf(one.piece, turn, cloth.print),
    phase: repeat > 0 ? length(box.y % repeat) : null,
    edges: {
      left: edge(box.x === 0, edges.left),
      right: edge(box.x + box.width === whole.width, edges.right),
      start: edge(box.y === 0, edges.start),
      end: edge(box.y + box.length === whole.length, edges.end),
    },
    marks: marksAsTheyLie(one.piece.marks, turn, one.piece.cutWidth, one.piece.cutLength),
  }
}

/** The numbers by which anyone can work a bound out again, where it has any. */
function numbersOf(certificate: Certificate): CutCloth['proof']['certificate'] {
  switch (certificate.by) {
    case 'bars':
      return { prices: certificate.prices, capacity: certificate.capacity }
    case 'scales':
      return { across: certificate.across, along: certificate.along }
    default:
      return null
  }
}
