import { cm, inches, length, ZERO } from '@lengthwise/units'
import { expect, test } from 'vitest'
import type { Cloth, Piece, QuiltBack } from '../src/index.ts'
import { waysToMake } from '../src/index.ts'
import { bolt, COMMON, cover, face, orderOf, PLAIN_PRINT, tablesOf } from './orders.ts'

/** Panels as wide as the cloth, side by side in one face, `panel` long, on a print with this repeat and match. */
function panels(count: number, panel: number, repeat: number, match: 'straight' | 'half-drop'): readonly Piece[] {
  const print = { ...PLAIN_PRINT, way: 'one-way', repeat: length(repeat), match } as const
  const cloth: Cloth = bolt('cotton', [cm(100)], { print })
  const item: QuiltBack = {
    ...COMMON,
    seam: { kind: 'plain', allowance: ZERO },
    item: 'quilt-back',
    quilt: { width: cm(100 * count), length: length(panel) },
    overhang: ZERO,
    face: face('cotton', { joined: 'full-widths', lengthRuns: 'along' }),
  }
  const order = orderOf([cloth], [item], { markTo: ZERO })
  const way = waysToMake(order, item, tablesOf(order)).ways.find((w) => w.pieces.length === count)
  return way!.pieces
}

/** The shortest run of the panels one after the other, by trying every order and holding each tie to the letter. */
function shortestRun(pieces: readonly Piece[]): number {
  const orders = (rest: readonly Piece[]): Piece[][] =>
    rest.length === 0
      ? [[]]
      : rest.flatMap((first, i) => orders(rest.filter((_, k) => k !== i)).map((more) => [first, ...more]))
  let best = Number.POSITIVE_INFINITY
  for (const run of orders(pieces)) {
    let end = 0
    let phase: number | null = null
    for (const piece of run) {
      const { repeat, offset } = piece.tie!
      let y = end
      if (phase === null) phase = (((y - offset) % repeat) + repeat) % repeat
      else while ((((y - offset - phase) % repeat) + repeat) % repeat !== 0) y++
      end = y + piece.cutLength
    }
    best = Math.min(best, end)
  }
  return best
}

const cmRun = (pieces: readonly Piece[]): number => shortestRun(pieces) / cm(1)

// derived: same-phase step ceil(L/R)·R, opposite-phase step (ceil(L/R − 1/2) + 1/2)·R
test.each([
  [230, 64, 'straight', 742],
  [230, 64, 'half-drop', 774],
  [200, 64, 'straight', 712],
  [200, 64, 'half-drop', 648],
] as const)('three panels of %s cm on a repeat of %s cm, %s: a run of %s cm', (long, repeat, match, run) => {
  expect(cmRun(panels(3, cm(long), cm(repeat), match))).toBe(run)
})

test('E3 a panel of 116 in on a repeat of 25 in takes 125 in of the run (spotidoc workroom threads)', () => {
  const pieces = panels(2, inches(116), inches(25), 'straight')
  expect((shortestRun(pieces) - inches(116)) / inches(1)).toBe(125)
})

test('E4 a panel of 96 in on a repeat of 27 in takes 108 in of the run (diyideas, fabric repeats)', () => {
  const pieces = panels(2, inches(96), inches(27), 'straight')
  expect((shortestRun(pieces) - inches(96)) / inches(1)).toBe(108)
})

test('E9 135 in is five repeats of 27 in exactly and takes no repeat more (against the rival rule of curtainsandfabx)', () => {
  const pieces = panels(4, inches(135), inches(27), 'straight')
  expect(shortestRun(pieces) / inches(1)).toBe(540)
})

test('E7 drops of 240 cm on a repeat of 37 cm step by 259 cm (et-wholesale, curtains)', () => {
  const pieces = panels(4, cm(240), cm(37), 'straight')
  expect(cmRun(pieces)).toBe(3 * 259 + 240)
})

test('faces are free of each other, plain cloth and single panels are not tied', () => {
  const print = { ...PLAIN_PRINT, way: 'one-way', repeat: cm(64), match: 'straight' } as const
  const item = cover(cm(225), cm(220))
  const joined = orderOf([bolt('cotton', [cm(140)], { print })], [item])
  const faces = (order: typeof joined): Set<string | null> =>
    new Set(waysToMake(order, item, tablesOf(order)).ways.flatMap((way) => way.pieces.map((p) => p.tie?.face ?? null)))
  expect(faces(joined)).toEqual(new Set(['/front', '/back']))
  expect(faces(orderOf([bolt('cotton', [cm(260)], { print })], [item]))).toEqual(new Set([null]))
  expect(faces(orderOf([bolt('cotton', [cm(140)])], [item]))).toEqual(new Set([null]))
})

test('a repeat measured in the shop shrinks with the cloth when it is washed first', () => {
  const shrinks = { along: 50_000, across: 0 } as Cloth['shrinks']
  const repeat = (repeatMeasured: 'in-shop' | 'on-the-table'): number => {
    const cloth = bolt('cotton', [cm(140)], { shrinks, print: { ...PLAIN_PRINT, repeat: cm(64), repeatMeasured } })
    return tablesOf(orderOf([cloth], [], { wash: 'before-cutting' })).get('cotton')!.repeat
  }
  expect([repeat('in-shop') / cm(1), repeat('on-the-table') / cm(1)]).toEqual([60.8, 64])
})

test.each(['straight', 'half-drop'] as const)('joined edges of a %s match need the selvedge in every way', (match) => {
  const print = {
    ...PLAIN_PRINT,
    way: 'two-way',
    repeat: cm(64),
    acrossRepeat: cm(31),
    match,
    matchLine: cm(2),
  } as const
  const item: QuiltBack = {
    ...COMMON,
    item: 'quilt-back',
    quilt: { width: cm(235), length: cm(255) },
    overhang: ZERO,
    face: face('cotton', { crossJoins: 1, centre: 'any' }),
  }
  const order = orderOf([bolt('cotton', [cm(110)], { print })], [item])
  const { ways } = waysToMake(order, item, tablesOf(order))
  const kinds = new Set(ways.map((way) => way.id.split('/')[0]))
  expect(kinds).toEqual(new Set(['centre-and-sides', 'full-widths']))
  for (const way of ways)
    for (const seam of way.seams)
      for (const ref of [seam.a, seam.b]) {
        const piece = way.pieces.find((p) => p.name === ref.piece)!
        const besideEachOther = (ref.edge === 'left' || ref.edge === 'right') === (piece.lengthRuns === 'along')
        if (besideEachOther)
          expect([way.id, piece.name, piece.needs[ref.edge].kind]).toEqual([way.id, piece.name, 'selvedge'])
      }
})

test('a remnant with one selvedge has none to meet a matched print at: it is not joined', () => {
  const print = { ...PLAIN_PRINT, way: 'two-way', repeat: cm(64), match: 'straight' } as const
  const size = { width: cm(110), length: cm(600) }
  const edges = {
    head: { kind: 'raw' },
    foot: { kind: 'raw' },
    left: { kind: 'selvedge' },
    right: { kind: 'raw' },
  } as const
  const cloth = bolt('cotton', [], { from: 'remnant', widths: [], size, edges, print })
  const item: QuiltBack = {
    ...COMMON,
    item: 'quilt-back',
    quilt: { width: cm(200), length: cm(200) },
    overhang: ZERO,
    face: face('cotton'),
  }
  const order = orderOf([cloth], [item])
  const { ways, refused } = waysToMake(order, item, tablesOf(order))
  expect(ways).toEqual([])
  expect(refused.some((no) => no.why.includes('its print meets at the selvedges'))).toBe(true)
})
