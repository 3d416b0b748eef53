import { LETTERS } from 'virtual:map-fonts'
import type { Mark, Part, Scene } from '@lengthwise/drawing'

/** The letters of a plan that the typeface of this page lacks, each once. */
export function lettersMissing(plan: unknown): readonly string[] {
  const found = new Set<string>()
  JSON.stringify(plan, (_, value: unknown) => {
    if (typeof value === 'string') for (const letter of value) if (!isPrinted(letter)) found.add(letter)
    return value
  })
  return [...found]
}

/** The pages with a box in place of each letter that would come out empty. */
export function withBoxes(scene: Scene): Scene {
  const boxed = (marks: readonly Mark[]): readonly Mark[] =>
    marks.map((mark) => (mark.kind === 'text' ? { ...mark, text: printed(mark.text) } : mark))
  const part = (one: Part): Part => ({
    ...one,
    marks: boxed(one.marks),
    ...(one.rows && {
      rows: one.rows.map((row) => ({
        ...row,
        cells: row.cells.map((cell) => ({ ...cell, marks: boxed(cell.marks) })),
      })),
    }),
  })
  return { ...scene, pages: scene.pages.map((page) => ({ ...page, parts: page.parts.map(part) })) }
}

const printed = (text: string): string => [...text].map((letter) => (isPrinted(letter) ? letter : '□')).join('')

function isPrinted(letter: string): boolean {
  const point = letter.codePointAt(0) ?? 0
  // control characters are never drawn
  return point < 0x20 || LETTERS.some(([first, last]) => point >= first && point <= last)
}
