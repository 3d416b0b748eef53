import type { Scene } from '@lengthwise/drawing'
import type { Result } from '@lengthwise/planner'
import { OPS } from 'pdfjs-dist/legacy/build/pdf.mjs'
import type { Item } from './print.ts'
import { opened, textsOf } from './print.ts'

const POINTS = 72 / 25.4

/**
 * Pieces of the maps whose outline is not where a ruler at the printed scale would have it, within 0.01 pt, and how many were
 * looked at: all whose number is printed large, so that their sides are the lines next to it.
 */
export async function drawnSizes(
  result: Result,
  scene: Scene,
  bytes: Uint8Array,
): Promise<{ readonly checked: number; readonly wrong: readonly string[] }> {
  const pages = await textsOf(bytes)
  const wrong: string[] = []
  let checked = 0
  for (const [i, page] of scene.pages.entries()) {
    if (page.kind !== 'map') continue
    const items = pages[i]!
    const scale = Number(items.map((item) => /^SCALE 1:(\d+)$/.exec(item.text)?.[1]).find((each) => each !== undefined))
    const lines = await segmentsOf(bytes, i + 1)
    const height = page.height * POINTS
    const uprights = lines.filter(([x1, y1, x2, y2]) => x1 === x2 && Math.abs(y2 - y1) > 3).map(([x]) => x)
    const levels = lines.filter(([x1, y1, x2, y2]) => y1 === y2 && Math.abs(x2 - x1) > 3).map(([, y]) => y)
    const numbered = result.cloths
      .flatMap((cloth) => cloth.placed)
      .flatMap((piece) => {
        const label = items.filter((item) => item.text === piece.label).sort((a, b) => b.size - a.size)[0]
        if (label === undefined || label.size < 25 || label.turned) return []
        return { piece, at: [label.x + label.width / 2, height - label.y - label.size * 0.3] as const }
      })
    const drawn = (l: number): number => (l / 320 / scale) * POINTS
    const whole = numbered.flatMap(({ piece, at }) => {
      const start = startOf(levels, at[1], drawn(piece.length))
      return start === undefined ? [] : { y: piece.y, start }
    })
    const first = whole.sort((p, q) => p.y - q.y)[0]
    for (const { piece, at } of numbered) {
      const [across, along] = [drawn(piece.width), drawn(piece.length)]
      if (!hasPair(uprights, at[0], across)) wrong.push(`page ${i + 1}: ${piece.label} across`)
      // what begins on the page before still ends where it should
      const end = first && piece.y < first.y ? first.start + drawn(piece.y + piece.length - first.y) : null
      const isRight = end === null ? hasPair(levels, at[1], along) : levels.some((y) => Math.abs(y - end) <= 0.01)
      if (!isRight) wrong.push(`page ${i + 1}: ${piece.label} along`)
      checked += 1
    }
  }
  return { checked, wrong }
}

type Segment = readonly [x1: number, y1: number, x2: number, y2: number]

// straight lines of a page, in points, y downwards
export async function segmentsOf(bytes: Uint8Array, page: number): Promise<readonly Segment[]> {
  const document = await opened(bytes)
  const { fnArray, argsArray } = await (await document.getPage(page)).getOperatorList()
  const found: Segment[] = []
  fnArray.forEach((fn, i) => {
    if (fn !== OPS.constructPath) return
    const [data] = argsArray[i][1] as [ArrayLike<number>]
    if (data === null) return
    let at: readonly [number, number] = [0, 0]
    for (let j = 0; j < data.length; ) {
      const op = data[j]
      if (op === 0 || op === 1) {
        const to = [data[j + 1]!, data[j + 2]!] as const
        if (op === 1) found.push([round(at[0]), round(at[1]), round(to[0]), round(to[1])])
        at = to
        j += 3
      } else j += op === 2 ? 7 : op === 3 ? 5 : 1
    }
  })
  await document.destroy()
  return found
}

// pdf.js keeps coordinates as 32-bit floats
const round = (n: number): number => Math.round(n * 1000) / 1000

const startOf = (places: readonly number[], between: number, apart: number): number | undefined =>
  places.find((a) => a < between && places.some((b) => b > between && Math.abs(b - a - apart) <= 0.01))

const hasPair = (places: readonly number[], between: number, apart: number): boolean =>
  startOf(places, between, apart) !== undefined

/** Texts of a page that cover each other, by their capitals. */
export function overlaps(items: readonly Item[]): readonly string[] {
  const boxes = items.map((item) => {
    const tall = item.size * 0.64
    return item.turned
      ? { text: item.text, x1: item.x - tall, x2: item.x, y1: item.y, y2: item.y + item.width }
      : { text: item.text, x1: item.x, x2: item.x + item.width, y1: item.y, y2: item.y + tall }
  })
  return boxes.flatMap((a, i) =>
    boxes
      .slice(i + 1)
      .filter((b) => a.x1 + 0.4 < b.x2 && b.x1 + 0.4 < a.x2 && a.y1 + 0.4 < b.y2 && b.y1 + 0.4 < a.y2)
      .map((b) => `${a.text} | ${b.text}`),
  )
}
