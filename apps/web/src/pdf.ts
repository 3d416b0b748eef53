import type { Scene } from '@lengthwise/drawing'
import { fonts } from './fonts.ts'
import type { Drawing, Drawn } from './pages-worker.ts'
import { workerFor } from './parts.ts'

/** The pages as a PDF. The writer is set up only here, in a worker of its own. */
export async function toPdf(scene: Scene): Promise<Uint8Array<ArrayBuffer>> {
  const asked: Drawing = { scene, fonts: await fonts() }
  const worker = workerFor('pages')
  return new Promise<Uint8Array<ArrayBuffer>>((resolve, reject) => {
    worker.onmessage = ({ data }: MessageEvent<Drawn>) =>
      'bytes' in data ? resolve(data.bytes) : reject(new Error('fault' in data ? data.fault : 'no pages came back'))
    worker.onerror = (event) => reject(new Error(event.message))
    worker.postMessage(asked)
  }).finally(() => worker.terminate())
}
