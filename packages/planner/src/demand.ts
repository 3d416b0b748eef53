import type { EdgeNeed, Order, Piece, Way } from '@lengthwise/pieces'
import { EDGES } from '@lengthwise/pieces'
import type { Demand, Posture, Request } from '@lengthwise/solver'
import { END, LEFT, RIGHT, START } from '@lengthwise/solver'
import type { Ground } from './field.ts'
import { lostPerEdge } from './field.ts'
import { mustKeep, reserving } from './must-keep.ts'
import type { ClothSide, Turn } from './turn.ts'
import { facing, isTurned, turnsOf } from './turn.ts'

/**
 * Pieces as the layout sees them: how each may be put down on one cloth, and nothing of what it will become.
 * Pieces that may be put down alike are one kind, whichever item they belong to. Panels that keep phase stay together
 * as one bundle; every other piece is a bundle of its own.
 */
export interface Bundle {
  readonly key: string
  readonly members: readonly Member[]
}

export interface Member {
  readonly piece: Piece
  readonly count: number
  readonly postures: readonly Posture[]
  /** the smallest area it takes, any posture */
  readonly area: number
}

const FLUSH: Readonly<Record<ClothSide, number>> = { left: LEFT, right: RIGHT, start: START, end: END }

/** The bundles a way takes from one cloth with how many of each; null when one of them cannot lie on it at all. */
export function bundlesOf(way: Way, ground: Ground): readonly { bundle: Bundle; count: number }[] | null {
  const faces = new Map<string, Member[]>()
  const loose: { bundle: Bundle; count: number }[] = []
  for (const piece of way.pieces) {
    if (piece.cloth !== ground.table.cloth.name) continue
    const member = memberOf(piece, ground)
    if (member.postures.length === 0) return null
    if (!piece.tie) {
      loose.push({ bundle: { key: postureKey(member), members: [{ ...member, count: 1 }] }, count: piece.count })
      continue
    }
    const face = faces.get(piece.tie.face) ?? []
    face.push(member)
    faces.set(piece.tie.face, face)
  }
  for (const members of faces.values()) {
    members.sort((a, b) => (tiedKey(a) < tiedKey(b) ? -1 : 1))
    loose.push({ bundle: { key: `[${members.map(tiedKey).join(' ')}]`, members }, count: 1 })
  }
  return loose
}

/** How a piece may lie: one entry per turn that the cloth allows, the preferred turn first. */
export function liesOf(piece: Piece, ground: Ground): readonly { readonly posture: Posture; readonly turn: Turn }[] {
  const lies: { posture: Posture; turn: Turn }[] = []
  const { field, sides } = ground
  const lost = lostPerEdge(ground.table.cloth)
  for (const turn of turnsOf(piece)) {
    const across = isTurned(turn) ? piece.cutLength : piece.cutWidth
    const along = isTurned(turn) ? piece.cutWidth : piece.cutLength
    if (piece.spansWidth && across !== ground.table.usableWidth) continue
    let flush = 0
    let offered = true
    for (const edge of EDGES) {
      const need = piece.needs[edge]
      if (need.kind === 'none') continue
      const side = facing(turn, edge)
      flush |= FLUSH[side]
      offered &&= offers(sides[side], need)
    }
    if (!offered) continue
    // what is trimmed off beside a full width takes the frayed threads with it
    const width = piece.spansWidth ? field.width : across + 2 * lost
    const long = along + 2 * lost
    if (width > field.width || (field.length !== null && long > field.length)) continue
    lies.push({ posture: { width, length: long, flush }, turn })
  }
  return lies
}

/** Why a piece cannot lie on a ground: the edge it needs and does not find, or its size. */
export function whyNotOn(piece: Piece, ground: Ground): string {
  const { name } = ground.table.cloth
  for (const turn of turnsOf(piece))
    for (const edge of EDGES) {
      const need = piece.needs[edge]
      const side = facing(turn, edge)
      if (need.kind === 'none' || offers(ground.sides[side], need)) continue
      const fixed = piece.mayTurnEndForEnd ? '' : ' as its print must lie'
      return `${piece.words} needs a ${need.kind.replace('-', ' ')} at its ${edge} edge, and${fixed} ${name} has none at its ${side}`
    }
  return `${piece.words} does not fit on ${name}`
}

/** The turn in which `piece` lies in `posture`. */
export function turnIn(piece: Piece, ground: Ground, posture: Posture): Turn {
  const lie = liesOf(piece, ground).find((l) => samePosture(l.posture, posture))
  if (!lie) throw new RangeError(`turnIn: ${piece.name} does not lie in ${JSON.stringify(posture)}`)
  return lie.turn
}

/** Where each demand of a request comes from. */
export interface Origin {
  readonly key: string
  /** which one of several like bundles; -1 for loose pieces, which are counted together */
  readonly nth: number
  readonly member: number
}

/**
 * Where hems to be kept end that every piece can do without: on strips of their own, or, those that some piece can lie on, on
 * such pieces and what is left beside them.
 */
export type Hems = 'on-strips' | 'on-pieces'

export interface Asked {
  /** without the strips that stay on hems to be kept */
  readonly ground: Ground
  /** 'on-strips' only where it makes a difference */
  readonly hems: Hems
  readonly request: Request
  readonly origins: readonly Origin[]
}

/** How many of each bundle, by key. */
export type Counts = ReadonlyMap<string, number>

/** The solver's request for so many of each bundle on one ground. */
export function ask(
  order: Order,
  whole: Ground,
  counts: Counts,
  bundles: ReadonlyMap<string, Bundle>,
  wish: Hems = 'on-strips',
): Asked {
  const wanted = [...counts].flatMap(([key, n]) => (n > 0 ? (bundles.get(key)?.members ?? []) : []))
  const { spare, off, hems } = spareHems(whole, wanted, wish)
  const ground = reserving(order, whole, spare)
  const posturesOf = (member: Member) => member.postures.filter((p) => !(p.flush & off))
  const demands: Demand[] = []
  const origins: Origin[] = []
  for (const key of [...counts.keys()].sort()) {
    const bundle = bundles.get(key)
    const count = counts.get(key) ?? 0
    if (!bundle || count === 0) continue
    if (!bundle.members[0]?.piece.tie) {
      const [member] = bundle.members
      demands.push({ id: key, count: count * member!.count, postures: posturesOf(member!), tie: null })
      origins.push({ key, nth: -1, member: 0 })
      continue
    }
    for (let nth = 0; nth < count; nth++)
      bundle.members.forEach((member, index) => {
        demands.push({
          id: `${key}#${nth}/${index}`,
          count: member.count,
          postures: posturesOf(member),
          tie: tieOn(ground, member.piece, `${key}#${nth}`),
        })
        origins.push({ key, nth, member: index })
      })
  }
  const cuts = ground.table.cloth.divideBy === 'shears' ? 'free' : 'guillotine'
  return { ground, hems, request: { field: ground.field, demands, cuts }, origins }
}

/** The hems that stay on strips: one after the other, as long as every piece can lie clear of all of them. */
function spareHems(whole: Ground, wanted: readonly Member[], wish: Hems) {
  const spare: ClothSide[] = []
  let off = 0
  let hems: Hems = 'on-pieces'
  for (const side of mustKeep(whole)) {
    const more = off | FLUSH[side]
    const canEndOnPieces = wanted.some(({ postures }) => postures.some((p) => p.flush & FLUSH[side]))
    if (!wanted.every(({ postures }) => postures.some((p) => !(p.flush & more)))) continue
    if (canEndOnPieces && wish === 'on-pieces') continue
    if (canEndOnPieces) hems = 'on-strips'
    spare.push(side)
    off = more
  }
  return { spare, off, hems }
}

/** A name for a request that is the same when the layouts are the same. */
export const countsKey = (counts: Counts): string =>
  [...counts.keys()]
    .filter((key) => counts.get(key))
    .sort()
    .map((key) => `${counts.get(key)}×${key}`)
    .join(' ')

export const isEmpty = (counts: Counts): boolean => [...counts.values()].every((n) => n === 0)

/** Of each, as many as both have. */
export const least = (a: Counts, b: Counts): Counts =>
  new Map([...b].map(([key, n]) => [key, Math.min(n, a.get(key) ?? 0)] as const).filter(([, n]) => n > 0))

/** What is left of `a` without `b`. */
export const less = (a: Counts, b: Counts): Counts =>
  new Map([...a].map(([key, n]) => [key, n - (b.get(key) ?? 0)] as const).filter(([, n]) => n > 0))

function memberOf(piece: Piece, ground: Ground): Member {
  const postures: Posture[] = []
  for (const { posture } of liesOf(piece, ground))
    if (!postures.some((p) => samePosture(p, posture))) postures.push(posture)
  const area = Math.min(...postures.map((p) => p.width * p.length))
  return { piece, count: piece.count, postures, area }
}

function offers(edge: ClothSideEdge, need: EdgeNeed): boolean {
  if (need.kind === 'selvedge') return edge.kind === 'selvedge'
  if (need.kind === 'kept-hem') return edge.kind === 'hem' && edge.depth >= need.depth
  return true
}
type ClothSideEdge = Ground['sides']['left']

function tieOn(ground: Ground, piece: Piece, group: string): Demand['tie'] {
  const { tie } = piece
  if (!tie) return null
  const { origin, beyond } = ground
  const shift = (tie.axis === 'along' ? origin.y - beyond.y : origin.x - beyond.x) + lostPerEdge(ground.table.cloth)
  // an absolute phase counts from the cloth's own corner to the piece's, the solver's from the field's to the torn edge
  const offset = tie.absolute ? tie.offset - shift : tie.offset
  return {
    group: tie.oneForAll ? 'motif' : group,
    axis: tie.axis,
    repeat: tie.repeat,
    offset: ((offset % tie.repeat) + tie.repeat) % tie.repeat,
    absolute: tie.absolute,
  }
}

const samePosture = (a: Posture, b: Posture): boolean =>
  a.width === b.width && a.length === b.length && a.flush === b.flush

const postureKey = (member: Member): string =>
  member.postures.map((p) => `${p.width}x${p.length}${p.flush ? `f${p.flush}` : ''}`).join('/')

function tiedKey(member: Member): string {
  const tie = member.piece.tie!
  return `${member.count}*${postureKey(member)}@${tie.offset}%${tie.repeat}${tie.axis}${tie.absolute ? '!' : ''}${tie.oneForAll ? '~' : ''}`
}
