import type { Scene } from '@lengthwise/drawing'
import { fonts } from './fonts.ts'
import PdfWorker from './pdf-worker.ts?worker&inline'

/** What the writer of pages sends back. */
export type Written = { readonly bytes: Uint8Array<ArrayBuffer> } | { readonly fault: string }

/** The pages as a PDF. The writer is only started here: until then it is nothing but text inside the file. */
export async function toPdf(scene: Scene): Promise<Uint8Array<ArrayBuffer>> {
  const asked = { scene, fonts: await fonts() }
  const worker = new PdfWorker()
  return new Promise<Uint8Array<ArrayBuffer>>((resolve, reject) => {
    worker.onmessage = (event: MessageEvent<Written>) =>
      'bytes' in event.data ? resolve(event.data.bytes) : reject(new Error(event.data.fault))
    worker.onerror = (event) => reject(new Error(event.message))
    worker.postMessage(asked)
  }).finally(() => worker.terminate())
}
