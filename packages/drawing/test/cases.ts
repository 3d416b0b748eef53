import type { Result } from '@lengthwise/planner'
import type { Cut } from './hand.ts'
import { across, along, bolt, keep, laid, piece, resultOf, sheet, trim, twinRoom, waste } from './hand.ts'

/** Layouts that try the drawing: each must come out with every number and flag in its place. */
export const cases: Readonly<Record<string, () => Result>> = {
  'twin room': () => twinRoom(),
  'twin room in inches': () => twinRoom('in'),
  'twelve metres': twelveMetres,
  'strips of six centimetres': strips,
  'sixty pieces': sixty,
  'long names': longNames,
  'one-way print with a repeat': oneWay,
  'cut with shears': shears,
  'small cloth': small,
  'a cloth that is one piece': () =>
    resultOf('One piece', [
      laid(sheet('old sheet', 180, 260, 10, 2, 1), 180, 260, piece('1', 'Flat sheet', 'sheet 1')),
    ]),
}

function twelveMetres(): Result {
  const width = 240
  const rows: readonly number[] = [205, 205, 205, 205, 180, 180]
  const build = (i: number): Cut => {
    const row = rows[i]
    if (row === undefined) return trim
    const n = 2 * i + 1
    return across(
      row,
      along(120, piece(`${n}`, 'Front, left', `cover ${i + 1}`), piece(`${n + 1}`, 'Front, right', `cover ${i + 1}`)),
      build(i + 1),
    )
  }
  const cloth = bolt('linen', width)
  return resultOf('Twelve metres of linen', [
    laid(cloth, width, 1200, across(5, trim, build(0)), { bought: [width, 1200] }),
  ])
}

function strips(): Result {
  const cloth = bolt('ticking', 150)
  const row = (n: number, left: number): Cut =>
    left < 12 ? waste : along(6, piece(`${n}`, 'Tie', `cover ${n}`), row(n + 1, left - 6))
  return resultOf('Ties of six centimetres', [
    laid(
      cloth,
      150,
      100,
      across(5, trim, across(50, row(1, 60 + 12), across(40, piece('90', 'Bolster', 'bolster 1'), trim))),
      { bought: [150, 100] },
    ),
  ])
}

function sixty(): Result {
  const cloth = bolt('percale', 240)
  const cells = (n: number, left: number): Cut =>
    left === 0
      ? keep(`R${Math.ceil(n / 4)}`)
      : along(53, piece(`${n}`, 'Pillowcase, one piece', `pillowcase ${n}`), cells(n + 1, left - 1))
  const rows = (i: number): Cut => (i === 15 ? trim : across(174, cells(4 * i + 1, 4), rows(i + 1)))
  return resultOf('Sixty pillowcases', [
    laid(cloth, 240, 15 * 174 + 10, across(5, trim, rows(0)), { bought: [240, 2620] }),
  ])
}

function longNames(): Result {
  const cloth = bolt('a ticking stripe whose name goes on and on, as shops will have it, in blue', 150)
  const name = 'Panneau à rayures très étroites, côté gauche'
  const hebrew = '\u202eכיסוי מיטה\u202c with \u0007bell'
  const cut = across(
    5,
    trim,
    across(
      120,
      along(
        70,
        piece('1', name, 'for the room under the roof at the back'),
        along(60, piece('2', hebrew, 'Zoë & <Ann>'), waste),
      ),
      trim,
    ),
  )
  return resultOf(
    'Ein sehr langer Name für einen Plan, der auf keinen Fall in eine einzige Zeile passen wird, niemals',
    [laid(cloth, 150, 130, cut, { bought: [150, 130] })],
  )
}

function oneWay(): Result {
  const base = bolt('leaf print', 140)
  const cloth = { ...base, print: { ...base.print, way: 'one-way' as const, top: 'cut-end' as const } }
  const cut = across(
    5,
    trim,
    across(
      229.5,
      piece('1', 'Front, centre', 'cover 1'),
      across(
        26.5,
        waste,
        across(
          229.5,
          along(47, piece('2', 'Left side', 'cover 1'), along(47, piece('3', 'Right side', 'cover 1'), keep('R1'))),
          trim,
        ),
      ),
    ),
  )
  return resultOf('A print with a top', [laid(cloth, 140, 500, cut, { bought: [140, 500], repeat: 64 })])
}

function shears(): Result {
  const cloth = { ...bolt('velvet', 280), divideBy: 'shears' as const }
  const cut = across(
    5,
    trim,
    across(
      150,
      along(
        150,
        piece('1', 'Throw', 'throw 1'),
        across(
          60,
          along(60, piece('2', 'Cushion', 'cushion 1'), piece('3', 'Cushion', 'cushion 2'), 'shears'),
          keep('R1', 'cushion 45 × 45 cm'),
          'shears',
        ),
        'shears',
      ),
      trim,
      'shears',
    ),
    'shears',
  )
  return resultOf('Throw and cushions', [laid(cloth, 280, 170, cut, { bought: [280, 170] })])
}

function small(): Result {
  const cloth = sheet('cot sheet', 100, 140, 5, 2, 1)
  const cut = across(
    8,
    along(60, piece('1', 'Zip edge', 'cover 1'), waste, 'shears'),
    across(100, piece('2', 'Body', 'cover 1'), keep('R1')),
    'shears',
  )
  return resultOf('Small cloth', [laid(cloth, 100, 140, cut)], { order: { wash: 'none' } })
}
