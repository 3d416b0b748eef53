// Stands in for the decompressor that the font reader needs for WOFF2 fonts alone; the map's fonts are TrueType.
export default function refuse() {
  throw new Error('WOFF2 is left out of the page')
}
