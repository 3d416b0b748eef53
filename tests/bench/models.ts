import type { Highs } from 'highs'
import loadHighs from 'highs'

/** A rectangle to place, `width` across and `length` along. */
export interface Piece {
  readonly width: number
  readonly length: number
}

/**
 * Oriented free strip packing as an integer programme: for every pair one lies left of or before the other.
 * After C. S. Chen, S. M. Lee, Q. S. Shen, "An analytical model for the container loading problem" (1995), in two dimensions; from
 * memory. Text in the LP format.
 */
export function freeModel(width: number, pieces: readonly Piece[]): string {
  const most = pieces.reduce((sum, { length }) => sum + length, 0)
  const rows: string[] = []
  const binaries: string[] = []
  const bounds: string[] = [`0 <= H <= ${most}`]
  for (const [i, a] of pieces.entries()) {
    bounds.push(`0 <= x${i} <= ${width - a.width}`, `0 <= y${i} <= ${most}`)
    rows.push(`y${i} - H <= ${-a.length}`)
    for (const [j, b] of pieces.entries()) {
      if (i === j) continue
      // i left of j, i before j
      rows.push(`x${i} - x${j} + ${width} l${i}_${j} <= ${width - a.width}`)
      rows.push(`y${i} - y${j} + ${most} b${i}_${j} <= ${most - a.length}`)
      binaries.push(`l${i}_${j}`, `b${i}_${j}`)
      if (i < j) rows.push(`l${i}_${j} + l${j}_${i} + b${i}_${j} + b${j}_${i} >= 1`)
      // equal pieces stand in one order
      if (i < j && a.width === b.width && a.length === b.length) rows.push(`y${i} - y${j} <= 0`)
    }
  }
  return programme('H', rows, bounds, binaries)
}

/**
 * Levels right across the strip, each as long as its longest piece: A. Lodi, S. Martello, M. Monaci, "Two-dimensional packing
 * problems: a survey" (2002) and "Models and bounds for two-dimensional level packing problems" (2004), the level strip model; from
 * memory. Pieces by falling length; y_i: piece i opens a level; x_i_j: piece j lies in the level i opened.
 */
export function levelModel(width: number, unsorted: readonly Piece[]): string {
  const pieces = unsorted.slice().sort((a, b) => b.length - a.length)
  const rows: string[] = []
  const binaries: string[] = []
  for (const [j, piece] of pieces.entries()) {
    binaries.push(`y${j}`)
    const inLevel = pieces.slice(0, j).map((_, i) => `x${i}_${j} + `)
    rows.push(`${inLevel.join('')}y${j} = 1`)
    const others = pieces.slice(j + 1).map((other, k) => `${other.width} x${j}_${j + 1 + k} + `)
    for (let k = j + 1; k < pieces.length; k++) binaries.push(`x${j}_${k}`)
    rows.push(`${others.join('').replace(/ \+ $/, ' ')}- ${width - piece.width} y${j} <= 0`)
  }
  const cost = pieces.map(({ length }, i) => `${length} y${i}`).join(' + ')
  return programme(cost, rows, [], binaries)
}

function programme(
  cost: string,
  rows: readonly string[],
  bounds: readonly string[],
  binaries: readonly string[],
): string {
  const subject = rows.map((row, index) => ` r${index}: ${row}`).join('\n')
  const limits = bounds.map((bound) => ` ${bound}`).join('\n')
  return `Minimize\n obj: ${cost}\nSubject To\n${subject}\nBounds\n${limits}\nBinaries\n ${binaries.join(' ')}\nEnd\n`
}

let loaded: Promise<Highs> | undefined

/** The optimum by HiGHS, rounded to the whole number it stands for; null when it did not end in `seconds`. */
export async function optimum(model: string, seconds: number): Promise<number | null> {
  loaded ??= loadHighs()
  const highs = await loaded
  const answer = highs.solve(model, { time_limit: seconds })
  return answer.Status === 'Optimal' ? Math.round(answer.ObjectiveValue) : null
}
