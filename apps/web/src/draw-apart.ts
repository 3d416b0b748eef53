import type { Figure } from '@lengthwise/drawing'
import type { Result } from '@lengthwise/planner'
import { useEffect, useMemo, useState } from 'preact/hooks'
import type { Room } from './fitted-figure.ts'
import { fittedFigure } from './fitted-figure.ts'
import type { Drawing, Drawn } from './pages-worker.ts'
import { workerFor } from './parts.ts'

// so many pieces are drawn between two keys; more are drawn by a worker while the page goes on answering
const AT_ONCE = 80

/** The map for a room. `late`: what stands here is of before, or nothing, while the next is being drawn. */
export function useFigure(
  result: Result,
  index: number,
  room: Room | null,
): { readonly figure: Figure | null; readonly late: boolean } {
  const apart = (result.cloths[index]?.placed.length ?? 0) > AT_ONCE
  const [drawn, setDrawn] = useState<{ readonly result: Result; readonly room: Room; readonly figure: Figure } | null>(
    null,
  )
  const now = useMemo(
    () => (room === null || apart ? null : fittedFigure(result, index, room)),
    [result, index, room, apart],
  )
  useEffect(() => {
    if (room === null || !apart) return
    const worker = workerFor('pages')
    worker.onmessage = ({ data }: MessageEvent<Drawn>) => {
      if ('figure' in data && data.figure !== null) setDrawn({ result, room, figure: data.figure })
      worker.terminate()
    }
    worker.postMessage({ result, index, room } satisfies Drawing)
    return () => worker.terminate()
  }, [result, index, room, apart])
  if (!apart) return { figure: now, late: false }
  // a figure of another layout would name pieces that are not there
  const kept = drawn !== null && drawn.result === result ? drawn : null
  return { figure: kept?.figure ?? null, late: kept?.room !== room }
}
