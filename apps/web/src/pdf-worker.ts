import fonts from 'virtual:map-fonts'
import type { Scene } from '@lengthwise/drawing'
import { write } from '@lengthwise/pdf'
import type { Written } from './pdf.ts'

addEventListener('message', async (event: MessageEvent<Scene>) => {
  const tell = (written: Written, handOver: Transferable[] = []): void => postMessage(written, handOver)
  try {
    const [regular, medium, bold] = await Promise.all([fonts[400], fonts[500], fonts[700]].map(inflated))
    // copied, so that it can be handed over whole
    const bytes = new Uint8Array(await write(event.data, { regular: regular!, medium: medium!, bold: bold! }))
    tell({ bytes }, [bytes.buffer])
  } catch (fault) {
    tell({ fault: fault instanceof Error ? fault.message : String(fault) })
  }
})

async function inflated(base64: string): Promise<Uint8Array> {
  const packed = Uint8Array.from(atob(base64), (letter) => letter.charCodeAt(0))
  const stream = new Blob([packed]).stream().pipeThrough(new DecompressionStream('deflate-raw'))
  return new Uint8Array(await new Response(stream).arrayBuffer())
}
