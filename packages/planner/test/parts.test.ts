import { cm } from '@lengthwise/units'
import { describe, expect, it } from 'vitest'
import { plan } from '../src/index.ts'
import type { Part } from '../src/parts.ts'
import { cutsIn, grown, inLine, largestLeft, leaves, partsOfFree } from '../src/parts.ts'
import { tidyParts } from '../src/tidy-parts.ts'
import { bolt, orderOf, rectangle, remnant } from './orders.ts'

const box = (x: number, y: number, width: number, length: number) => ({ x, y, width, length })
const piece = (placement: number, ...b: [number, number, number, number]): Part => ({
  kind: 'piece',
  placement,
  box: box(...b),
})
const left = (...b: [number, number, number, number]): Part => ({ kind: 'left-over', box: box(...b) })
const keepAll = () => true

describe('parts in a row', () => {
  it('cuts of one direction become one row, left-overs that meet become one', () => {
    const row = inLine('across', [
      inLine('across', [piece(0, 0, 0, 10, 5), left(0, 5, 10, 2)]),
      left(0, 7, 10, 3),
      piece(1, 0, 10, 10, 4),
    ])
    expect(row).toEqual({
      kind: 'cuts',
      runs: 'across',
      box: box(0, 0, 10, 14),
      parts: [piece(0, 0, 0, 10, 5), left(0, 5, 10, 5), piece(1, 0, 10, 10, 4)],
    })
  })

  it('what comes free first is named first', () => {
    const inner = inLine('along', [piece(0, 0, 0, 5, 5), piece(1, 5, 0, 5, 5)])
    const row = inLine('across', [inner, piece(2, 0, 5, 10, 5)])
    expect(leaves(row).map((l) => l.kind === 'piece' && l.placement)).toEqual([2, 0, 1])
  })
})

describe('cloth bought beyond the layout', () => {
  it('lengthens the strip beside the last piece where that leaves the larger remnant', () => {
    const layout = inLine('along', [piece(0, 0, 0, 60, 100), left(60, 0, 40, 100)])
    const longer = grown(layout, 'end', 20, keepAll)
    expect(largestLeft(longer, keepAll)).toBe(40 * 120)
    expect(longer.box.length).toBe(120)
  })
  it('stays one band where that is larger', () => {
    const layout = inLine('along', [piece(0, 0, 0, 95, 10), left(95, 0, 5, 10)])
    const longer = grown(layout, 'end', 20, keepAll)
    expect(largestLeft(longer, keepAll)).toBe(100 * 20)
    expect(cutsIn(longer)).toBe(2)
  })
})

describe('the same pieces taken apart another way', () => {
  // a sheet: strip at the head, body at the foot, a band between, and a strip beside all three
  const beside = inLine('along', [
    inLine('across', [piece(0, 0, 0, 203, 12), left(0, 12, 203, 56), piece(1, 0, 68, 203, 192)]),
    left(203, 0, 27, 260),
  ])
  const between = inLine('across', [
    inLine('along', [piece(0, 0, 0, 203, 12), left(203, 0, 27, 12)]),
    left(0, 12, 230, 56),
    inLine('along', [piece(1, 0, 68, 203, 192), left(203, 68, 27, 192)]),
  ])

  it('a strip beside several lengths is shared out where that makes the largest remnant larger', () => {
    expect(tidyParts(beside, keepAll)).toEqual(between)
  })
  it('what is left beside neighbours comes off as one strip where that is larger', () => {
    const narrow = inLine('across', [
      inLine('along', [piece(0, 0, 0, 60, 50), left(60, 0, 40, 50)]),
      inLine('along', [piece(1, 0, 50, 70, 60), left(70, 50, 30, 60)]),
    ])
    expect(largestLeft(tidyParts(narrow, keepAll), keepAll)).toBe(30 * 110)
  })
  it('keeps every piece where it lies', () => {
    const places = (part: Part) => leaves(part).flatMap((l) => (l.kind === 'piece' ? [[l.placement, l.box]] : []))
    expect(places(tidyParts(beside, keepAll))).toEqual(places(between))
  })
})

describe('pieces placed freely', () => {
  it('come apart edge to edge where a line allows it', () => {
    const placed = [
      { placement: 0, box: box(0, 0, 4, 4) },
      { placement: 1, box: box(4, 0, 6, 4) },
      { placement: 2, box: box(0, 4, 10, 3) },
    ]
    const part = partsOfFree(placed, box(0, 0, 10, 10), keepAll)
    expect(leaves(part)).toHaveLength(4)
    expect(cutsIn(part)).toBe(3)
    expect(largestLeft(part, keepAll)).toBe(30)
  })

  it('round a middle, follow every piece edge once', () => {
    const placed = [
      { placement: 0, box: box(0, 0, 2, 1) },
      { placement: 1, box: box(2, 0, 1, 2) },
      { placement: 2, box: box(1, 2, 2, 1) },
      { placement: 3, box: box(0, 1, 1, 2) },
    ]
    const part = partsOfFree(placed, box(0, 0, 3, 3), keepAll)
    expect(part.kind).toBe('maze')
    expect(cutsIn(part)).toBe(4)
    expect(leaves(part).filter((l) => l.kind === 'left-over')).toEqual([left(1, 1, 1, 1)])
  })
})

describe('what is trimmed off', () => {
  it('goes with the waste beside it in one division', () => {
    // 61 × 103, 0.3 off each side and 1 off each end, one piece of 60 × 100: its four edges
    const order = orderOf(
      [rectangle('mat', 60, 100, { cloth: ['own'] })],
      [remnant('own', 61, 103, { spareEachEnd: cm(1), unusedSelvedge: cm(0.3) })],
    )
    const [cloth] = plan(order).cloths
    expect(cloth?.divisions.map((d) => [d.runs, d.at])).toEqual([
      ['across', cm(1)],
      ['across', cm(101)],
      ['along', cm(0.3)],
      ['along', cm(60.3)],
    ])
  })

  it('at the end of a length at hand takes four divisions for two pieces side by side', () => {
    const order = orderOf(
      [rectangle('mat', 60, 100, { count: 2 })],
      [bolt('cloth', [150], { have: cm(115), spareEachEnd: cm(5) })],
    )
    const [cloth] = plan(order).cloths
    expect(cloth?.divisions).toHaveLength(4)
    expect(cloth?.remnants).toMatchObject([{ x: cm(120), width: cm(30), y: cm(5), length: cm(110) }])
  })
})
