// Stands in for the decompressor of WOFF2 fonts, which the page does not use: its fonts for the map are TrueType.
export default function decompress() {
  throw new Error('WOFF2 fonts are not read here')
}
