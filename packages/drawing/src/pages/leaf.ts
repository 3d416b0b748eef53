import type { Style } from '../cloth/style.ts'
import { PITCH, WEIGHTS } from '../cloth/style.ts'
import { line, runs, shifted, text } from '../ink.ts'
import type { Mark, Page, Part, Scene, Weight } from '../scene.ts'
import { fit, oneLine, textWidth, wrap } from '../text.ts'

/** What is drawn on every paper: one frame, centred on A4 and on US Letter. Pages are composed in frame millimetres. */
export const FRAME = { width: 184, height: 254 } as const
const PAPERS = { a4: { width: 210, height: 297 }, letter: { width: 215.9, height: 279.4 } } as const

/** A page being composed: parts in reading order, and where the next one may begin. */
export interface Leaf {
  readonly kind: Page['kind']
  readonly parts: Part[]
  y: number
  /** lowest baseline, where the foot holds more than usual */
  lowest?: number
  /** a map that shows a cloth from end to end, in one piece */
  whole?: boolean
  /** the rows of the key that a map has, and those it should have */
  key?: { readonly shown: readonly string[]; readonly wanted: readonly string[] }
}

/** The baseline of titles. */
const TITLE = 7.3

/** Lowest baseline of text, and of everything above the foot rule. */
export const BOTTOM = 244

export type Runs = readonly (readonly [text: string, weight: Weight])[]

/** A new page with its title, words at the right of it, and lines below. */
export function leaf(kind: Page['kind'], title: string, below: readonly string[], style: Style, right = ''): Leaf {
  const parts: Part[] = []
  const capital = Math.min(style.little, 7)
  // what stands at the right gives way first
  const titled = textWidth(title, capital, 500)
  const beside = right === '' ? '' : fit(right, Math.max(FRAME.width - titled - 6, 40), style.small, 700)
  const room = FRAME.width - (beside === '' ? 0 : textWidth(beside, style.small, 700) + 6)
  parts.push({ role: 'heading-1', marks: [text(fit(title, room, capital, 500), 0, TITLE, capital, 500)] })
  if (beside !== '')
    parts.push({ role: 'paragraph', marks: [text(beside, FRAME.width, TITLE, style.small, 700, 'end')] })
  let y: number = TITLE
  for (const each of below)
    for (const words of wrap(each, FRAME.width, style.small, 500)) {
      y += style.small * (y === TITLE ? 1.9 : PITCH)
      parts.push({ role: 'paragraph', marks: [text(words, 0, y, style.small, 500)] })
    }
  return { kind, parts, y: y + style.small * 0.6 }
}

/** A rule across the frame at the leaf's y. */
export function rule(on: Leaf, weight: number = WEIGHTS.thin): void {
  on.parts.push({ role: 'artifact', marks: [line([0, on.y, FRAME.width, on.y], weight)] })
}

/** From a rule to the baseline of the smaller head below it. */
const UNDER_RULE = 8.2

/** A new section below what stands on a page: a rule, a smaller head, and lines below it. */
export function section(on: Leaf, title: string, below: readonly string[], style: Style): void {
  on.y -= 3.2
  rule(on)
  on.y += UNDER_RULE
  on.parts.push({ role: 'heading-2', marks: [text(fit(title, FRAME.width, 5, 700), 0, on.y, 5, 700)] })
  for (const words of below.flatMap((each) => wrap(each, FRAME.width, style.small, 500))) {
    on.y += style.small * 1.8
    on.parts.push({ role: 'paragraph', marks: [text(words, 0, on.y, style.small, 500)] })
  }
  on.y += style.small * 0.6
}

/** What follows goes on the last page of what went before, under a rule and a smaller head, where all of it fits there. */
export function joined(before: readonly Leaf[], after: readonly Leaf[]): readonly Leaf[] {
  const last = before.at(-1)
  const [next] = after
  if (last === undefined || next === undefined || after.length > 1) return [...before, ...after]
  const down = last.y - 3.2 + UNDER_RULE - TITLE
  // what stands last stands above the place of the next line
  if (next.y + down - 3.5 > (last.lowest ?? BOTTOM)) return [...before, ...after]
  last.y -= 3.2
  rule(last)
  const [head, ...rest] = next.parts
  const smaller = (mark: Mark): Mark => (mark.kind === 'text' ? { ...mark, capital: 5, weight: 700 } : mark)
  const lower = (marks: readonly Mark[]): readonly Mark[] => marks.map((mark) => shifted(mark, 0, down))
  last.parts.push({ role: 'heading-2', marks: lower(head!.marks.map(smaller)) })
  for (const part of rest)
    last.parts.push({
      ...part,
      marks: lower(part.marks),
      ...(part.rows
        ? { rows: part.rows.map((row) => ({ cells: row.cells.map((c) => ({ ...c, marks: lower(c.marks) })) })) }
        : {}),
    })
  last.y = next.y + down
  return before
}

/** Mixed weights set into lines of at most `width`; figures in bold are not parted from their unit. */
export function setRuns(
  words: Runs,
  x: number,
  y: number,
  width: number,
  capital: number,
): { readonly marks: readonly Mark[]; readonly lines: number } {
  const rows: [string, Weight][][] = [[]]
  let at = 0
  for (const [run, weight] of words)
    for (const word of run.split(/(?<= )/)) {
      const long = textWidth(word.trimEnd(), capital, weight)
      if (at > 0 && at + long > width) {
        rows.push([])
        at = 0
      }
      const row = rows.at(-1)!
      const last = row.at(-1)
      if (last !== undefined && last[1] === weight) last[0] += word
      else row.push([fit(word, width, capital, weight), weight])
      at += textWidth(word, capital, weight)
    }
  for (const row of rows) {
    const last = row.at(-1)
    if (last) last[0] = last[0].trimEnd()
  }
  return {
    marks: rows.flatMap((row, i) => runs(row, x, y + i * capital * PITCH, capital)),
    lines: rows.length,
  }
}

/** Shifts the leaves onto paper and adds the foot: name and date of the plan, page of pages. */
export function bind(leaves: readonly Leaf[], scene: Omit<Scene, 'pages'>, style: Style): Scene {
  const size = PAPERS[scene.paper]
  const [dx, dy] = [(size.width - FRAME.width) / 2, (size.height - FRAME.height) / 2]
  const move = (marks: readonly Mark[]): readonly Mark[] => marks.map((mark) => shifted(mark, dx, dy))
  const small = Math.min(style.small, 3.5)
  const pages = leaves.map((each, i): Page => {
    const number = `page ${i + 1} of ${leaves.length}`
    const name = [oneLine(scene.title), dateWords(scene.date)].filter((words) => words !== '').join(' · ')
    const room = FRAME.width - textWidth(number, small, 500) - 6
    const foot: Part = {
      role: 'artifact',
      marks: [
        line([0, 248, FRAME.width, 248], WEIGHTS.thin),
        text(fit(name, room, small, 500), 0, 253, small, 500),
        text(number, FRAME.width, 253, small, 500, 'end'),
      ],
    }
    const parts = [...each.parts, foot].map((part) => ({
      ...part,
      marks: move(part.marks),
      ...(part.rows
        ? { rows: part.rows.map((row) => ({ cells: row.cells.map((cell) => ({ ...cell, marks: move(cell.marks) })) })) }
        : {}),
    }))
    return { kind: each.kind, ...size, parts }
  })
  return { ...scene, pages }
}

/** '2 May 2026'; '' without a date. */
export function dateWords(date: string | null): string {
  const found = date === null ? null : /^(\d{4})-(\d{2})-(\d{2})/.exec(date)
  return found ? `${Number(found[3])} ${MONTHS[Number(found[2]) - 1] ?? ''} ${found[1]}` : ''
}
const MONTHS = 'January February March April May June July August September October November December'.split(' ')

/** Exactly 100 mm, with ticks at its ends, at the foot of a page; `comfort` says what still holds where the printer did not keep it. */
export function checkLine(comfort = false): Part {
  const [x1, x2, y] = [FRAME.width - 100, FRAME.width, 245.2]
  return {
    role: 'paragraph',
    marks: [
      text('This line measures 100 mm', x2, y - (comfort ? 7.6 : 2.6), 3.5, 500, 'end'),
      ...(comfort ? [text('If it does not, the numbers are still right.', x2, y - 2.6, 3.5, 500, 'end')] : []),
      line([x1, y, x2, y], WEIGHTS.raw),
      // the ticks end where the line ends, so that from outside to outside it is 100 mm too
      line([x1 + WEIGHTS.raw / 2, y - 1.5, x1 + WEIGHTS.raw / 2, y + 1.5], WEIGHTS.raw),
      line([x2 - WEIGHTS.raw / 2, y - 1.5, x2 - WEIGHTS.raw / 2, y + 1.5], WEIGHTS.raw),
    ],
  }
}

/** A box to tick, its lower edge on the baseline. */
export const tickBox = (x: number, baseline: number, size: number): Mark => ({
  kind: 'path',
  points: [
    [x, baseline - size * 0.9],
    [x + size, baseline - size * 0.9],
    [x + size, baseline + size * 0.1],
    [x, baseline + size * 0.1],
  ],
  closed: true,
  weight: WEIGHTS.raw,
  fill: 'none',
})
