import { cm, inches } from '@lengthwise/units'
import { expect, test } from 'vitest'
import type { DuvetCover, Opening, Way } from '../src/index.ts'
import { copiesOf, sewUp, waysToMake } from '../src/index.ts'
import { threadLength } from '../src/thread.ts'
import { chooseZips } from '../src/zips.ts'
import { bolt, COMMON, cover, orderOf, tablesOf } from './orders.ts'

const INCHES = { measureIn: 'in' } as const

test('a zip of 60 in serves an edge of 76 in, and so do two of 25 in head to head (common practice, no source)', () => {
  expect(chooseZips(INCHES, inches(76), [inches(60)])).toEqual({
    zips: [inches(60)],
    opening: inches(60),
    enough: true,
  })
  expect(chooseZips(INCHES, inches(76), [inches(25)])).toEqual({
    zips: [inches(25), inches(25)],
    opening: inches(50),
    enough: true,
  })
  expect(chooseZips(INCHES, inches(76), null)?.zips).toEqual([inches(72)])
  expect(chooseZips(INCHES, inches(20), [inches(25)])).toBeNull()
})

test('a yard of cord makes four ties of 9 in (common practice, no source)', () => {
  const item = cover(inches(79), inches(79), {
    cornerTies: { count: 4, length: inches(9), width: inches(0.5), bought: true },
  })
  const cord = firstWay(item).notions.find((n) => n.what === 'cord')
  expect(cord).toMatchObject({ length: inches(36) })
})

test('thread by ISO 4915 type 301, 2.5 to 1: 220 cm of one row take 550 cm, and 15 % more (melgeecrafts; apparelscience)', () => {
  expect(threadLength([], [], cm(220)) / cm(1)).toBe(550 * 1.15)
})

const firstWay = (item: DuvetCover): Way => {
  const order = orderOf([bolt('cotton', [cm(280)])], [item])
  const [way] = waysToMake(order, item, tablesOf(order)).ways
  expect(sewUp(order, item, way!).faults).toEqual([])
  return way!
}

const PLACES = { spacing: cm(20), fromCorner: cm(15) }
const HEM = { depth: cm(2), turns: 2, turnedIn: cm(2) } as const

test.each([
  [{ kind: 'none' }, 203, 203],
  [{ kind: 'zip', at: 'foot', zips: null }, 203, 203],
  // 200 + 1.5 + 4 + 4
  [{ kind: 'buttons', at: 'foot', depth: cm(4), turnedIn: cm(4), ...PLACES }, 209.5, 209.5],
  [{ kind: 'snaps', at: 'head', depth: cm(3), turnedIn: cm(1), ...PLACES }, 205.5, 205.5],
  [{ kind: 'ties', at: 'foot', hem: HEM, tieLength: cm(25), tieWidth: cm(1), ...PLACES }, 205.5, 205.5],
  // the back is longer by the flap: 200 + 1.5 + 25 + 4
  [{ kind: 'flap', at: 'foot', depth: cm(25), hem: HEM }, 205.5, 230.5],
] as const)('opening %o: front %s and back %s cm long', (opening, front, back) => {
  const way = firstWay(cover(cm(200), cm(200), { opening: opening as Opening }))
  expect(way.pieces.slice(0, 2).map((p) => p.cutLength / cm(1))).toEqual([front, back])
})

test('an opening at the side lies on the front’s left edge and the back’s right one', () => {
  const way = firstWay(cover(cm(200), cm(200), { opening: { kind: 'zip', at: 'left', zips: null } }))
  const opening = way.seams.find((s) => s.role === 'opening')
  expect(opening).toMatchObject({
    a: { piece: '/front', edge: 'left' },
    b: { piece: '/back', edge: 'right' },
    kind: 'zip',
  })
})

test('ties are cut four times as wide as finished, two for each place', () => {
  const opening = { kind: 'ties', at: 'foot', hem: HEM, tieLength: cm(25), tieWidth: cm(1), ...PLACES } as const
  const tie = firstWay(cover(cm(200), cm(200), { opening })).pieces.find((p) => p.name === '/tie')
  // 170 between the corners: 9 gaps, 10 places; 25 + 1.5 + 1 long
  expect([tie?.count, tie!.cutWidth / cm(1), tie!.cutLength / cm(1)]).toEqual([20, 4, 27.5])
})

test('the sewing order joins panels, makes the opening, bastes ties, closes the seams, turns', () => {
  const item = cover(cm(225), cm(220), { cornerTies: { count: 4, length: cm(20), width: cm(1), bought: false } })
  const order = orderOf([bolt('cotton', [cm(140)])], [item])
  const way = waysToMake(order, item, tablesOf(order)).ways.find((w) => w.id.startsWith('both/centre-and-sides'))!
  const first = (words: string): number => way.sewing.findIndex((line) => line.text.includes(words))
  const steps = ['join', 'zip', 'Baste', 'left seam', 'head seam', 'turn right side out'].map(first)
  expect(steps).toEqual([...steps].sort((a, b) => a - b))
  expect(steps[0]).toBe(0)
  // the seam lengths in the steps are those of the seam lines
  const sewn = way.sewing.reduce((total, line) => total + line.seamLength, 0)
  expect(sewn).toBe(way.seams.reduce((total, seam) => total + seam.length, 0))
})

test('copies are numbered through the plan by kind, rectangles by name', () => {
  const needs = {
    head: { kind: 'none' },
    foot: { kind: 'none' },
    left: { kind: 'none' },
    right: { kind: 'none' },
  } as const
  const cloth = {
    ...COMMON,
    count: 2,
    item: 'rectangle',
    name: 'Tray cloth',
    size: { cut: { width: cm(40), length: cm(60) } },
    cloth: ['cotton'],
    sameCloth: 'none',
    lengthRuns: 'either',
    needs,
  } as const
  const order = orderOf([], [cover(cm(200), cm(200), { count: 2 }), cloth, cover(cm(135), cm(200)), cloth])
  expect(copiesOf(order).map((copy) => `${copy.id} ${copy.itemIndex}`)).toEqual([
    'duvet-cover-1 0',
    'duvet-cover-2 0',
    'tray-cloth-1 1',
    'tray-cloth-2 1',
    'duvet-cover-3 2',
    'tray-cloth-3 3',
    'tray-cloth-4 3',
  ])
})
