import packed from 'virtual:map-fonts'

/** One typeface for screen and paper, a TrueType file for each weight. */
export type Weights = Readonly<Record<400 | 500 | 700, Uint8Array<ArrayBuffer>>>

let unpacked: Promise<Weights> | null = null

/** The fonts as they stand in this file, unpacked once. */
export function fonts(): Promise<Weights> {
  unpacked ??= Promise.all([400, 500, 700].map((weight) => inflated(packed[weight as 400]))).then(
    ([regular, medium, bold]) => ({ 400: regular!, 500: medium!, 700: bold! }),
  )
  return unpacked
}

/** Gives the page its typeface; where that fails, the page goes on in another. */
export async function dressPage(): Promise<void> {
  try {
    const faces = Object.entries(await fonts()).map(([weight, file]) => new FontFace('Alegreya Sans', file, { weight }))
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
