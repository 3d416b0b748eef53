import { describe, expect, test } from 'vitest'
import { cuttingMap, slips } from '../src/index.ts'
import { cases } from './cases.ts'
import { clashes, missingLabels, outsiders, smallestCapital, struckThrough } from './faults.ts'

for (const [name, result] of Object.entries(cases))
  describe(name, () => {
    for (const paper of ['a4', 'letter'] as const)
      for (const large of [false, true]) {
        const how = `${paper}${large ? ', large lettering' : ''}`
        const scene = cuttingMap(result(), { paper, large })
        test(`${how}: no text touches another`, () => {
          expect(clashes(scene)).toEqual([])
        })
        test(`${how}: nothing lies outside the frame`, () => {
          expect(outsiders(scene)).toEqual([])
        })
        test(`${how}: no text lies over a line of a map`, () => {
          expect(struckThrough(scene)).toEqual([])
        })
        test(`${how}: every number and every flag stands on a map page`, () => {
          expect(missingLabels(result(), scene)).toEqual([])
        })
      }
    test('in millimetres and in inches everything has its place too', () => {
      for (const unit of ['mm', 'in'] as const)
        for (const large of [false, true]) {
          const scene = cuttingMap(result(), { paper: 'letter', large, unit })
          const faults = [...clashes(scene), ...outsiders(scene), ...struckThrough(scene)]
          expect([...faults, ...missingLabels(result(), scene)], `${unit}, large ${large}`).toEqual([])
        }
    })
    test('slips: no text touches another or leaves its page', () => {
      for (const large of [false, true]) {
        const scene = slips(result(), { paper: 'letter', large })
        expect([...clashes(scene), ...outsiders(scene)]).toEqual([])
      }
    })
    test('the smallest lettering is 3.5 mm', () => {
      expect(smallestCapital(cuttingMap(result(), { paper: 'a4' }))).toBeGreaterThanOrEqual(3.5)
    })
  })
