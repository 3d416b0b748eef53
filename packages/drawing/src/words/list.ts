/** '1', '1 and 2', '1, 2 and 3' */
export function listed(words: readonly string[]): string {
  return words.length < 2 ? (words[0] ?? '') : `${words.slice(0, -1).join(', ')} and ${words.at(-1)}`
}

/** Small numbers as words, for the beginning of a sentence and for counts of things. */
export const counted = (n: number): string => SMALL[n] ?? `${n}`
const SMALL = ['no', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine', 'ten', 'eleven', 'twelve']
