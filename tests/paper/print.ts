import { readFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import type { Scene } from '@lengthwise/drawing'
import { write } from '@lengthwise/pdf'
import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs'

// the typeface belongs to the PDF package
const fromPdf = createRequire(new URL('../../packages/pdf/package.json', import.meta.url))
const face = (name: string): Uint8Array =>
  new Uint8Array(readFileSync(fromPdf.resolve(`@expo-google-fonts/alegreya-sans/${name}/AlegreyaSans_${name}.ttf`)))

export const FONTS = { medium: face('500Medium'), bold: face('700Bold') }

export const printed = (scene: Scene): Promise<Uint8Array> => write(scene, FONTS)

/** A text on paper: points from the lower left corner, `size` the type size. */
export interface Item {
  readonly text: string
  readonly x: number
  readonly y: number
  readonly size: number
  readonly width: number
  readonly turned: boolean
}

export async function opened(bytes: Uint8Array) {
  return getDocument({ data: bytes.slice(), useSystemFonts: false, verbosity: 0 }).promise
}

/** The texts of every page, in the order they are read. */
export async function textsOf(bytes: Uint8Array): Promise<readonly (readonly Item[])[]> {
  const document = await opened(bytes)
  const pages: Item[][] = []
  for (let n = 1; n <= document.numPages; n++) {
    const { items } = await (await document.getPage(n)).getTextContent()
    pages.push(
      items.flatMap((item) => {
        if (!('str' in item) || item.str.trim() === '') return []
        const [a, b, , , x, y] = item.transform as number[]
        return [
          {
            text: item.str,
            x: x!,
            y: y!,
            size: Math.hypot(a!, b!),
            width: item.width,
            turned: Math.abs(b!) > Math.abs(a!),
          },
        ]
      }),
    )
  }
  await document.destroy()
  return pages
}

export const mmOf = (points: number): number => (points * 25.4) / 72
