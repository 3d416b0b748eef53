import type { Placed, Result } from '@lengthwise/planner'
import { describe, expect, test } from 'vitest'
import { cuttingMap, marksOf } from '../src/index.ts'
import { measureIn } from '../src/measure.ts'
import { markWords } from '../src/pages/marks.ts'
import type { Cut } from './hand.ts'
import { bolt, cmOf, laid, piece, resultOf } from './hand.ts'

type Marks = Placed['marks']

const one = (width: number, long: number, marks: Marks, top: Placed['top']): Result =>
  resultOf('One', [
    laid(bolt('linen', width), width, long, { ...piece('1', 'Case', 'pillowcase 1'), marks, top } as Cut),
  ])

const said = (width: number, long: number, top: Placed['top'], marks: Marks): string =>
  markWords(one(width, long, marks, top).cloths[0]!.placed[0]!, measureIn('cm')).replace(/\u00a0/g, ' ')

const across = (y: number): Marks[number] => ({ kind: 'fold', x: cmOf(0), y: cmOf(y), runs: 'across' })
const along = (x: number): Marks[number] => ({ kind: 'fold', x: cmOf(x), y: cmOf(0), runs: 'along' })
const at = (kind: 'zip-end' | 'tie' | 'button', x: number, y: number): Marks[number] => ({
  kind,
  x: cmOf(x),
  y: cmOf(y),
})

describe('places of marks, reckoned by hand for a piece turned so that its top is away', () => {
  // a case with a flap: 4.5 hem, 75 front, 75 back, 15 flap, 4.5 hem, so 174 in all
  const folds = [4.5, 79.5, 154.5, 169.5].map(across)

  test('lines count from one edge, whichever side the top is', () => {
    expect(said(53, 174, 'start', folds)).toBe('folds 4.5, 79.5, 154.5 and 169.5 cm from the top')
    // turned half round, what was 4.5 from the start is 169.5 from the end
    expect(said(53, 174, 'end', folds)).toBe('folds 4.5, 19.5, 94.5 and 169.5 cm from the top')
    // the right side up: the start comes to lie at the left
    expect(said(53, 174, 'right', folds)).toBe('folds 4.5, 79.5, 154.5 and 169.5 cm from the left')
    // the left side up: the end comes to lie at the left
    expect(said(53, 174, 'left', folds)).toBe('folds 4.5, 19.5, 94.5 and 169.5 cm from the left')
  })
  test('one or two lines count from the edge next to them', () => {
    expect(said(100, 200, 'start', [across(11), across(196.5)])).toBe(
      'folds 11 cm from the top, 3.5 cm from the bottom',
    )
    expect(said(100, 200, 'right', [along(95)])).toBe('fold 5 cm from the top')
    expect(said(100, 200, 'left', [along(95)])).toBe('fold 5 cm from the bottom')
    expect(said(44, 64, 'left', [across(2), across(62), along(2), along(42)])).toBe('folds 2 cm inside every edge')
  })
  test('points stand in rows along the edge next to them', () => {
    const row = [at('button', 16.5, 219.5), at('button', 36, 219.5)]
    expect(said(47, 229.5, 'start', row)).toBe('buttons or snaps 16.5 and 36 cm from the left, 10 cm from the bottom')
    // half round: 47 less 36 and less 16.5
    expect(said(47, 229.5, 'end', row)).toBe('buttons or snaps 11 and 30.5 cm from the left, 10 cm from the top')
    expect(said(47, 229.5, 'left', row)).toBe('buttons or snaps 16.5 and 36 cm from the top, 10 cm from the left')
    expect(said(203, 12, 'start', [at('zip-end', 11.5, 0), at('zip-end', 191.5, 0)])).toBe(
      'zip ends 11.5 and 191.5 cm from the left, on the top edge',
    )
    const corners = [1.5, 201.5].flatMap((x) => [1.5, 202].map((y) => at('tie', x, y)))
    expect(said(203, 203.5, 'start', corners)).toBe(
      'ties in all four corners, 1.5 cm from the left and the right, 1.5 cm from the top and the bottom',
    )
  })
  test('squares at the corners', () => {
    const squares = [0, 154.5].flatMap((x) =>
      [0, 204.5].map((y): Marks[number] => ({ kind: 'corner-square', x: cmOf(x), y: cmOf(y), size: cmOf(45.5) })),
    )
    for (const top of ['start', 'left'] as const)
      expect(said(200, 250, top, squares)).toBe('a square of 45.5 cm in all four corners')
  })
})

describe('marks on paper', () => {
  const wordsOn = (result: Result): readonly string[] =>
    cuttingMap(result, { paper: 'a4' }).pages.flatMap((page) =>
      marksOf(page).flatMap((mark) => (mark.kind === 'text' ? [mark.text.replace(/\u00a0/g, ' ')] : [])),
    )

  test('the key tells the signs that are drawn, and no others', () => {
    const keyed = wordsOn(one(100, 150, [across(20), at('zip-end', 30, 150)], 'start'))
    expect(keyed).toEqual(expect.arrayContaining(['Fold', 'End of the zip', 'Marks to carry over']))
    for (const other of ['Tie', 'Button or snap', 'Corner square', 'Stitching, no cut'])
      expect(keyed).not.toContain(other)
  })
  test('a plan without marks has no list of them', () => {
    const words = wordsOn(one(100, 150, [], 'start'))
    expect(words).not.toContain('Marks to carry over')
    expect(words).not.toContain('Fold')
  })
  test('a piece whose side is its top says so', () => {
    expect(wordsOn(one(100, 150, [], 'left')).join(' ')).toContain('top at left')
    expect(wordsOn(one(100, 150, [], 'start')).join(' ')).not.toMatch(/top at (left|right)/)
  })
})
