import { cm, length } from '@lengthwise/units'
import { describe, expect, it } from 'vitest'
import type { CutCloth, Division } from '../src/index.ts'
import { plan, rehearsalFaults, rehearse } from '../src/index.ts'
import { bolt, orderOf, rectangle } from './orders.ts'

const order = orderOf(
  [rectangle('towel', 60, 120, { count: 3 }), rectangle('mat', 50, 70, { count: 2 })],
  [bolt('cloth', [150], { spareEachEnd: cm(5) })],
)

function theCloth(): CutCloth {
  const [cloth] = plan(order).cloths
  if (!cloth) throw new Error('no cloth')
  return cloth
}

describe('the order of divisions, carried out on a model', () => {
  it('ends with exactly what is listed', () => {
    const cloth = theCloth()
    expect(rehearsalFaults(cloth)).toEqual([])
    const area = (boxes: readonly { width: number; length: number }[]) =>
      boxes.reduce((sum, b) => sum + b.width * b.length, 0)
    const all = [...cloth.placed, ...cloth.remnants, ...cloth.waste, ...cloth.trims]
    expect(area(all)).toBe(cloth.width * cloth.length)
  })

  const broken: [string, (cloth: CutCloth) => CutCloth][] = [
    ['a division left out', (c) => ({ ...c, divisions: c.divisions.slice(0, -1) })],
    ['the first division left out', (c) => ({ ...c, divisions: c.divisions.slice(1) })],
    ['two divisions exchanged', (c) => ({ ...c, divisions: swapped(c.divisions) })],
    ['a division a hair off', (c) => changed(c, 1, (d) => ({ ...d, at: length(d.at + 1) }))],
    ['a division that stops short', (c) => changed(c, 1, (d) => ({ ...d, to: length(d.to - 1) }))],
    ['a division that starts late', (c) => changed(c, 1, (d) => ({ ...d, from: length(d.from + 1) }))],
    ['a division outside what is in hand', (c) => changed(c, 0, (d) => ({ ...d, at: length(-1) }))],
    ['a division done twice', (c) => ({ ...c, divisions: [...c.divisions, c.divisions.at(-1)!] })],
    ['a piece not listed', (c) => ({ ...c, placed: c.placed.slice(1) })],
    ['a piece listed twice', (c) => ({ ...c, placed: [...c.placed, c.placed[0]!] })],
    ['a piece moved', (c) => ({ ...c, placed: c.placed.map((p, i) => (i ? p : { ...p, x: length(p.x + 1) })) })],
    ['a trim not listed', (c) => ({ ...c, trims: c.trims.slice(1) })],
    ['cloth shorter than said', (c) => ({ ...c, length: length(c.length - 1) })],
  ]
  it.each(broken)('refuses %s', (_, breakIt) => {
    expect(rehearsalFaults(breakIt(theCloth()))).not.toEqual([])
  })

  it('takes shears round a middle that no straight line divides', () => {
    const hand = { x: length(0), y: length(0), width: length(3), length: length(3) }
    const cut = (runs: 'across' | 'along', at: number, from: number, to: number): Division => ({
      n: 1,
      flag: 'C1',
      how: 'shears',
      runs,
      at: length(at),
      from: length(from),
      to: length(to),
      hand,
      measure: { distance: length(at), from: { kind: 'cloth-edge', edge: 'cut-end' } },
      gives: [
        { kind: 'waste', box: hand },
        { kind: 'waste', box: hand },
      ],
    })
    const cuts = [cut('across', 1, 0, 2), cut('along', 2, 0, 2), cut('across', 2, 1, 3), cut('along', 1, 1, 3)]
    const { parts, faults } = rehearse({ width: 3, length: 3, divideBy: 'shears' }, cuts)
    expect(faults).toEqual([])
    expect(parts).toHaveLength(5)
    expect(parts).toContainEqual({ x: 1, y: 1, width: 1, length: 1 })
    // the same cuts cannot be torn
    expect(rehearse({ width: 3, length: 3, divideBy: 'tearing' }, cuts).faults).toHaveLength(4)
  })
})

const swapped = (divisions: readonly Division[]): Division[] => {
  const [first, second, ...rest] = divisions
  return [second!, first!, ...rest]
}

const changed = (cloth: CutCloth, index: number, change: (d: Division) => Division): CutCloth => ({
  ...cloth,
  divisions: cloth.divisions.map((d, i) => (i === index ? change(d) : d)),
})
