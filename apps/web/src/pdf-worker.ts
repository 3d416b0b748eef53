import type { Scene } from '@lengthwise/drawing'
import { write } from '@lengthwise/pdf'
import type { Weights } from './fonts.ts'
import type { Written } from './pdf.ts'

addEventListener('message', async (event: MessageEvent<{ readonly scene: Scene; readonly fonts: Weights }>) => {
  const tell = (written: Written, handOver: Transferable[] = []): void => postMessage(written, handOver)
  const { scene, fonts } = event.data
  try {
    const written = await write(scene, { regular: fonts[400], medium: fonts[500], bold: fonts[700] })
    // copied, so that it can be handed over whole
    const bytes = new Uint8Array(written)
    tell({ bytes }, [bytes.buffer])
  } catch (fault) {
    tell({ fault: fault instanceof Error ? fault.message : String(fault) })
  }
})
