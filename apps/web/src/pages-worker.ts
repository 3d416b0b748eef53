import type { Figure, Scene } from '@lengthwise/drawing'
import { write } from '@lengthwise/pdf'
import type { Result } from '@lengthwise/planner'
import type { Room } from './fitted-figure.ts'
import { fittedFigure } from './fitted-figure.ts'
import type { Weights } from './fonts-apart.ts'

/** What is asked of the writer of pages: a PDF, or a map too large to be drawn between two keys. */
export type Drawing =
  | { readonly scene: Scene; readonly fonts: Weights }
  | { readonly result: Result; readonly index: number; readonly room: Room }

/** What it sends back. */
export type Drawn =
  | { readonly bytes: Uint8Array<ArrayBuffer> }
  | { readonly figure: Figure | null }
  | { readonly fault: string }

addEventListener('message', async (event: MessageEvent<Drawing>) => {
  const tell = (drawn: Drawn, handOver: Transferable[] = []): void => postMessage(drawn, handOver)
  const asked = event.data
  try {
    if ('result' in asked) return tell({ figure: fittedFigure(asked.result, asked.index, asked.room) })
    const { scene, fonts } = asked
    const written = await write(scene, { medium: fonts[500], bold: fonts[700] })
    // copied, so that it can be handed over whole
    const bytes = new Uint8Array(written)
    tell({ bytes }, [bytes.buffer])
  } catch (fault) {
    tell({ fault: fault instanceof Error ? fault.message : String(fault) })
  }
})
