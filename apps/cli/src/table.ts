/** Rows under heads, two spaces apart; `right` says which columns are figures. Empty columns are left out. */
export function table(
  heads: readonly string[],
  rows: readonly (readonly string[])[],
  right: readonly boolean[],
): readonly string[] {
  const kept = heads.map((_, i) => rows.some((row) => (row[i] ?? '') !== '' && row[i] !== '-'))
  const widths = heads.map((head, i) => Math.max(head.length, ...rows.map((row) => (row[i] ?? '').length)))
  const line = (cells: readonly string[]): string =>
    `  ${cells
      .map((cell, i) => (kept[i] ? (right[i] ? cell.padStart(widths[i] ?? 0) : cell.padEnd(widths[i] ?? 0)) : null))
      .filter((cell) => cell !== null)
      .join('  ')}`.trimEnd()
  return [line(heads), ...rows.map(line)]
}
