import type { Piece, Print } from '@lengthwise/pieces'
import type { OnePiece } from './assemble.ts'
import type { CutCloth, Placed } from './result.ts'
import { isTurned, marksAsTheyLie, topOf, turnsOf } from './turn.ts'

/** A piece where it lies, with what it is. */
interface Lying {
  readonly placed: Placed
  readonly one: OnePiece
  readonly print: Print
}

/**
 * The pieces of one thing that lie on one cloth should lie in one direction, or stripes cross. A square that may lie either
 * way is turned with the others, since that costs nothing; what then lies across the first of them is said to be crosswise.
 * A print with a top has settled it, and of what may be used either way up nobody sees the direction.
 */
export function inOneDirection(cloths: readonly CutCloth[], all: readonly OnePiece[]): readonly CutCloth[] {
  const nth = new Map(all.map((one, i) => [one.name, i]))
  const groups = new Map<string, Lying[]>()
  for (const cloth of cloths) {
    if (cloth.cloth.print.way === 'one-way') continue
    for (const placed of cloth.placed) {
      const one = all[nth.get(placed.piece)!]!
      if (one.piece.uppermost === null) continue
      const key = `${one.copy.id} ${cloth.name}`
      groups.set(key, [...(groups.get(key) ?? []), { placed, one, print: cloth.cloth.print }])
    }
  }
  const changed = new Map<string, Placed>()
  for (const group of groups.values()) {
    group.sort((a, b) => nth.get(a.one.name)! - nth.get(b.one.name)!)
    const first = group.find(({ one }) => !isFreeSquare(one.piece)) ?? group[0]!
    for (const { placed, one, print } of group) {
      if (liesAside(placed) === liesAside(first.placed)) continue
      changed.set(
        placed.piece,
        isFreeSquare(one.piece) ? quarterTurned(placed, one.piece, print) : { ...placed, crosswise: true },
      )
    }
  }
  if (changed.size === 0) return cloths
  return cloths.map((cloth) => ({ ...cloth, placed: cloth.placed.map((p) => changed.get(p.piece) ?? p) }))
}

const liesAside = ({ top }: Placed): boolean => top === 'left' || top === 'right'

const isFreeSquare = (piece: Piece): boolean =>
  piece.cutWidth === piece.cutLength &&
  piece.lengthRuns === 'either' &&
  piece.mayTurnEndForEnd &&
  piece.tie === null &&
  Object.values(piece.needs).every((need) => need.kind === 'none')

function quarterTurned(placed: Placed, piece: Piece, print: Print): Placed {
  const turn = turnsOf(piece).find((each) => isTurned(each) !== placed.turned)!
  return {
    ...placed,
    turned: isTurned(turn),
    top: topOf(piece, turn, print),
    marks: marksAsTheyLie(piece.marks, turn, piece.cutWidth, piece.cutLength),
  }
}
