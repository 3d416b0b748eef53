import type { ClothEdges } from '@lengthwise/pieces'
import { cm } from '@lengthwise/units'
import { expect, it } from 'vitest'
import type { InHand } from '../src/divisions.ts'
import { howToDivide } from '../src/divisions.ts'

/* Common practice, no source: along a hem shears up to a finger's width (2 cm) from its stitching, through a hem shears first. */

const edges: ClothEdges = {
  head: { kind: 'hem', depth: cm(10) },
  foot: { kind: 'hem', depth: cm(3) },
  left: { kind: 'selvedge' },
  right: { kind: 'hem', depth: cm(1) },
}
const sheet: InHand = { from: 'sheet', width: cm(200), length: cm(250), edges, divideBy: 'tearing', finger: cm(2) }
const whole = { x: 0, y: 0, width: sheet.width, length: sheet.length }
const how = (runs: 'across' | 'along', at: number, hand = whole) => howToDivide(sheet, runs, cm(at), hand)

it('along a hem shears are used as far as a finger from its stitching, and no farther', () => {
  expect([9, 12, 12.5].map((at) => how('across', at))).toEqual(['shears', 'shears', 'shears-through-hem-then-tear'])
  expect([249, 245, 244.5].map((at) => how('across', at))).toEqual(['shears', 'shears', 'shears-through-hem-then-tear'])
  expect([199, 197, 196.5].map((at) => how('along', at))).toEqual(['shears', 'shears', 'shears-through-hem-then-tear'])
  // the far hem is far from the hand, yet the cloth there is as near to its stitching
  expect(how('across', 12, { ...whole, width: cm(100) })).toBe('shears')
})

it('a selvedge is no hem', () => expect(how('along', 1)).toBe('shears-through-hem-then-tear'))

it('what crosses no hem is torn', () => {
  const inside = { x: 0, y: cm(50), width: cm(150), length: cm(100) }
  expect(how('across', 80, inside)).toBe('tear')
  expect(how('along', 80, inside)).toBe('tear')
})

it('where no more than a finger of cloth is crossed beside the hem, shears do it all', () => {
  const beside = (width: number) => ({ x: cm(200 - width), y: cm(50), width: cm(width), length: cm(100) })
  expect(how('across', 80, beside(3))).toBe('shears')
  expect(how('across', 80, beside(3.5))).toBe('shears-through-hem-then-tear')
})
