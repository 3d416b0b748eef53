/** What a plan may hold; beyond that it is refused in so many words. */
export const LIMITS = {
  bytes: 1_000_000,
  pieces: 5000,
  cloths: 100,
  /** objects and lists inside each other; a plan needs six */
  depth: 30,
  /** values in all, aliases written out */
  values: 300_000,
  aliases: 100,
  /** characters of a name */
  nameCharacters: 80,
  /** problems told at once */
  problems: 200,
} as const
