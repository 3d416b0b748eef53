import { cm, inches } from '@lengthwise/units'
import { describe, expect, test } from 'vitest'
import type { BedSkirt } from '../src/index.ts'
import { waysToMake } from '../src/index.ts'
import { checkBedSkirt } from '../src/items/bed-skirt.ts'
import { asItLies, bedSkirt, bolt, hem, orderOf, PLAIN } from './item-orders.ts'

function waysOf(item: BedSkirt, cloth = bolt('cotton', cm(150)), parts: Parameters<typeof orderOf>[2] = {}) {
  const order = orderOf([item], [cloth], parts)
  return waysToMake(order, item, new Map([[cloth.name, asItLies(cloth)]])).ways
}
const panels = (way: ReturnType<typeof waysOf>[number]) => way.pieces.filter((piece) => piece.name.startsWith('/skirt'))

describe('a bed skirt', () => {
  const published = bedSkirt({
    base: { width: inches(60), length: inches(80) },
    drop: inches(20),
    fullnessPercent: 300,
    hem: { depth: inches(2), turns: 1, turnedIn: inches(0.5) },
    seam: { kind: 'plain', allowance: inches(0.5) },
  })
  const cloth = bolt('cotton', inches(54))
  const inInches = { measureIn: 'in', markTo: inches(0.125) } as const

  // 2 L + W = 220, three times 660; twice the width and once the length, as one page has it, would be 600
  test('60 × 80, three times full, drop 20, hem and seam 3, cloth 54 in: 13 panels of 23 in (oocities bed skirts)', () => {
    const across = waysOf(published, cloth, inInches).filter((way) => panels(way)[0]?.lengthRuns !== 'across')
    const fewest = Math.min(...across.map((way) => panels(way).length))
    expect(fewest).toBe(13)
    const [panel] = panels(across.find((way) => panels(way).length === 13)!)
    expect(panel?.cutLength).toBe(inches(23))
    expect(panel!.cutWidth).toBeLessThanOrEqual(inches(54))
    // joined, the panels come to the full run and the two ends turned in
    expect(13 * panel!.cutWidth - 12 * inches(1)).toBeGreaterThanOrEqual(inches(661))
  })

  test('the pleated one adds the cloth of one pleat at each foot corner (All People Quilt sweet retreat)', () => {
    const item = bedSkirt({ style: 'corner-pleats', pleat: cm(30), base: { width: cm(150), length: cm(200) } })
    const long = waysOf(item).find((way) => panels(way).length === 1)!
    // 2 × 200 + 150 + 2 × 30, and 1.5 turned in at each end
    expect(panels(long)[0]?.cutWidth).toBe(cm(613))
  })

  test('the deck is the base and its seams', () => {
    const deck = waysOf(bedSkirt(), bolt('cotton', cm(280)))[0]!.pieces.find((piece) => piece.name === '/deck')
    expect([deck?.cutWidth, deck?.cutLength]).toEqual([cm(153), cm(203)])
  })

  test('panels of a print with a top hang with the top at the deck, and match where asked', () => {
    const print = { ...PLAIN, way: 'one-way', top: 'cut-end', repeat: cm(64), match: 'half-drop' } as const
    const [way] = waysOf(bedSkirt(), bolt('cotton', cm(280), { print }))
    expect(panels(way!).map((panel) => panel.lengthRuns)).toEqual(panels(way!).map(() => 'along'))
    expect(panels(way!).map((panel) => panel.tie?.offset)).toEqual(
      panels(way!).map((_, i) => (i % 2 === 0 ? 0 : cm(32))),
    )
  })

  test('a row of gathers is drawn up to both sides and the foot', () => {
    const [way] = waysOf(bedSkirt())
    const texts = way!.sewing.map((step) => step.text)
    expect(texts.findIndex((text) => text.startsWith('Hem'))).toBeLessThan(
      texts.findIndex((text) => text.startsWith('Skirt to')),
    )
    expect(way!.sewing.find((step) => step.text.startsWith('Skirt to'))?.seamLength).toBe(cm(550))
  })

  test.each([
    ['fullness', bedSkirt({ fullnessPercent: 90 })],
    ['no-drop', bedSkirt({ drop: cm(0) })],
    ['pleat', bedSkirt({ style: 'corner-pleats', pleat: cm(0) })],
  ])('%s is a problem with a next step', (code, item) => {
    const problems = checkBedSkirt(orderOf([item], [cloth]), item)
    expect(problems.map((problem) => problem.code)).toEqual([code])
    expect(problems[0]?.hint).not.toBe('')
  })

  test('a sound one has none', () => {
    expect(checkBedSkirt(orderOf([bedSkirt()], [cloth]), bedSkirt({ hem: hem(3) }))).toEqual([])
  })
})

test('panels of a two-way print that matches are joined along the cloth only, all the same way up', () => {
  const print = { ...PLAIN, way: 'two-way', repeat: cm(40), match: 'straight' } as const
  const joined = waysOf(bedSkirt(), bolt('cotton', cm(280), { print })).filter((way) => panels(way).length > 1)
  expect(joined.length).toBeGreaterThan(0)
  for (const way of joined) {
    expect(panels(way).every((panel) => panel.lengthRuns === 'along' && panel.tie?.offset === 0)).toBe(true)
    expect(new Set(panels(way).map((panel) => panel.headToward)).size).toBe(1)
  }
})
