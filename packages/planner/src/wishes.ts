/** The first wishes of an answer; smaller is better. */
export interface Wish {
  /** what is bought, as money or area */
  readonly value: bigint
  /** owned lengths, sheets and remnants opened */
  readonly opened: number
  readonly seams: number
  /** laid length of what is bought */
  readonly laid: number
}

/**
 * The order in which answers are searched: what is bought, owned cloth opened, seams, laid length. Fewest opened comes early because
 * of the rule that owned cloth is left whole where it does not lower the purchase: an answer with the fewest opened keeps it.
 */
export function compareWishes(a: Wish, b: Wish): number {
  if (a.value !== b.value) return a.value < b.value ? -1 : 1
  return a.opened - b.opened || a.seams - b.seams || a.laid - b.laid
}

/**
 * The best of several answers that buy the same: none of whose owned pieces could be left whole (an answer that opens only some of
 * them buys the same), then by fewer seams, shorter laid length, fewer owned pieces opened.
 */
export function bestOfAsCheap<T extends { readonly wish: Wish; readonly opens: ReadonlySet<string> }>(
  answers: readonly T[],
): T | null {
  const allowed = answers.filter((a) => !answers.some((b) => opensOnlySomeOf(b.opens, a.opens)))
  return allowed.reduce<T | null>((a, b) => (a && keepingTheRule(a.wish, b.wish) <= 0 ? a : b), null)
}

const opensOnlySomeOf = (a: ReadonlySet<string>, b: ReadonlySet<string>): boolean =>
  a.size < b.size && [...a].every((one) => b.has(one))

const keepingTheRule = (a: Wish, b: Wish): number => a.seams - b.seams || a.laid - b.laid || a.opened - b.opened

export const lesser = (a: bigint, b: bigint): bigint => (b < a ? b : a)
export const greater = (a: bigint, b: bigint): bigint => (b > a ? b : a)
