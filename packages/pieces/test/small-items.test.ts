import type { Problem } from '@lengthwise/units'
import { cm, inches, length, percent } from '@lengthwise/units'
import { describe, expect, test } from 'vitest'
import type { Item } from '../src/index.ts'
import { waysToMake } from '../src/index.ts'
import { checkBolster } from '../src/items/bolster.ts'
import { circumference } from '../src/items/circle.ts'
import { checkCushion } from '../src/items/cushion.ts'
import { fewestParts, partOf } from '../src/items/equal-parts.ts'
import { checkStrips } from '../src/items/strips.ts'
import { asItLies, bolster, bolt, cushion, hem, orderOf, shrinking, strips } from './item-orders.ts'

const cotton = bolt('cotton', cm(150))

function waysOf(item: Item, cloth = cotton, parts: Parameters<typeof orderOf>[2] = {}) {
  const order = orderOf([item], [cloth], parts)
  return waysToMake(order, item, new Map([[cloth.name, asItLies(cloth)]])).ways
}
const sizes = (way: ReturnType<typeof waysOf>[number] | undefined) =>
  Object.fromEntries((way?.pieces ?? []).map((piece) => [piece.name, [piece.cutWidth, piece.cutLength, piece.count]]))

describe('strips', () => {
  // six strips of 18 and 2 1/2 in: 123 in of cloth, 3 1/2 yd (yourwiseadvices, yardage for a bed skirt)
  test('a ruffle six widths round takes six strips of 20 1/2 in, one above the other', () => {
    const item = strips({ width: inches(20.5), run: inches(255), runs: 'across', seam: inHalf })
    const [way] = waysOf(item, bolt('cotton', inches(44)), { markTo: inches(0.125) })
    expect(way?.pieces).toHaveLength(6)
    expect(way!.pieces.reduce((total, piece) => total + piece.cutWidth, 0)).toBe(inches(123))
  })

  test('joined end to end they come to the run, seams taken off', () => {
    for (const way of waysOf(strips({ run: cm(700) }))) {
      const n = way.pieces.length
      const joined = way.pieces.reduce((total, piece) => total + piece.cutLength, 0) - (n - 1) * cm(3)
      expect(joined).toBeGreaterThanOrEqual(cm(700))
      expect(joined).toBeLessThan(cm(700) + n * cm(0.5))
      expect(way.seams).toHaveLength(n - 1)
    }
  })

  test('the fewest that fit across, one fewer does not', () => {
    for (const [total, room] of [
      [cm(700), cm(110)],
      [cm(300), cm(150)],
      [cm(147), cm(150)],
      [cm(297.5), cm(150)],
    ] as const) {
      const n = fewestParts(total, room, cm(1.5), cm(0.5), 50)!
      expect(partOf(total, n, cm(1.5), cm(0.5))).toBeLessThanOrEqual(room)
      if (n > 1) expect(partOf(total, length(n - 1), cm(1.5), cm(0.5))).toBeGreaterThan(room)
    }
    expect(fewestParts(cm(700), cm(3), cm(1.5), cm(0.5), 50)).toBeNull()
  })

  test('asked for along the cloth, none lies across it', () => {
    for (const way of waysOf(strips({ runs: 'along' })))
      expect(way.pieces.every((piece) => piece.lengthRuns === 'along')).toBe(true)
  })

  test('strips wider than long, or without a size, are problems', () => {
    expectCodes(checkStrips(orderOf([], [cotton]), strips({ width: cm(20), run: cm(10) })), ['strip-wider-than-long'])
    expectCodes(checkStrips(orderOf([], [cotton]), strips({ width: cm(0), run: cm(10) })), ['strip-without-size'])
  })
})

describe('a bolster', () => {
  test('π to a whole unit, never less', () => {
    expect(circumference(cm(100))).toBe(Math.ceil(Math.PI * cm(100)))
    expect(circumference(length(7))).toBe(22)
  })

  test('body once round and as long as the bolster; the ends are circles laid as squares (common practice)', () => {
    const [way] = waysOf(bolster())
    // 20 π = 62.83, two seams of 1.5 and the next half centimetre
    expect(sizes(way)).toEqual({ '/body': [cm(66), cm(93), 1], '/end': [cm(23), cm(23), 2] })
    expect(way?.pieces[1]?.words).toContain('circle 23 cm across laid as its square'.replace(' cm', '\u00a0cm'))
    expect(way?.notions.map((notion) => notion.what)).toEqual(['zip', 'thread'])
  })

  test('tied: length and twice the diameter and the tie-end (common practice)', () => {
    const [way] = waysOf(bolster({ ends: 'tied' }), bolt('cotton', cm(280)))
    expect(sizes(way)).toEqual({ '/body': [cm(66), cm(163), 1] })
    expect(way?.notions.find((notion) => notion.what === 'cord')).toMatchObject({ length: cm(160) })
  })

  test('ties in a cot and cloth that shrinks unevenly are problems', () => {
    expectCodes(checkBolster(orderOf([], [cotton]), bolster({ cot: true, ends: 'tied' })), ['ties-in-a-cot'])
    const uneven = bolt('cotton', cm(150), { shrinks: shrinking(percent(6), percent(1)) })
    expectCodes(checkBolster(orderOf([], [uneven], { wash: 'after-sewing' }), bolster()), ['shrinks-apart'])
    expectCodes(checkBolster(orderOf([], [uneven], { wash: 'before-cutting' }), bolster()), [])
  })
})

describe('a cushion or sham', () => {
  test('envelope back: front and two leaves that overlap (common practice)', () => {
    const [way] = waysOf(cushion())
    // (45 + 12) ÷ 2 = 28.5, a seam of 1.5 and a double hem of 2
    expect(sizes(way)).toEqual({
      '/front': [cm(48), cm(48), 1],
      '/back/outer': [cm(48), cm(34), 1],
      '/back/inner': [cm(48), cm(34), 1],
    })
  })

  test('with a flange the front is larger by it on every side', () => {
    const item = cushion({ item: 'sham', finished: { width: cm(50), length: cm(75) }, flange: cm(5) })
    expect(sizes(waysOf(item)[0])['/front']).toEqual([cm(63), cm(88), 1])
  })

  test('a zip: in a long side, or across the back of a flanged one', () => {
    const plain = waysOf(cushion({ back: 'zip' }))[0]
    expect(sizes(plain)).toEqual({ '/front': [cm(48), cm(48), 1], '/back': [cm(48), cm(48), 1] })
    expect(plain?.notions.find((notion) => notion.what === 'zip')).toMatchObject({ length: cm(40), count: 1 })
    const flanged = waysOf(cushion({ back: 'zip', flange: cm(5) }))[0]
    expect(Object.keys(sizes(flanged))).toEqual(['/front', '/back/upper', '/back/lower'])
  })

  test.each([
    ['overlap-does-not-fit', cushion({ overlap: cm(45) })],
    ['flange-too-wide', cushion({ flange: cm(45) })],
    ['hem-too-deep', cushion({ hem: hem(23) })],
    ['seam-too-wide', cushion({ seam: { kind: 'plain', allowance: cm(23) } })],
    ['one-piece-of-two-cloths', cushion({ back: 'one-piece-envelope', backCloth: ['linen'] })],
  ])('%s is a problem with a next step', (code, item) => {
    expectCodes(checkCushion(orderOf([item], [cotton]), item), [code])
  })
})

const inHalf = { kind: 'plain', allowance: inches(0.5) } as const

function expectCodes(problems: readonly Problem[], codes: readonly string[]) {
  expect(problems.map((problem) => problem.code)).toEqual(codes)
  for (const problem of problems) expect(problem.hint).not.toBe('')
}
