/**
 * A small linear programme: the most of Σ worth·t over t ≥ 0 when row·t ≤ 1 for every row, all numbers 0 or more. Rows are added
 * as they are found, and the answer so far is mended rather than found anew.
 *
 * The tableau holds the variables that are 0 as columns (Dantzig 1951); a row that the answer breaks is met by dual steps (Lemke 1954).
 * Ties go to the first. Nobody need trust the answer: bounds price it exactly in whole numbers.
 *
 * Cost: rows × variables for each step. The general library builds its model anew for each row, which here takes longer than solving.
 */
export class PackingProgramme {
  private readonly size: number
  /** for each row, its share of each column's variable, and last what is left of it */
  private readonly rows: Float64Array[] = []
  /** what a unit of each column's variable would add, and last the sum so far, negative */
  private readonly gain: Float64Array
  /** which variable stands in a row, and in a column; slacks are numbered after the programme's own */
  private readonly inRow: number[] = []
  private readonly inColumn: number[]

  constructor(worth: readonly number[]) {
    this.size = worth.length
    this.gain = Float64Array.from([...worth, 0])
    this.inColumn = worth.map((_, i) => i)
  }

  /** One more row; call `solve` when all that are known are in. */
  add(shares: readonly number[]): void {
    const { size, rows, inRow, inColumn } = this
    const row = new Float64Array(size + 1)
    for (let j = 0; j < size; j++) if (inColumn[j]! < size) row[j] = shares[inColumn[j]!]!
    row[size] = 1
    for (const [i, variable] of inRow.entries()) {
      const share = variable < size ? shares[variable]! : 0
      if (share !== 0) for (let j = 0; j <= size; j++) row[j]! -= share * rows[i]![j]!
    }
    inRow.push(size + rows.length)
    rows.push(row)
  }

  /** The values; null when they have no bound, or rounding errors keep them from being found. */
  solve(): { readonly values: number[]; readonly steps: number } | null {
    const most = 4 * (this.size + this.rows.length) + 100
    for (let steps = 0; steps < most; steps++) {
      const at = this.brokenRow() ?? this.gainingColumn()
      if (at === null) return { values: this.values(), steps }
      const { row, column } = at
      if (row < 0 || column < 0) return null
      this.exchange(row, column)
    }
    return null
  }

  /** The row broken most, with the column that mends it at the least loss. */
  private brokenRow(): Step | null {
    const { size, rows, gain } = this
    let row = -1
    let most = -EXACT
    for (const [i, r] of rows.entries())
      if (r[size]! < most) {
        most = r[size]!
        row = i
      }
    if (row < 0) return null
    let column = -1
    let least = Number.POSITIVE_INFINITY
    for (let j = 0; j < size; j++) {
      const share = rows[row]![j]!
      if (share >= -EXACT) continue
      const loss = Math.min(0, gain[j]!) / share
      if (loss < least) {
        least = loss
        column = j
      }
    }
    return { row, column }
  }

  /** The column that gains most, with the row that sets an end to it. */
  private gainingColumn(): Step | null {
    const { size, rows, gain } = this
    let column = -1
    let most = EXACT
    for (let j = 0; j < size; j++)
      if (gain[j]! > most) {
        most = gain[j]!
        column = j
      }
    if (column < 0) return null
    let row = -1
    let least = Number.POSITIVE_INFINITY
    for (const [i, r] of rows.entries())
      if (r[column]! > EXACT && r[size]! / r[column]! < least) {
        least = r[size]! / r[column]!
        row = i
      }
    return { row, column }
  }

  /** The variables of a row and of a column change places. */
  private exchange(row: number, column: number): void {
    const { size, rows, gain, inRow, inColumn } = this
    const from = rows[row]!
    const pivot = from[column]!
    for (let j = 0; j <= size; j++) from[j]! /= pivot
    from[column] = 1 / pivot
    for (const other of [...rows, gain]) {
      const share = other[column]!
      if (other === from || share === 0) continue
      for (let j = 0; j <= size; j++) other[j]! -= share * from[j]!
      other[column] = -share / pivot
    }
    const variable = inRow[row]!
    inRow[row] = inColumn[column]!
    inColumn[column] = variable
  }

  private values(): number[] {
    const out = new Array<number>(this.size).fill(0)
    for (const [i, variable] of this.inRow.entries())
      if (variable < this.size) out[variable] = Math.max(0, this.rows[i]![this.size]!)
    return out
  }
}

interface Step {
  readonly row: number
  /** −1: none */
  readonly column: number
}

const EXACT = 1e-9
