import type { Length } from '@lengthwise/units'
import { cm, length, percent, ZERO } from '@lengthwise/units'
import { expect, test } from 'vitest'
import type { Item, Order, Piece, SeamLine, Way } from '../src/index.ts'
import { sewUp, waysToMake } from '../src/index.ts'
import { bolt, cover, face, orderOf, sheet, tablesOf } from './orders.ts'

/* Sound ways spoiled by hand: each must be refused for its own reason. */

function firstWay(order: Order, item: Item): Way {
  const [way] = waysToMake(order, item, tablesOf(order)).ways
  expect(sewUp(order, item, way!).faults).toEqual([])
  return way!
}

const codes = (order: Order, item: Item, way: Way): ReadonlySet<string> =>
  new Set(sewUp(order, item, way).faults.map((fault) => fault.code))

const withPiece = (way: Way, name: string, change: (piece: Piece) => Partial<Piece>): Way => ({
  ...way,
  pieces: way.pieces.map((piece) => (piece.name === name ? { ...piece, ...change(piece) } : piece)),
})

const withSeam = (way: Way, pick: (seam: SeamLine) => boolean, change: Partial<SeamLine>): Way => ({
  ...way,
  seams: way.seams.map((seam) => (pick(seam) ? { ...seam, ...change } : seam)),
})

const more = (l: Length, by: number): Length => length(l + by)

const JOINED = cover(cm(225), cm(220), {
  front: face('cotton', { joined: 'centre-and-sides', lengthRuns: 'along' }),
  back: face('cotton', { joined: 'centre-and-sides', lengthRuns: 'along' }),
})
const JOINED_ORDER = orderOf([bolt('cotton', [cm(140)])], [JOINED])

const KEPT = { kind: 'kept-hems', finger: cm(2), lap: cm(0.4), stitching: ZERO } as const
const HEMMED = cover(cm(200), cm(200), { back: face('old', { zipEdge: KEPT }) })
const HEMMED_ORDER = orderOf([bolt('cotton', [cm(240)]), sheet('old', cm(230), cm(260), cm(10), cm(2.5))], [HEMMED])

const BUTTONED = cover(cm(135), cm(200), {
  opening: { kind: 'buttons', at: 'foot', depth: cm(4), turnedIn: cm(4), spacing: cm(20), fromCorner: cm(15) },
})
const BUTTONED_ORDER = orderOf([bolt('cotton', [cm(150)])], [BUTTONED])

type Spoil = (way: Way) => Way

test.each<[string, string, Order, Item, Spoil]>([
  [
    'a side half a centimetre narrower',
    'too-small',
    JOINED_ORDER,
    JOINED,
    (way) => withPiece(way, '/front/left-side', (p) => ({ cutWidth: more(p.cutWidth, -cm(0.5)) })),
  ],
  [
    'a side a centimetre wider',
    'too-large',
    JOINED_ORDER,
    JOINED,
    (way) => withPiece(way, '/front/left-side', (p) => ({ cutWidth: more(p.cutWidth, cm(1)) })),
  ],
  [
    'a size off the marking step',
    'marking-step',
    JOINED_ORDER,
    JOINED,
    (way) => withPiece(way, '/back/left-side', (p) => ({ cutWidth: more(p.cutWidth, 1) })),
  ],
  [
    'a centre that is not as wide as the cloth',
    'not-the-width',
    JOINED_ORDER,
    JOINED,
    (way) => withPiece(way, '/front/centre', (p) => ({ cutWidth: more(p.cutWidth, -1) })),
  ],
  [
    'a seam longer than its edge',
    'seam-length',
    JOINED_ORDER,
    JOINED,
    (way) => withSeam(way, (s) => s.role === 'join', { length: cm(300) }),
  ],
  [
    'two allowances that differ',
    'allowances',
    JOINED_ORDER,
    JOINED,
    (way) => withSeam(way, (s) => s.role === 'join', { allowanceA: cm(1) }),
  ],
  [
    'a seam to a piece that is not there',
    'seam-without-piece',
    JOINED_ORDER,
    JOINED,
    (way) => ({ ...way, pieces: way.pieces.filter((p) => p.name !== '/back/centre') }),
  ],
  [
    'a head seam with a piece left out',
    'edge-open',
    JOINED_ORDER,
    JOINED,
    (way) =>
      withSeam(way, (s) => s.a.piece === '/front/centre' && s.a.edge === 'head', {
        a: { piece: '/front/centre', edge: 'head', from: cm(1.5), to: cm(40) },
        b: { piece: '/back/centre', edge: 'head', from: cm(1.5), to: cm(40) },
        length: cm(38.5),
      }),
  ],
  [
    'a panel of nothing',
    'no-size',
    JOINED_ORDER,
    JOINED,
    (way) => withPiece(way, '/front/left-side', () => ({ cutWidth: ZERO })),
  ],
  [
    'a strip that is not its hem and a finger',
    'strip',
    HEMMED_ORDER,
    HEMMED,
    (way) => withPiece(way, '/back/zip-strip', (p) => ({ cutLength: more(p.cutLength, 1) })),
  ],
  [
    'hems that overlap more than asked',
    'lap',
    HEMMED_ORDER,
    HEMMED,
    (way) => withSeam(way, (s) => s.role === 'opening', { lap: cm(0.5) }),
  ],
  [
    'a fold that leaves no whole hem',
    'hem',
    BUTTONED_ORDER,
    BUTTONED,
    (way) =>
      withPiece(way, '/front', (p) => ({
        marks: p.marks.map((m) => (m.kind === 'fold' ? { ...m, y: more(m.y, 1) } : m)),
      })),
  ],
  [
    'a fold left out',
    'too-large',
    BUTTONED_ORDER,
    BUTTONED,
    (way) => withPiece(way, '/front', (p) => ({ marks: p.marks.filter((m) => m.kind !== 'fold') })),
  ],
])('%s: %s', (_name, code, order, item, spoil) => {
  expect(codes(order, item, spoil(firstWay(order, item)))).toContain(code)
})

test('a front and a back that shrink apart by more than one point', () => {
  const item = cover(cm(135), cm(200), { back: face('linen') })
  const cloths = (linen: number): Order =>
    orderOf(
      [
        bolt('cotton', [cm(160)], { shrinks: { along: percent(3), across: percent(3) } }),
        bolt('linen', [cm(160)], { shrinks: { along: percent(linen), across: percent(linen) } }),
      ],
      [item],
      { wash: 'after-sewing' },
    )
  const way = firstWay(cloths(4), item)
  expect(codes(cloths(4.1), item, way)).toContain('shrinks-apart')
  // both are cut for the cloth that shrinks more, so that their edges meet
  expect(new Set(way.pieces.map((p) => p.cutLength)).size).toBe(1)
})
