/* Sets of sums as bits: bit n stands for a sum of n. */

/** Each sum with up to `count` pieces more, of these sizes. */
export function addCopies(bits: Uint32Array, sizes: readonly number[], count: number): void {
  if (sizes.length > 1) {
    for (let n = 0; n < count; n++) addShifted(bits, sizes)
    return
  }
  // up to twice as many as before, and one, each time
  const [size] = sizes
  for (let step = 1, rest = count; rest > 0; rest -= step, step = Math.min(2 * step, rest))
    addShifted(bits, [step * size!])
}

/** Each sum, and each sum with one of these sizes more. */
function addShifted(bits: Uint32Array, sizes: readonly number[]): void {
  // from the top down, so that each word still holds the sums before
  for (let w = bits.length - 1; w >= 0; w--) {
    let value = bits[w]!
    for (let i = 0; i < sizes.length; i++) {
      const size = sizes[i]!
      const from = w - (size >> 5)
      if (from < 0) continue
      const shift = size & 31
      value |= bits[from]! << shift
      if (shift && from > 0) value |= bits[from - 1]! >>> (32 - shift)
    }
    bits[w] = value
  }
}

/** The smallest sum that is not below `at`; null: none within the bits. */
export function lowestFrom(bits: Uint32Array, at: number): number | null {
  let w = at >> 5
  let value = bits[w]! & (0xffffffff << (at & 31))
  while (value === 0) {
    if (++w === bits.length) return null
    value = bits[w]!
  }
  // the lowest bit alone
  return w * 32 + 31 - Math.clz32(value & -value)
}
