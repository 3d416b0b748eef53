/**
 * The known word that a mistyped one most likely means; undefined when none is near enough to be more help than noise.
 * Nearness is the optimal string alignment distance (Damerau 1964, restricted): insert, delete, replace, swap neighbours.
 */
export function nearest(word: string, known: readonly string[]): string | undefined {
  const typed = word.slice(0, 60).toLowerCase()
  let best: string | undefined
  let least = Math.max(2, Math.floor(typed.length / 3)) + 1
  for (const candidate of known) {
    // a word cut short is near, however much is cut
    const begun = typed.length > 2 && candidate.toLowerCase().startsWith(typed)
    const distance = begun ? 1 : alignmentDistance(typed, candidate.toLowerCase())
    if (distance < least && distance < candidate.length) {
      least = distance
      best = candidate
    }
  }
  return best
}

/** Edits between two words, rows of the usual table kept three at a time. */
export function alignmentDistance(a: string, b: string): number {
  let twoBack: number[] = []
  let back = Array.from({ length: b.length + 1 }, (_, j) => j)
  for (let i = 1; i <= a.length; i++) {
    const row = [i]
    for (let j = 1; j <= b.length; j++) {
      const replaced = back[j - 1]! + (a[i - 1] === b[j - 1] ? 0 : 1)
      let least = Math.min(back[j]! + 1, row[j - 1]! + 1, replaced)
      if (i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1]) least = Math.min(least, twoBack[j - 2]! + 1)
      row.push(least)
    }
    twoBack = back
    back = row
  }
  return back[b.length]!
}
