// What the font reader asks about letters, answered by the browser's own tables. All that is not Latin, Greek or Cyrillic
// counts as common to every script: other letters are boxed before they come here.
const is = (property) => (point) => property.test(String.fromCodePoint(point ?? 0))
const SCRIPTS = [
  ['Latin', is(/\p{Script=Latin}/u)],
  ['Greek', is(/\p{Script=Greek}/u)],
  ['Cyrillic', is(/\p{Script=Cyrillic}/u)],
]

export const getScript = (point) => SCRIPTS.find(([, has]) => has(point))?.[0] ?? 'Common'
export const isDigit = is(/\p{Nd}/u)
export const isMark = is(/\p{M}/u)
