/** The parts that workers play: laying out plans; drawing and writing pages. */
export type Part = 'plan' | 'pages'

/** The script of a part; `one-script.mjs` puts it into the page. */
declare const scriptOf: (part: Part) => string

const addresses = new Map<Part, string>()

/** A worker that runs the text of those functions of this very script that its part is made of. */
export function workerFor(part: Part): Worker {
  const address = addresses.get(part) ?? URL.createObjectURL(new Blob([scriptOf(part)], { type: 'text/javascript' }))
  addresses.set(part, address)
  return new Worker(address)
}
