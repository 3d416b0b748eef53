/**
 * Counts of each kind packed into words, with a guard bit above each field, so that 'does A + B stay within the counts' is
 * one subtraction and one comparison per word: limit − A − B borrows from a guard bit exactly where a count is exceeded.
 */
export class PackedCounts {
  private readonly radix: readonly { readonly base: number; readonly word: number; readonly shift: number }[]
  private readonly limit: number[] = []
  private readonly guards: number[] = []
  private readonly packed: number[][] = []

  constructor(counts: readonly number[]) {
    const radix: { base: number; word: number; shift: number }[] = []
    let used = 31
    for (const n of counts) {
      const bits = 33 - Math.clz32(n)
      if (used + bits > 30) {
        used = 0
        this.limit.push(0)
        this.guards.push(0)
        this.packed.push([])
      }
      const word = this.limit.length - 1
      radix.push({ base: n + 1, word, shift: used })
      const guard = 2 ** (used + bits - 1)
      this.limit[word]! += n * 2 ** used + guard
      this.guards[word]! += guard
      used += bits
    }
    this.radix = radix
  }

  /** Adds the multiset with this mixed-radix number; its slot is the number added before it. */
  push(multiset: number): void {
    const words = this.wordsOf(multiset)
    for (let i = 0; i < words.length; i++) this.packed[i]!.push(words[i]!)
  }

  wordsOf(multiset: number): number[] {
    const words = this.limit.map(() => 0)
    let rest = multiset
    for (const { base, word, shift } of this.radix) {
      words[word]! += (rest % base) << shift
      rest = Math.floor(rest / base)
    }
    return words
  }

  /** Do the multisets of two slots together stay within the counts? */
  fit(a: number, b: number): boolean {
    for (let i = 0; i < this.limit.length; i++) {
      const words = this.packed[i]!
      const guards = this.guards[i]!
      if (((this.limit[i]! - words[a]! - words[b]!) & guards) !== guards) return false
    }
    return true
  }
}
