import { expect, test } from 'vitest'
import { clothFigure, cuttingMap, pageToSvg, toSvg } from '../src/index.ts'
import { cases } from './cases.ts'
import { bolt, laid, piece, resultOf } from './hand.ts'

const room = cases['twin room']!()
const [stripe] = room.cloths
const SCREEN = { mmPerMetre: 50, smallestCapital: 3 } as const

test('a figure says what it shows and takes its ink and paper from the page', () => {
  const svg = toSvg(clothFigure(room, stripe!, SCREEN), { id: 'where' })
  expect(svg).toMatch(/^<svg [^>]*role="img" aria-labelledby="where-title where-desc"/)
  expect(svg).toContain(
    '<desc id="where-desc">Ticking stripe, 145.5\u00a0×\u00a0627\u00a0cm. 1 Front, centre 123\u00a0×\u00a0203.5;',
  )
  expect(svg).toContain('stroke="currentColor"')
  expect(svg).not.toMatch(/#[0-9a-f]{3,6}(?!\))\b(?!;)/i)
  expect(svg).not.toMatch(/<(script|image|a|foreignObject)\b/)
})

test('names cannot become markup, in elements, attributes or descriptions', () => {
  const nasty = `</desc><script>alert("1")</script>' onload='x`
  const cloth = laid(bolt(nasty, 150), 150, 100, piece('1', nasty, nasty))
  const result = resultOf(nasty, [cloth])
  const figure = toSvg(clothFigure(result, cloth, SCREEN), { id: nasty })
  const page = pageToSvg(cuttingMap(result, { paper: 'a4' }), 0)
  for (const svg of [figure, page]) {
    expect(svg).not.toMatch(/<script/i)
    expect(svg).not.toMatch(/['"] onload/)
    // the only elements are ours
    expect(new Set([...svg.matchAll(/<\/?([a-zA-Z]+)/g)].map((m) => m[1]))).toEqual(
      new Set(['svg', 'title', 'desc', 'path', 'text', ...(svg.includes('<circle') ? ['circle'] : [])]),
    )
  }
})

test('control characters and lone surrogates do not reach the picture', () => {
  const cloth = laid(bolt('cloth\u0000\u0007\u202e', 150), 150, 100, piece('1', 'a\ud800b\uffffc', ''))
  const svg = toSvg(clothFigure(resultOf('x', [cloth]), cloth, SCREEN))
  expect(svg.replace(/\n/g, '')).not.toMatch(/[\p{Cc}\p{Cs}\u202e\uffff]/u)
})

test('spots tell where every piece, remnant and division lies, at the scale asked for', () => {
  const figure = clothFigure(room, stripe!, SCREEN)
  for (const p of stripe!.placed) {
    const spot = figure.spots.find((each) => each.kind === 'piece' && each.name === p.label)!
    expect(spot.width).toBeCloseTo((p.width / 320_000) * 50, 6)
    expect(spot.height).toBeCloseTo((p.length / 320_000) * 50, 6)
  }
  expect(figure.spots.filter((each) => each.kind === 'division').map((each) => each.name)).toEqual(
    stripe!.divisions.map((d) => d.flag),
  )
  expect(figure.spots.filter((each) => each.kind === 'remnant').map((each) => each.name)).toEqual(['R1'])
})

test('stepping through the order marks one division as the one to do', () => {
  const white = (done: number | null) =>
    clothFigure(room, stripe!, { ...SCREEN, done }).marks.flatMap((m) =>
      m.kind === 'text' && m.ink === 'paper' ? [m.text] : [],
    )
  expect(white(null)).toEqual([])
  expect(white(0)).toEqual(['T1'])
  expect(white(3)).toEqual(['T4'])
  expect(white(stripe!.divisions.length)).toEqual([])
})

test('a small picture is turned, not mirrored: the left selvedge lies at the bottom', () => {
  const figure = clothFigure(room, stripe!, { ...SCREEN, full: false })
  expect(figure.width).toBeGreaterThan(figure.height)
  const spot = (name: string) => figure.spots.find((each) => each.name === name)!
  expect(spot('1').y).toBeGreaterThan(spot('2').y)
  expect(spot('1').x).toBeLessThan(spot('4').x)
})

test('no text is smaller than asked for', () => {
  for (const smallestCapital of [2.4, 3.5, 6])
    for (const mark of clothFigure(room, stripe!, { mmPerMetre: 60, smallestCapital }).marks)
      if (mark.kind === 'text') expect(mark.capital).toBeGreaterThanOrEqual(smallestCapital)
})

test('asking for a page that is not there is a mistake of the caller', () => {
  expect(() => pageToSvg(cuttingMap(room, { paper: 'a4' }), 99)).toThrow(/no page 99/)
})
