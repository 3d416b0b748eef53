/** The typeface of the page and its map by weight, deflated, in base64, and the code points it has letters for; `map-fonts.mjs` makes it. */
declare module 'virtual:map-fonts' {
  const fonts: Readonly<Record<400 | 500 | 700, string>>
  export default fonts
  export const LETTERS: readonly (readonly [first: number, last: number])[]
}
