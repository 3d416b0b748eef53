/** One typeface for screen and paper, a TrueType file for each weight. */
export type Weights = Readonly<Record<400 | 500 | 700, Uint8Array<ArrayBuffer>>>

let unpacked: Promise<Weights> | null = null

/** The fonts as they stand in this file, unpacked once. */
export function fonts(): Promise<Weights> {
  unpacked ??= unpack()
  return unpacked
}

// they stand beside the script, which workers read as well; `map-fonts.mjs` packs them
async function unpack(): Promise<Weights> {
  const packed: Readonly<Record<keyof Weights, string>> = JSON.parse(
    document.getElementById('fonts')?.textContent ?? '',
  )
  const [regular, medium, bold] = await Promise.all([
    inflated(packed[400]),
    inflated(packed[500]),
    inflated(packed[700]),
  ])
  return { 400: regular, 500: medium, 700: bold }
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
