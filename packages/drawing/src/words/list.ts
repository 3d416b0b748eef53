/** '1', '1 and 2', '1, 2 and 3' */
export function listed(words: readonly string[]): string {
  return words.length < 2 ? (words[0] ?? '') : `${words.slice(0, -1).join(', ')} and ${words.at(-1)}`
}

/** Labels in a sentence, runs of three and more shortened: '1 to 13, R1 and R2'. They come by number. */
export function labelsListed(labels: readonly string[]): string {
  const words: string[] = []
  for (let i = 0; i < labels.length; ) {
    let end = i
    while (end + 1 < labels.length && follows(labels[end]!, labels[end + 1]!)) end++
    if (end - i >= 2) words.push(`${labels[i]} to ${labels[end]}`)
    else words.push(...labels.slice(i, end + 1))
    i = end + 1
  }
  return listed(words)
}

const follows = (a: string, b: string): boolean => {
  const [, letter, number] = /^(\D*)(\d+)$/.exec(a) ?? []
  return number !== undefined && b === `${letter}${Number(number) + 1}`
}

/** Small numbers as words, for the beginning of a sentence and for counts of things. */
export const counted = (n: number): string => SMALL[n] ?? `${n}`
const SMALL = ['no', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine', 'ten', 'eleven', 'twelve']
