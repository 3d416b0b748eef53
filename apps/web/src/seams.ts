import type { Result } from '@lengthwise/planner'

/** Where the seams of a face lie on the finished thing, as shares of its width and its length. */
export interface FaceSeams {
  /** from the left: seams that run from head to foot */
  readonly down: readonly number[]
  /** from the head: seams that run from side to side */
  readonly across: readonly number[]
}

export const NO_SEAMS: FaceSeams = { down: [], across: [] }

/** The seams that join the face seen from above: of the first copy of the n-th thing in the plan. */
export function seamsOf(result: Result, n: number): FaceSeams {
  const id = copyOf(result, n)
  const face = result.pieces.filter(({ piece }) => piece.startsWith(`${id}/`) && !/\/(back|deck|zip-strip)/.test(piece))
  const names = new Set(face.map(({ piece }) => piece))
  const chain = (
    first: 'left' | 'head',
    second: 'right' | 'foot',
    size: 'cutWidth' | 'cutLength',
  ): readonly number[] => {
    // piece before a seam to the piece after it
    const next = new Map<string, string>()
    for (const [a, b] of result.seams.flatMap((seam) => [[seam.a, seam.b] as const, [seam.b, seam.a] as const])) {
      const [before = '', edge] = a.split('#')
      const [after = '', other] = b.split('#')
      if (edge === second && other === first && names.has(before) && names.has(after)) next.set(before, after)
    }
    const afters = new Set(next.values())
    const begin = face.find(({ piece }) => next.has(piece) && !afters.has(piece))
    if (begin === undefined) return []
    const widths: number[] = []
    for (let piece: string | undefined = begin.piece; piece !== undefined; piece = next.get(piece)) {
      const row = face.find((one) => one.piece === piece)
      if (row !== undefined) widths.push(row[size] - allowance(result, piece, first) - allowance(result, piece, second))
    }
    const total = widths.reduce((a, b) => a + b, 0)
    return widths.slice(0, -1).map((_, k) => widths.slice(0, k + 1).reduce((a, b) => a + b, 0) / total)
  }
  return { down: chain('left', 'right', 'cutWidth'), across: chain('head', 'foot', 'cutLength') }
}

/** Items are numbered through the plan by kind, or by their own name. */
function copyOf(result: Result, n: number): string {
  const { items } = result.order
  const kind = items[n]?.item
  const before = items.slice(0, n).reduce((sum, item) => sum + (item.item === kind ? item.count : 0), 0)
  return `${kind}-${before + 1}`
}

function allowance(result: Result, piece: string, edge: string): number {
  const end = `${piece}#${edge}`
  const seam = result.seams.find(({ a, b }) => a === end || b === end)
  return seam === undefined ? 0 : seam.a === end ? seam.allowanceA : seam.allowanceB
}
