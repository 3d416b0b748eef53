/** One typeface for screen and paper, a TrueType file for each weight. */
export type Weights = Readonly<Record<400 | 500 | 700, Uint8Array<ArrayBuffer>>>

interface Table {
  readonly name: string
  /** bytes from the beginning of the file */
  readonly start: number
  readonly length: number
}

/** The font files out of the run of bytes that `fonts-together.mjs` makes: directories, tables, outlines, weight by weight. */
export function fontsApart(bytes: Uint8Array<ArrayBuffer>): Weights {
  let at = 0
  const take = (length: number): Uint8Array => {
    at += length
    return bytes.subarray(at - length, at)
  }
  const tableCount = new DataView(bytes.buffer, bytes.byteOffset).getUint16(4)
  const fonts = [400, 500, 700].map(() => new Font(take(12 + 16 * tableCount)))
  for (let n = 0; n < tableCount; n++)
    for (const font of fonts) {
      const { name, start, length } = font.tables[n]!
      if (name !== 'glyf') font.file.set(take(length), start)
    }
  const glyphCount = fonts[0]!.glyphCount()
  for (let glyph = 0; glyph < glyphCount; glyph++)
    for (const font of fonts) {
      const start = font.outline(glyph)
      font.file.set(take(font.outline(glyph + 1) - start), start)
    }
  const [regular, medium, bold] = fonts
  return { 400: regular!.file, 500: medium!.file, 700: bold!.file }
}

class Font {
  readonly tables: readonly Table[]
  readonly file: Uint8Array<ArrayBuffer>
  private readonly view: DataView

  constructor(directory: Uint8Array) {
    this.tables = tablesIn(directory)
    // every table fills its last four bytes
    const end = Math.max(...this.tables.map(({ start, length }) => start + length))
    this.file = new Uint8Array(4 * Math.ceil(end / 4))
    this.file.set(directory)
    this.view = new DataView(this.file.buffer)
  }

  glyphCount(): number {
    return this.view.getUint16(this.start('maxp') + 4)
  }

  /** Where the outline of a glyph begins in the file; asked when the tables are in it. */
  outline(glyph: number): number {
    const long = this.view.getInt16(this.start('head') + 50) === 1
    const loca = this.start('loca')
    return (
      this.start('glyf') + (long ? this.view.getUint32(loca + 4 * glyph) : 2 * this.view.getUint16(loca + 2 * glyph))
    )
  }

  private start(name: string): number {
    return this.tables.find((table) => table.name === name)!.start
  }
}

function tablesIn(directory: Uint8Array): readonly Table[] {
  const view = new DataView(directory.buffer, directory.byteOffset, directory.byteLength)
  return Array.from({ length: view.getUint16(4) }, (_, n) => {
    const entry = 12 + 16 * n
    const name = String.fromCharCode(...directory.subarray(entry, entry + 4))
    return { name, start: view.getUint32(entry + 8), length: view.getUint32(entry + 12) }
  })
}
