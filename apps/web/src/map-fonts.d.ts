/** The typeface of the page and its map by weight, deflated, in base64; `map-fonts.mjs` makes it. */
declare module 'virtual:map-fonts' {
  const fonts: Readonly<Record<400 | 500 | 700, string>>
  export default fonts
}
