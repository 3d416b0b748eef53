import type { Scene } from '@lengthwise/drawing'
import { fonts } from './fonts.ts'
import type { Drawing, Drawn } from './pdf-worker.ts'
import PdfWorker from './pdf-worker.ts?worker&inline'

/** The pages as a PDF. The writer is only started here: until then it is nothing but text inside the file. */
export async function toPdf(scene: Scene): Promise<Uint8Array<ArrayBuffer>> {
  const asked: Drawing = { scene, fonts: await fonts() }
  const worker = new PdfWorker()
  return new Promise<Uint8Array<ArrayBuffer>>((resolve, reject) => {
    worker.onmessage = ({ data }: MessageEvent<Drawn>) =>
      'bytes' in data ? resolve(data.bytes) : reject(new Error('fault' in data ? data.fault : 'no pages came back'))
    worker.onerror = (event) => reject(new Error(event.message))
    worker.postMessage(asked)
  }).finally(() => worker.terminate())
}
