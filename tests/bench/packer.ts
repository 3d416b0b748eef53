/// <reference path="../../packages/solver/src/search/maxrects-packer.d.ts" />
import type { Request } from '@lengthwise/solver'
import { MaxRectsPacker, Rectangle } from 'maxrects-packer/dist/maxrects-packer.mjs'

/** The shortest strip the maximal-rectangles packer finds by itself, lengths tried one by one; pieces sorted by length, then area. */
export function packerLength({ field, demands }: Request): number {
  const sizes = demands.flatMap(({ count, postures }) => {
    const { width, length } = postures[0]!
    return Array.from({ length: count }, () => ({ width, length }))
  })
  const area = sizes.reduce((sum, { width, length }) => sum + width * length, 0)
  const longest = Math.max(...sizes.map(({ length }) => length))
  const orders = [
    sizes.slice().sort((a, b) => b.length - a.length),
    sizes.slice().sort((a, b) => b.width * b.length - a.width * a.length),
  ]
  for (let length = Math.max(longest, Math.ceil(area / field.width)); ; length++) {
    for (const order of orders) {
      for (const logic of [0, 1, 2]) {
        const options = { smart: false, pot: false, square: false, allowRotation: false, logic }
        const packer = new MaxRectsPacker(field.width, length, 0, options)
        packer.addArray(order.map((size) => new Rectangle(size.width, size.length)))
        if (packer.bins.length === 1 && packer.bins[0]!.rects.length === sizes.length) return length
      }
    }
  }
}
