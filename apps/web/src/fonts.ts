import { LETTERS } from 'virtual:map-fonts'
import type { Weights } from './fonts-apart.ts'
import { fontsApart } from './fonts-apart.ts'

let unpacked: Promise<Weights> | null = null

/** The fonts as they stand in this file, unpacked once. */
export function fonts(): Promise<Weights> {
  // they stand beside the script, which workers read as well
  unpacked ??= inflated(document.getElementById('fonts')?.textContent ?? '').then(fontsApart)
  return unpacked
}

/** Gives the page its typeface, for the letters it has; where that fails, the page goes on in another. */
export async function dressPage(): Promise<void> {
  const unicodeRange = LETTERS.map(([first, last]) => `U+${first.toString(16)}-${last.toString(16)}`).join()
  try {
    const faces = Object.entries(await fonts()).map(
      ([weight, file]) => new FontFace('Alegreya Sans', file, { weight, unicodeRange }),
    )
    await Promise.all(faces.map((face) => face.load()))
    for (const face of faces) document.fonts.add(face)
  } catch (fault) {
    console.warn('The typeface could not be used:', fault)
  }
}

async function inflated(base64: string): Promise<Uint8Array<ArrayBuffer>> {
  const bytes = Uint8Array.from(atob(base64), (letter) => letter.charCodeAt(0))
  const stream = new Blob([bytes]).stream().pipeThrough(new DecompressionStream('deflate-raw'))
  return new Uint8Array(await new Response(stream).arrayBuffer())
}
