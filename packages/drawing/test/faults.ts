import type { Result } from '@lengthwise/planner'
import type { Box } from '../src/box.ts'
import { crosses, meet, padded } from '../src/box.ts'
import { marksOf } from '../src/index.ts'
import { textBox } from '../src/ink.ts'
import type { Mark, Page, Scene } from '../src/scene.ts'

const texts = (page: Page) => marksOf(page).filter((mark) => mark.kind === 'text')

/** Numbers of pieces and remnants, and flags, that stand on no map page; of cloths cut alike the flags of one will do. */
export function missingLabels(result: Result, scene: Scene): readonly string[] {
  const shown = new Set(
    scene.pages
      .filter((page) => page.kind === 'map')
      .flatMap((page) =>
        texts(page).flatMap((mark) => [mark.text, ...mark.text.split(/[,;.]? +|\.$/), ...run(mark.text)]),
      ),
  )
  const wanted = result.cloths.flatMap((c) => [
    ...c.placed.map((p) => p.label),
    ...c.remnants.map((r) => r.name),
    ...(result.cloths.some((other) => other.piece < c.piece && cutLike(other, c))
      ? []
      : c.divisions.map((d) => d.flag)),
  ])
  return wanted.filter((label) => !shown.has(label))
}

const cutLike = (a: Result['cloths'][number], b: Result['cloths'][number]): boolean =>
  a.name === b.name &&
  [a, b]
    .map((c) => c.divisions.map((d) => `${d.how} ${d.runs} ${d.at} ${d.from} ${d.to}`).join())
    .every((cuts, _, all) => cuts === all[0]) &&
  [a, b]
    .map((c) =>
      c.placed
        .map((p) => `${p.x} ${p.y} ${p.words}`)
        .sort()
        .join(),
    )
    .every((lie, _, all) => lie === all[0])

// '3 to 9' in a margin stands for the numbers between, too
function run(words: string): readonly string[] {
  return [...words.matchAll(/(R?)(\d+) to R?(\d+)/g)].flatMap(([, letter, from, to]) =>
    Array.from({ length: Number(to) - Number(from) + 1 }, (_, i) => `${letter}${Number(from) + i}`),
  )
}

export const smallestCapital = (scene: Scene): number =>
  scene.pages.reduce(
    (least, page) => texts(page).reduce((a, mark) => Math.min(a, mark.capital), least),
    Number.POSITIVE_INFINITY,
  )

/** Texts that touch each other. */
export function clashes(scene: Scene): readonly string[] {
  return scene.pages.flatMap((page, n) => {
    const all = texts(page).map((mark) => ({ mark, box: padded(textBox(mark), -0.15) }))
    return all.flatMap((a, i) =>
      all
        .slice(i + 1)
        .flatMap((b) => (meet(a.box, b.box) ? [`page ${n + 1} ${page.kind}: ${a.mark.text} | ${b.mark.text}`] : [])),
    )
  })
}

/** Marks outside the frame. */
export function outsiders(scene: Scene): readonly string[] {
  return scene.pages.flatMap((page, n) => {
    const frame: Box = { x: (page.width - 184) / 2 - 0.6, y: (page.height - 254) / 2 - 0.6, width: 185.2, height: 256 }
    const inFrame = (b: Box): boolean =>
      b.x >= frame.x &&
      b.y >= frame.y &&
      b.x + b.width <= frame.x + frame.width &&
      b.y + b.height <= frame.y + frame.height
    return marksOf(page).flatMap((mark) =>
      inFrame(extent(mark)) ? [] : [`page ${n + 1} ${page.kind}: ${JSON.stringify(mark).slice(0, 160)}`],
    )
  })
}

function extent(mark: Mark): Box {
  if (mark.kind === 'text') return textBox(mark)
  const points =
    mark.kind === 'line'
      ? [
          [mark.x1, mark.y1],
          [mark.x2, mark.y2],
        ]
      : mark.kind === 'lines'
        ? mark.segments.flatMap(([a, b, c, d]) => [
            [a, b],
            [c, d],
          ])
        : mark.kind === 'path'
          ? mark.points
          : [
              [mark.x - mark.r, mark.y - mark.r],
              [mark.x + mark.r, mark.y + mark.r],
            ]
  const xs = points.map((p) => p[0]!)
  const ys = points.map((p) => p[1]!)
  const [x, y] = [Math.min(...xs), Math.min(...ys)]
  return { x, y, width: Math.max(...xs) - x, height: Math.max(...ys) - y }
}

/** Texts on maps with a line through them. */
export function struckThrough(scene: Scene): readonly string[] {
  return scene.pages.flatMap((page, n) => {
    if (page.kind !== 'map') return []
    const boxes = texts(page).map((mark) => ({ mark, box: padded(textBox(mark), -0.25) }))
    const lines = marksOf(page).flatMap((mark) =>
      mark.kind === 'line'
        ? [[mark.x1, mark.y1, mark.x2, mark.y2] as const]
        : mark.kind === 'lines'
          ? mark.segments
          : [],
    )
    return boxes.flatMap(({ mark, box }) => {
      const struck = lines.find((line) => crosses(line, box))
      return struck === undefined ? [] : [`page ${n + 1}: ${mark.text} by ${struck.map((v) => v.toFixed(1)).join(' ')}`]
    })
  })
}
