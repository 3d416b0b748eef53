import { expect, test } from 'vitest'
import { runsAlong } from '../src/must-keep.ts'

test('a strip that has a trimmed selvedge with it runs along the hem as far as the usable cloth goes, and no farther', () => {
  const usable = { x: 7, y: 0, width: 100, length: 50 }
  const strip = (x: number, width: number) => ({ x, y: 0, width, length: 10 })
  expect(runsAlong('start', usable, [strip(7, 107)])).toBe(true)
  expect(runsAlong('start', usable, [strip(0, 57), strip(57, 57)])).toBe(true)
  expect(runsAlong('start', usable, [strip(0, 106)])).toBe(false)
  expect(runsAlong('start', usable, [strip(0, 56), strip(57, 57)])).toBe(false)
})
