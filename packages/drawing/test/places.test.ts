import fc from 'fast-check'
import { expect, test } from 'vitest'
import type { Box, Segment } from '../src/box.ts'
import { box, crosses, meet, outside } from '../src/box.ts'
import { Places } from '../src/cloth/places.ts'

// some below zero, some wider than many cells of 20 mm
const places = fc.float({ min: -120, max: 400, noNaN: true })
const lengths = fc.float({ min: 0, max: 150, noNaN: true })
const boxes = fc.tuple(places, places, lengths, lengths).map(([x, y, w, h]) => box(x, y, w, h))
const segments = fc.tuple(places, places, places, places).map((all): Segment => all)

const filled = (all: readonly Box[]): Places => {
  const grid = new Places(1)
  grid.add(all)
  return grid
}

test('what is near is what meets, each box once, as when every box is looked at', () => {
  fc.assert(
    fc.property(fc.array(boxes, { maxLength: 40 }), boxes, (all, area) => {
      const grid = filled(all)
      const near = grid.near(area)
      const wanted = all.filter((each) => meet(each, area))
      expect(new Set(near)).toEqual(new Set(wanted))
      expect(near.length).toBe(wanted.length)
      expect(grid.meets(area)).toBe(wanted.length > 0)
    }),
  )
})

test('a line is crossed, and cut, by the same boxes as when every box is looked at', () => {
  fc.assert(
    fc.property(fc.array(boxes, { maxLength: 40 }), segments, (all, segment) => {
      const grid = filled(all)
      expect(grid.crossedBy(segment)).toBe(all.some((each) => crosses(segment, each)))
      expect(grid.outside(segment)).toEqual(outside(segment, all))
    }),
  )
})
