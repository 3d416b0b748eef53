/**
 * Seeded generator of whole numbers: mulberry32 (Tommy Ettinger, 2017, public domain), 32 bits of state.
 * The same seed gives the same numbers in every engine: only 32-bit integer arithmetic is used.
 */
export interface Random {
  /** a whole number from 0 to `bound` − 1; `bound` from 1 to 2^32 */
  below(bound: number): number
}

export function randomFrom(seed: number): Random {
  let state = seed | 0
  return {
    below(bound) {
      state = (state + 0x6d2b79f5) | 0
      let mixed = Math.imul(state ^ (state >>> 15), state | 1)
      mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61)
      return Math.floor((((mixed ^ (mixed >>> 14)) >>> 0) * bound) / 4294967296)
    },
  }
}
