/** The code points for which the typeface of the page has letters; `map-fonts.mjs` makes it. */
declare module 'virtual:map-fonts' {
  export const LETTERS: readonly (readonly [first: number, last: number])[]
}
