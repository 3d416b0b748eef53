import { expect, test } from 'vitest'
import type { Demand } from '../src/index.ts'
import { check, END, LEFT, lay, layForWidths, narrowestFor, RIGHT, START, whatFits } from '../src/index.ts'
import { open, piece, randomOrder, sliced } from './orders.ts'

test('what was cut from a rectangle goes back into it, proved', () => {
  for (let seed = 1; seed <= 30; seed++) {
    const request = sliced(seed, 60, 80, 12)
    const answer = lay(request, { effort: 2_000_000 })
    expect([answer.status, answer.length], `seed ${seed}`).toEqual(['proved', 80])
  }
})

test('mirrored, shuffled and scaled orders have the same length', () => {
  const mirrored = (flush: number) => (flush & ~3) | (flush & LEFT ? RIGHT : 0) | (flush & RIGHT ? LEFT : 0)
  for (let seed = 1; seed <= 40; seed++) {
    const request = randomOrder(seed, {
      pieces: 8,
      width: 12,
      flush: seed % 2 === 0,
      turning: seed % 3 === 0,
      ties: seed % 5 === 0,
    })
    const control = { effort: 3_000_000 }
    const { status, length } = lay(request, control)
    expect(status, `seed ${seed}`).toBe('proved')
    const change = (posture: (p: Demand['postures'][number]) => Demand['postures'][number]) =>
      request.demands.map((d) => ({ ...d, postures: d.postures.map(posture) }))
    const mirror = { ...request, demands: change((p) => ({ ...p, flush: mirrored(p.flush) })) }
    const shuffle = { ...request, demands: [...request.demands].reverse() }
    const times = 1600
    const scale = {
      ...request,
      field: { ...request.field, width: 12 * times },
      demands: change((p) => ({ ...p, width: p.width * times, length: p.length * times })).map((d) => ({
        ...d,
        tie: d.tie && { ...d.tie, repeat: d.tie.repeat * times, offset: d.tie.offset * times },
      })),
    }
    expect(lay(mirror, control).length, `seed ${seed} mirrored`).toBe(length)
    expect(lay(shuffle, control).length, `seed ${seed} shuffled`).toBe(length)
    expect(lay(scale, control).length, `seed ${seed} scaled`).toBe(length! * times)
  }
})

test('the worked cover of 225 x 220 with a half-drop repeat takes 939 cm, proved', () => {
  // common practice, worked by hand: cloth 140, repeat 64, four lengths of 229.5, in half centimetres
  const face = (group: string): Demand[] => {
    const tie = (offset: number) => ({ group, axis: 'along' as const, repeat: 128, offset, absolute: false })
    return [
      { ...piece(`${group}-centre`, 1, 280, 459, LEFT | RIGHT), tie: tie(0) },
      { ...piece(`${group}-left`, 1, 94, 459), tie: tie(64) },
      { ...piece(`${group}-right`, 1, 94, 459), tie: tie(64) },
    ]
  }
  const request = open(280, [...face('front'), ...face('back')])
  const answer = lay(request, { effort: 1_000_000 })
  expect([answer.status, answer.length]).toEqual(['proved', 1878])
  expect(check(request, answer)).toEqual([])
  // one grid for all panels: the phase is the field's own
  const grid = { ...request, demands: request.demands.map((d) => ({ ...d, tie: { ...d.tie!, absolute: true } })) }
  expect(lay(grid, { effort: 1_000_000 }).length).toBe(2059)
  // no match at all
  const plain = { ...request, demands: request.demands.map((d) => ({ ...d, tie: null })) }
  expect(lay(plain, { effort: 1_000_000 }).length).toBe(1836)
})

test('a tied piece beside an untied one may lie farther on', () => {
  // three of full width keep phase with a small one that shares its length with a longer, untied strip
  const tie = { group: 'face', axis: 'along' as const, repeat: 4, offset: 2, absolute: false }
  const request = open(7, [
    piece('strip', 1, 1, 5, RIGHT),
    { ...piece('wide', 3, 7, 5, LEFT | RIGHT), tie },
    { ...piece('small', 1, 4, 1), tie },
  ])
  const answer = lay(request, { effort: 1_000_000 })
  expect([answer.status, answer.length]).toEqual(['proved', 25])
})

test('widths side by side answer as each width alone', () => {
  const request = open(30, [piece('a', 3, 9, 14), piece('b', 4, 7, 5), piece('c', 2, 12, 8, LEFT)])
  const widths = [12, 15, 18, 21, 30]
  for (const { width, answer } of layForWidths(request, widths, { effort: 500_000 })) {
    const field = { ...request.field, width }
    expect(check({ ...request, field }, answer)).toEqual([])
    expect(answer.length).toBe(lay({ ...request, field }, { effort: 500_000 }).length)
  }
})

test('pieces that touch the right side go with it to wider cloth; no wider width is longer, however little the effort', () => {
  for (let seed = 1; seed <= 14; seed++) {
    const request = randomOrder(seed, { pieces: 12, width: 9, turning: seed % 2 === 0 })
    const demands = request.demands.map((d, i) =>
      i % 2 ? d : { ...d, postures: d.postures.map((p) => ({ ...p, flush: RIGHT })) },
    )
    const wide = { ...request, demands, field: { ...request.field, width: 16 } }
    for (const effort of [100, 500_000]) {
      let longest = 0
      for (const { width, answer } of layForWidths(wide, [16, 14, 13, 10, 9, 7, 6], { effort })) {
        const alone = { ...wide, field: { ...wide.field, width } }
        expect(check(alone, answer), `seed ${seed} width ${width}`).toEqual([])
        expect(answer.length, `seed ${seed} width ${width}`).toBeGreaterThanOrEqual(longest)
        longest = answer.length!
        if (answer.status === 'proved') expect(lay(alone, { effort: 500_000 }).length).toBe(answer.length)
      }
    }
  }
})

test('widths of orders under all rules are laid as each alone', () => {
  const rules = [{ flush: true }, { zones: true, turning: true }, { finite: true, zones: true }, { ties: true }, {}]
  for (let seed = 1; seed <= 25; seed++) {
    const order = randomOrder(seed, { pieces: 4 + (seed % 4), width: 10, ...rules[seed % rules.length] })
    for (const { width, answer } of layForWidths(order, [10, 14, 9, 8], { effort: 200_000, tidy: false })) {
      const request = { ...order, field: { ...order.field, width } }
      const alone = lay(request, { effort: 200_000, tidy: false })
      expect(check(request, answer), `seed ${seed} width ${width}`).toEqual([])
      expect([answer.status, answer.length], `seed ${seed} width ${width}`).toEqual([alone.status, alone.length])
    }
  }
})

test('a field whose end zone nothing may enter is known to be too short', () => {
  const request = open(5, [piece('a', 2, 2, 6)], 12)
  const zoned = { ...request, field: { ...request.field, width: 3, zones: { left: 0, right: 0, start: 0, end: 1 } } }
  expect(lay(zoned, { effort: 100_000 }).status).toBe('infeasible')
  // two of full width, 5 and 4 long: they would end in the zone, so one of them must go on to the end
  const ending = (id: string, length: number): Demand => ({
    ...piece(id, 1, 6, length),
    postures: [END, 0].map((flush) => ({ width: 6, length, flush })),
  })
  const kept = open(6, [ending('a', 5), ending('b', 4)], 10)
  const answer = lay({ ...kept, field: { ...kept.field, zones: { ...zoned.field.zones, end: 2 } } }, { effort: 50_000 })
  expect([answer.status, answer.length]).toEqual(['proved', 10])
})

test('the narrowest width that will do: one step less is longer', () => {
  const request = open(40, [piece('a', 4, 9, 10), piece('b', 2, 7, 10)])
  const length = lay({ ...request, field: { ...request.field, width: 25 } }, { effort: 500_000 }).length!
  const narrowest = narrowestFor(request, length, 1, { effort: 500_000 })!
  const at = (width: number) => lay({ ...request, field: { ...request.field, width } }, { effort: 500_000 }).length!
  expect(at(narrowest)).toBeLessThanOrEqual(length)
  expect(at(narrowest - 1)).toBeGreaterThan(length)
})

test('the narrowest width of pieces that touch both sides is found at their own widths', () => {
  const both = LEFT | RIGHT
  // only as wide as the cloth: no other width takes it
  expect(narrowestFor(open(12, [piece('panel', 1, 12, 5, both), piece('a', 2, 6, 5)]), 10, 1, { effort: 50_000 })).toBe(
    12,
  )
  // across the whole of a cloth 6 wide, or upright on one of 9 or more; nothing between serves
  const postures = [
    { width: 6, length: 4, flush: both },
    { width: 9, length: 4, flush: 0 },
  ]
  const either = open(12, [{ ...piece('either', 2, 6, 4), postures }])
  const at = (width: number) => lay({ ...either, field: { ...either.field, width } }, { effort: 50_000 }).length
  expect([12, 9, 8, 7, 6, 5].map(at)).toEqual([8, 8, null, null, 8, null])
  expect(narrowestFor(either, 8, 1, { effort: 50_000 })).toBe(6)
  expect(narrowestFor(either, 8, 4, { effort: 50_000 })).toBe(12)
  expect(narrowestFor(either, 7, 1, { effort: 50_000 })).toBeNull()
})

test('what fits a remnant: every list of counts that does lies below one that is named', () => {
  const request = open(12, [piece('a', 3, 5, 7), piece('b', 3, 4, 6)], 13)
  const fits = whatFits(request, { effort: 1_000_000 })
  expect(fits.complete).toBe(true)
  for (let a = 0; a <= 3; a++)
    for (let b = 0; b <= 3; b++) {
      const counts = [a, b]
      const alone = { ...request, demands: request.demands.map((d, i) => ({ ...d, count: counts[i]! })) }
      const does = lay(alone, { effort: 1_000_000 }).length !== null
      expect(
        fits.maximal.some((m) => counts.every((n, i) => n <= m.counts[i]!)),
        counts.join(),
      ).toBe(does)
    }
})

test('what is flush with a side needs no more than its own size there, however deep the zones', () => {
  const zones = { left: 2, right: 2, start: 2, end: 0 }
  const zoned = (width: number, ...demands: Demand[]) => {
    const request = open(width, demands)
    return { ...request, field: { ...request.field, zones } }
  }
  // two of width 1 in zones that take up all the width lie side by side; one flush with the start ends where it is long
  const narrow = zoned(4, piece('left', 1, 1, 3, LEFT | START), piece('right', 1, 1, 3, RIGHT | START))
  const alone = zoned(5, piece('start', 1, 1, 5, START))
  for (const [request, length] of [
    [narrow, 3],
    [alone, 5],
  ] as const) {
    const answer = lay(request, { effort: 10_000 })
    expect(check(request, answer)).toEqual([])
    expect([answer.status, answer.length]).toEqual(['proved', length])
  }
})

test('what cannot be placed is named with the size it lacks', () => {
  const answer = lay(open(10, [piece('wide', 1, 12, 5), piece('fits', 1, 5, 5)]), { effort: 1000 })
  expect(answer.status).toBe('infeasible')
  expect(answer.missing).toEqual([{ demand: 0, direction: 'across', short: 2 }])
  const long = lay(open(10, [piece('long', 1, 5, 12)], 9), { effort: 1000 })
  expect(long.missing).toEqual([{ demand: 0, direction: 'along', short: 3 }])
})

test('a flaw where the flawless layout lies moves it', () => {
  const request = open(10, [piece('a', 2, 5, 6)], 8)
  expect(lay(request, { effort: 10_000 }).length).toBe(6)
  const flawed = { ...request, field: { ...request.field, flaws: [{ x: 1, y: 0, width: 1, length: 1 }] } }
  const answer = lay(flawed, { effort: 10_000 })
  expect(check(flawed, answer)).toEqual([])
  expect(answer.length).toBe(7)
})

test('a stop ends the run with the best so far, and the same request gives the same answer', () => {
  const request = sliced(9, 200, 300, 40)
  let polls = 0
  const stopped = lay(request, { effort: 1_000_000_000, stop: () => ++polls > 20 })
  expect(stopped.status).toBe('stopped')
  expect(check(request, stopped)).toEqual([])
  expect(lay(request, { effort: 100_000 })).toEqual(lay(request, { effort: 100_000 }))
})
