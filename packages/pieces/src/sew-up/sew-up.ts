import type { Problem } from '@lengthwise/units'
import { length } from '@lengthwise/units'
import type { SewnUp } from '../answers.ts'
import type { Cloth } from '../cloth.ts'
import { onTable } from '../on-table.ts'
import type { Edge, Item, Order } from '../order.ts'
import { EDGES } from '../order.ts'
import type { Piece, SeamLine, Way } from '../way.ts'
import { askedOf, everyPiece, turnsOf } from './asked.ts'
import type { Axis, Row, SewnPiece } from './faces.ts'
import { ENDS, facesOf, RUNS, rowsOf, sewnPieces, sizeOf } from './faces.ts'

/** All shares are whole millionths, so sizes are compared exactly in millionths of a unit. */
const ONE = 1_000_000
const ONE_POINT = 10_000

/**
 * Sews the pieces up by their seams, folds and laps and washes them: a check that reads nothing else, in exact whole numbers.
 *
 * Pieces joined flat make faces. Each row of pieces across a face, from its outer seam or fold on one side to that on the
 * other, must show the finished size asked for, or more by less than one marking step for each of the equal panels that
 * were rounded up. Seams must be as long on one edge as on the other, with equal allowances, leave no outer edge open that
 * is sewn, and join only what shrinks alike.
 */
export function sewUp(order: Order, item: Item, way: Way): SewnUp {
  const faults: Problem[] = []
  const fault = (
    code: string,
    message: string,
    hint = 'this is a fault of the program: please report the plan',
  ): void => {
    faults.push({ code, path: item.path, message, hint })
  }
  const sewn = sewnPieces(way.pieces, way.seams)
  const asked = askedOf(item)
  const turns = turnsOf(item)
  const cloths = new Map(order.cloths.map((cloth) => [cloth.name, cloth]))
  const shareOf = (piece: Piece, axis: Axis): number => lostBy(order, cloths.get(piece.cloth), piece, axis)

  const apart = new Set(way.seams.filter((seam) => seam.role === 'opening' && seam.lap < 0).map((seam) => -seam.lap))

  // panels side by side that are themselves joined from parts may differ by what the marking step added to each
  const parted = [...sewn.values()].some(
    ({ seams }) => new Set(seams.filter((s) => s.flat).map((s) => RUNS[s.edge])).size > 1,
  )

  for (const seam of way.seams) checkSeam(seam)
  for (const at of sewn.values()) {
    checkMarking(at)
    if (!parted) checkTurns(at)
    for (const edge of EDGES) checkEdgeSewn(at, edge)
  }
  const shown = { width: 0, length: 0 }
  const step = Math.max(1, order.markTo)
  const faces = facesOf(sewn)
  const measured = faces.filter((face) => {
    const outside = face.some((name) => sewn.get(name)?.seams.some((side) => !side.flat))
    const isLoose = faces.length > 1 && !outside && face.length === 1
    if (isLoose && (asked === null || asked.measures === everyPiece)) return false
    return asked === null || face.every((name) => asked.measures(name))
  })
  // faces sewn together come out as small as the one that shrinks most
  const loss = (axis: Axis): number =>
    asked?.asCut ? 0 : Math.max(0, ...measured.flat().map((name) => shareOf((sewn.get(name) as SewnPiece).piece, axis)))
  for (const face of measured) {
    for (const axis of ['width', 'length'] as const) {
      let least = Number.POSITIVE_INFINITY
      for (const row of rowsOf(sewn, face, axis)) {
        const size = rowSize(row, axis) * (ONE - loss(axis))
        least = Math.min(least, Math.floor(size / ONE))
        if (asked === null || madeByCloth(row, axis)) continue
        const over = size - (asked.size[axis] + 2 * asked.beyond) * ONE
        const names = row.map(({ at }) => at.piece.name || item.item).join(' + ')
        if (over < 0) fault('too-small', `${names}: sewn up, the ${axis} is ${-over / ONE} units short`)
        if (
          over >=
          step * equalPanels(row, axis) * (ONE - loss(axis)) + easedIn(axis, asked.size[axis] + 2 * asked.beyond)
        )
          fault('too-large', `${names}: sewn up, the ${axis} is ${over / ONE} units too large`)
      }
      if (Number.isFinite(least)) shown[axis] = Math.max(shown[axis], least)
    }
  }
  if (asked !== null && (shown.width === 0 || shown.length === 0))
    fault('not-measured', `${item.item}: none of its pieces shows its finished size`)
  const beyond = 2 * (asked?.beyond ?? 0)
  const finished = { width: length(shown.width - beyond), length: length(shown.length - beyond) }
  return { finished, asked: asked?.size ?? finished, faults }

  /** Both edges equally long and equally far from the seam line, and shrinking alike. */
  function checkSeam(seam: SeamLine): void {
    const name = `${seam.a.piece}#${seam.a.edge} to ${seam.b.piece}#${seam.b.edge}`
    const [a, b] = [sewn.get(seam.a.piece)?.piece, sewn.get(seam.b.piece)?.piece]
    if (a === undefined || b === undefined) {
      fault('seam-without-piece', `${name}: no such piece`)
      return
    }
    for (const [ref, piece] of [
      [seam.a, a],
      [seam.b, b],
    ] as const) {
      const whole = sizeOf(piece, RUNS[ref.edge])
      const [from, to] = [ref.from ?? 0, ref.to ?? whole]
      if (from < 0 || to > whole || to - from !== seam.length)
        fault('seam-length', `${name}: the ${ref.edge} edge of ${ref.piece} is not as long as the seam`)
    }
    if (seam.allowanceA !== seam.allowanceB) fault('allowances', `${name}: the two allowances differ`)
    if (seam.allowanceA < 0) fault('allowances', `${name}: an allowance is below nothing`)
    if (seam.kind === 'zip' && seam.role === 'opening' && seam.allowanceA === 0) checkLap(seam, name)
    const apart = Math.abs(shareOf(a, RUNS[seam.a.edge]) - shareOf(b, RUNS[seam.b.edge]))
    if (apart > ONE_POINT)
      fault('shrinks-apart', `${name}: the two edges shrink apart by more than one point`, 'wash before cutting')
  }

  /** Hems over a zip overlap as the plan asks. */
  function checkLap(seam: SeamLine, name: string): void {
    const zipEdge = item.item === 'duvet-cover' ? item.back.zipEdge : null
    if (zipEdge !== null && seam.lap !== zipEdge.lap) fault('lap', `${name}: the hems do not overlap as asked`)
  }

  /** Sizes that are marked lie on the marking step; the others are what the cloth makes them. */
  function checkMarking({ piece }: SewnPiece): void {
    for (const axis of ['width', 'length'] as const) {
      const size = sizeOf(piece, axis)
      if (size <= 0) fault('no-size', `${piece.name}: nothing is left of the piece`)
      const across = (piece.lengthRuns === 'across') === (axis === 'length')
      if (piece.spansWidth && across) {
        if (!usableWidths(order, cloths.get(piece.cloth)).includes(size))
          fault('not-the-width', `${piece.name}: it is to be as wide as the cloth and is not`)
        continue
      }
      const [start, end] = ENDS[axis].map((edge) => piece.needs[edge])
      if (start?.kind !== 'none' && end?.kind !== 'none') continue
      const zipEdge = item.item === 'duvet-cover' ? item.back.zipEdge : null
      if (zipEdge !== null && axis === 'length' && start?.kind === 'kept-hem') {
        if (size !== start.depth + zipEdge.finger)
          fault('strip', `${piece.name}: the strip is not its hem and a finger's width`)
        continue
      }
      if (order.markTo > 0 && size % order.markTo !== 0)
        fault('marking-step', `${piece.name}: the ${axis} is not on the marking step`)
    }
  }

  /** What lies beyond the outermost folds of a piece is a hem that was asked for. */
  function checkTurns(at: SewnPiece): void {
    if (turns === null) return
    for (const axis of ['width', 'length'] as const) {
      const folds = at.folds[axis]
      const [start, end] = ENDS[axis]
      const whole = sizeOf(at.piece, axis)
      const [first, last] = [folds[0], folds.at(-1)]
      if (first === undefined || last === undefined) continue
      const open = (edge: Edge): boolean => !at.seams.some((side) => side.edge === edge)
      const turned = (turn: number): boolean => turns.includes(turn)
      // folds lie at one end, or at both; each end that is not sewn ends in a hem
      const [before, after] = [open(start) && turned(first), open(end) && turned(whole - last)]
      const needed = folds.length > 1 && open(start) && open(end) ? before && after : before || after
      if (!needed) fault('hem', `${at.piece.name}: what lies beyond its fold is no hem asked for`)
    }
  }

  /** An edge that is sewn is sewn from end to end: from a corner, a fold or a joining seam to another. */
  function checkEdgeSewn(at: SewnPiece, edge: Edge): void {
    const { piece } = at
    const own = at.seams.filter((side) => side.edge === edge).sort((a, b) => a.from - b.from)
    const [head, tail] = [own[0], own.at(-1)]
    if (head === undefined || tail === undefined || piece.marks.some((mark) => mark.kind === 'corner-square')) return
    own.forEach((side, i) => {
      const before = own[i - 1]
      // over edges set apart at an opening the other face has a gap as wide
      if (before !== undefined && before.to !== side.from && !apart.has(side.from - before.to))
        fault('edge-open', `${piece.name}#${edge}: its seams leave a gap or overlap`)
    })
    const axis = RUNS[edge]
    const whole = sizeOf(piece, axis)
    const slack = Math.max(1, order.markTo) * Math.max(2, way.pieces.length) + Math.max(0, ...apart)
    const [first, last] = ENDS[axis]
    const within = [...at.folds[axis]]
    const start = joint(at, first)
    const end = joint(at, last)
    // parts of a panel are joined over their whole edge, before the panel meets its neighbours
    const uneven = parted || apart.size > 0
    const starts = start === null ? [0, ...within] : head.flat ? [start, 0] : [start]
    const ends = end === null ? [whole, ...within] : tail.flat ? [whole - end, whole] : [whole - end]
    // what the marking step added to the longer of two edges hangs over at a corner or a fold
    const meets = (over: readonly number[], outer: boolean): boolean =>
      over.some((distance) => distance === 0 || (outer && distance > 0 && distance < slack))
    if (
      !meets(
        starts.map((place) => head.from - place),
        start === null || head.flat || uneven,
      )
    )
      fault('edge-open', `${piece.name}#${edge}: its seam does not begin at a corner, a fold or a seam`)
    if (
      !meets(
        ends.map((place) => place - tail.to),
        end === null || tail.flat || uneven,
      )
    )
      fault('edge-open', `${piece.name}#${edge}: its seam does not end at a corner, a fold or a seam`)
  }

  /** What lies beyond the seam line where an edge is joined flat or lapped, the lap included; null where it is an outer edge. */
  function joint(at: SewnPiece, edge: Edge): number | null {
    const side = at.seams.find((s) => (s.flat || s.seam.kind === 'lapped') && s.edge === edge)
    return side === undefined ? null : side.allowance + side.under
  }

  /** What a row shows before the wash. */
  function rowSize(row: Row, axis: Axis): number {
    const [first, last] = ENDS[axis]
    let total = 0
    row.forEach(({ at, next }, i) => {
      const before = row[i - 1]?.next ?? null
      const whole = sizeOf(at.piece, axis)
      const folds = at.folds[axis]
      const start = before === null ? outerAllowance(at, first) : otherAllowance(before) + before.seam.lap
      const end = whole - (next === null ? outerAllowance(at, last) : next.allowance)
      const places = [start, ...folds.filter((f) => f > start && f < end), end]
      // of a piece that folds over itself the widest leaf shows, or the one at the joining seam
      const leaves = places.slice(1).map((place, k) => place - (places[k] as number))
      const leaf = before !== null ? leaves[0] : next !== null ? leaves.at(-1) : Math.max(...leaves)
      total += before !== null && next !== null ? end - start : (leaf ?? 0)
    })
    return total
  }

  /**
   * What is measured may be cut for the loss of another cloth it is sewn to (a point more at most): it then comes out larger
   * by the difference, which is eased in.
   */
  function easedIn(axis: Axis, size: number): number {
    const own = loss(axis)
    const most = Math.max(own, ...way.pieces.map((piece) => shareOf(piece, axis)))
    if (most === own || asked?.asCut || most - own > ONE_POINT) return 0
    return Math.ceil(((most - own) * (size + 2 * step)) / (ONE - most)) * ONE
  }

  /** Both ends of a piece right across are made by the cloth: it comes out as the cloth is. */
  function madeByCloth(row: Row, axis: Axis): boolean {
    const piece = row.length === 1 ? row[0]?.at.piece : undefined
    return piece !== undefined && ENDS[axis].every((edge) => piece.needs[edge].kind !== 'none')
  }

  /**
   * How many panels of a row are equal and were rounded up: each may be over by less than a marking step. Of panels as wide as
   * the cloth at most two were, the halves of a face with a centre seam.
   */
  function equalPanels(row: Row, axis: Axis): number {
    const marked = new Map<number, number>()
    let spanning = 0
    for (const { at } of row) {
      const across = (at.piece.lengthRuns === 'across') === (axis === 'length')
      const size = sizeOf(at.piece, axis)
      if (at.piece.spansWidth && across) spanning++
      else marked.set(size, (marked.get(size) ?? 0) + 1)
    }
    return Math.max(1, Math.min(2, spanning), ...marked.values())
  }
}

/** Beyond the seam line of an outer edge; nothing where it is folded, left as it is, or sewn at its corners only. */
function outerAllowance(at: SewnPiece, edge: Edge): number {
  if (at.piece.marks.some((mark) => mark.kind === 'corner-square')) return 0
  return Math.max(0, ...at.seams.filter((side) => side.edge === edge && !side.flat).map((side) => side.allowance))
}

const otherAllowance = (side: {
  readonly seam: SeamLine
  readonly allowance: number
  readonly other: unknown
}): number => (side.other === side.seam.a ? side.seam.allowanceA : side.seam.allowanceB)

/** Lost in the wash after sewing, in the direction of a piece. */
function lostBy(order: Order, cloth: Cloth | undefined, piece: Piece, axis: Axis): number {
  if (order.wash !== 'after-sewing' || cloth === undefined) return 0
  const { along, across } = cloth.shrinks
  return (piece.lengthRuns === 'across') === (axis === 'width') ? along : across
}

/** The widths a panel as wide as the cloth may have. */
function usableWidths(order: Order, cloth: Cloth | undefined): readonly number[] {
  if (cloth === undefined) return []
  const indexes = cloth.size === null ? cloth.widths.map((_, i) => i) : [-1]
  return indexes.map((i) => onTable(order, cloth, i).usableWidth)
}
