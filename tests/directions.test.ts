import { cuttingMap, marksOf } from '@lengthwise/drawing'
import { readPlan } from '@lengthwise/plan-file'
import type { Result } from '@lengthwise/planner'
import { plan } from '@lengthwise/planner'
import { expect, test } from 'vitest'

function planned(text: string): Result {
  const read = readPlan(text)
  if (!read.ok) throw new Error(read.problems.map((p) => `${p.path}: ${p.message}`).join('\n'))
  return plan(read.value, { compareWidths: false })
}

const aside = (top: string): boolean => top === 'left' || top === 'right'
const placed = (result: Result) => result.cloths.flatMap((cloth) => cloth.placed)

// leaves of 48 x 35 lie along or across as the width has it; the square front may lie either way
const cushions = (width: number, print = 'plain'): string => `
plan: 1
measure-in: cm
wash: none
make:
  - { item: cushion, count: 2, finished: 45 x 45 cm, cloth: stripe }
cloth:
  - { name: stripe, from: bolt, widths: [${width} cm], sold-by: 1 cm, print: ${print} }
`

test('a square is turned with the leaves of its back, so that stripes run one way', () => {
  for (const width of [50, 70, 83, 96, 110, 131, 150]) {
    const result = planned(cushions(width))
    for (const n of [1, 2]) {
      const own = placed(result).filter((p) => p.piece.startsWith(`cushion-${n}/`))
      expect(own.length).toBe(3)
      const front = own.find((p) => p.piece.endsWith('/front'))!
      const leaves = own.filter((p) => p !== front)
      // the square agrees with the first of the others; what lies across is named
      expect(aside(front.top)).toBe(aside(leaves.find((p) => !p.crosswise)!.top))
      for (const leaf of leaves) expect(leaf.crosswise ?? false).toBe(aside(leaf.top) !== aside(front.top))
    }
  }
})

// faces of 53 x 87.5 and a runner 87.5 across fill 140.5 x 87.5 exactly, one face along and one across, and in no other way
const crossing = (print: string): string => `
plan: 1
measure-in: cm
wash: none
make:
  - { item: pillowcase, style: open-end, faces: separate, finished: 50 x 75 cm, cloth: check }
  - { item: rectangle, name: runner, cut: 87.5 x 34.5 cm, cloth: check, length-runs: along }
cloth:
  - { name: check, from: sheet, size: 140.5 x 87.5 cm, hems: { head: none, foot: none, left: none, right: none }, print: ${print} }
`

test.each(['plain', 'two-way'])('faces of one thing in two directions are named, print %s', (print) => {
  const result = planned(crossing(print))
  expect(result.status).toBe('laid')
  const faces = placed(result).filter((p) => p.piece.startsWith('pillowcase-1'))
  expect(new Set(faces.map((p) => aside(p.top))).size).toBe(2)
  const named = faces.filter((p) => p.crosswise)
  expect(named.map((p) => p.piece)).toEqual(['pillowcase-1/back'])
  const remark = result.goodToKnow.find(({ code }) => code === 'crosswise')
  expect(remark?.text).toMatch(new RegExp(`lies ${named[0]!.label}:`))
  // beside the piece, in the list and on the map
  const words = cuttingMap(result, { paper: 'a4' }).pages.map((page) => ({
    kind: page.kind,
    text: marksOf(page)
      .flatMap((mark) => (mark.kind === 'text' ? [mark.text] : []))
      .join(' '),
  }))
  expect(words.filter(({ kind, text }) => kind === 'map' && text.includes('crosswise')).length).toBeGreaterThan(0)
  expect(words.filter(({ kind, text }) => kind !== 'map' && text.includes('crosswise')).length).toBeGreaterThan(0)
})

test('a print with a top is never crossed', () => {
  expect(planned(crossing('{ way: one-way, top: cut-end }')).status).toBe('cannot-be-cut')
})
