import type {
  Box,
  CutCloth,
  Division,
  MeasuredFrom,
  Outcome,
  Placed,
  PlacedEdge,
  Remnant,
  Result,
  WidthRow,
} from '@lengthwise/planner'
import type { Length, Money } from '@lengthwise/units'
import { costOf, length } from '@lengthwise/units'

type Cloth = CutCloth['cloth']
type Edge = CutCloth['edges']['left']

/** A layout as one would write it at the table: cuts with their distance from the start or left of what is in hand. */
export type Cut =
  | {
      readonly piece: string
      readonly words: string
      readonly whose: string
      readonly marks?: Placed['marks']
      readonly top?: Placed['top']
    }
  | { readonly remnant: string; readonly wouldMake?: readonly string[] }
  | { readonly rest: 'waste' | 'trim' }
  | {
      readonly runs: 'across' | 'along'
      readonly at: number
      readonly how?: Division['how']
      /** measured from the far edge instead */
      readonly fromFar?: boolean
      readonly first: Cut
      readonly second: Cut
    }

export const piece = (label: string, words: string, whose = ''): Cut => ({ piece: label, words, whose })
export const keep = (remnant: string, ...wouldMake: string[]): Cut => ({ remnant, wouldMake })
export const waste: Cut = { rest: 'waste' }
export const trim: Cut = { rest: 'trim' }
export const across = (at: number, first: Cut, second: Cut, how: Division['how'] = 'tear'): Cut => ({
  runs: 'across',
  at,
  first,
  second,
  how,
})
export const along = (at: number, first: Cut, second: Cut, how: Division['how'] = 'tear'): Cut => ({
  runs: 'along',
  at,
  first,
  second,
  how,
})

export const cmOf = (value: number): Length => length(Math.round(value * 3200))

export const RAW: Edge = { kind: 'raw' }
export const SELVEDGE: Edge = { kind: 'selvedge' }
export const hem = (depth: number): Edge => ({ kind: 'hem', depth: cmOf(depth) })

export function bolt(name: string, width: number, changes: Partial<Cloth> = {}): Cloth {
  return {
    name,
    from: 'bolt',
    widths: [{ width: cmOf(width), price: { coins: 1450, per: 'm' } }],
    price: null,
    soldBy: cmOf(10),
    smallestSale: cmOf(0),
    have: cmOf(0),
    sold: true,
    size: null,
    count: 1,
    edges: { head: RAW, foot: RAW, left: SELVEDGE, right: SELVEDGE },
    mustKeep: [],
    shrinks: { along: 0 as Cloth['shrinks']['along'], across: 0 as Cloth['shrinks']['across'] },
    unusedSelvedge: cmOf(0),
    spareEachEnd: cmOf(5),
    flaws: [],
    print: {
      way: 'two-way',
      top: 'cut-end',
      repeat: cmOf(0),
      acrossRepeat: cmOf(0),
      match: 'none',
      repeatMeasured: 'on-the-table',
      matchLine: cmOf(0),
      motif: null,
    },
    divideBy: 'tearing',
    lostPerTear: cmOf(0),
    ...changes,
  }
}

export function sheet(name: string, width: number, long: number, head: number, foot: number, count: number): Cloth {
  return {
    ...bolt(name, width),
    from: 'sheet',
    widths: [],
    size: { width: cmOf(width), length: cmOf(long) },
    count,
    edges: { head: hem(head), foot: hem(foot), left: SELVEDGE, right: SELVEDGE },
    spareEachEnd: cmOf(0),
  }
}

/** Works out divisions, pieces, remnants and the rest from the cuts. Lengths in centimetres. */
export function laid(
  cloth: Cloth,
  width: number,
  long: number,
  cut: Cut,
  options: {
    piece?: number
    cutLike?: number
    bought?: readonly [width: number, length: number]
    remnantsFrom?: number
    repeat?: number
  } = {},
): CutCloth {
  const edges = { left: cloth.edges.left, right: cloth.edges.right, start: cloth.edges.head, end: cloth.edges.foot }
  const placed: Placed[] = []
  const remnants: Remnant[] = []
  const over: Record<'waste' | 'trim', Box[]> = { waste: [], trim: [] }
  const divisions: Division[] = []
  const whole: Box = { x: cmOf(0), y: cmOf(0), width: cmOf(width), length: cmOf(long) }
  const isSheet = cloth.from !== 'bolt'
  const nameOf = (side: 'left' | 'right' | 'start' | 'end'): MeasuredFrom => {
    const kind = edges[side].kind
    const end = side === 'start' ? 'head' : 'foot'
    if (side === 'left' || side === 'right')
      return {
        kind: 'cloth-edge',
        edge: `${side}-${kind === 'selvedge' ? 'selvedge' : kind === 'hem' ? 'hem' : 'edge'}`,
      }
    if (!isSheet) return { kind: 'cloth-edge', edge: side === 'start' ? 'cut-end' : 'bolt-end' }
    return { kind: 'cloth-edge', edge: `${end}-${kind === 'hem' ? 'hem' : 'end'}` }
  }
  const from = { left: nameOf('left'), right: nameOf('right'), start: nameOf('start'), end: nameOf('end') }

  divide(cut, whole, from)
  const pieceArea = placed.reduce((sum, p) => sum + p.width * p.length, 0)
  const keepArea = remnants.reduce((sum, r) => sum + r.width * r.length, 0)
  const area = whole.width * whole.length
  const lowest = Math.max(...placed.map((p) => p.y + p.length))
  const laidLength = length(isSheet ? lowest : lowest - cloth.spareEachEnd)
  const buy = options.bought
    ? {
        width: cmOf(options.bought[0]),
        length: cmOf(options.bought[1]),
        cost: costOf({ coins: 1450, per: 'm' }, cmOf(options.bought[1])) as Money | null,
      }
    : null
  return {
    cloth,
    name: cloth.name,
    from: cloth.from,
    piece: options.piece ?? 1,
    cutLike: options.cutLike ?? options.piece ?? 1,
    width: whole.width,
    length: whole.length,
    usable: { ...whole, y: cloth.spareEachEnd, length: length(whole.length - 2 * cloth.spareEachEnd) },
    edges,
    buy,
    proof: { status: 'proved', length: laidLength, bound: laidLength, by: 'exhausted', certificate: null },
    notUsed: {
      percent: (100 * (area - pieceArea)) / area,
      area: area - pieceArea,
      keepPercent: (100 * keepArea) / area,
    },
    placed,
    divisions,
    trims: over.trim,
    remnants,
    waste: over.waste,
    repeat: cmOf(options.repeat ?? 0),
  }

  function divide(what: Cut, hand: Box, edgesOfHand: Record<'left' | 'right' | 'start' | 'end', MeasuredFrom>): void {
    if ('piece' in what) {
      placed.push({
        ...hand,
        piece: what.words.toLowerCase().replace(/\W+/g, '-') + what.piece,
        label: what.piece,
        words: what.words,
        whose: what.whose,
        turned: false,
        top: what.top ?? 'start',
        phase: options.repeat ? ((hand.y % cmOf(options.repeat)) as Length) : null,
        edges: { left: edgeOf('left'), right: edgeOf('right'), start: edgeOf('start'), end: edgeOf('end') },
        marks: what.marks ?? [],
      })
      return
    }
    if ('remnant' in what) {
      remnants.push({ ...hand, name: what.remnant, wouldMake: what.wouldMake ?? [] })
      return
    }
    if ('rest' in what) {
      over[what.rest].push(hand)
      return
    }
    const at = cmOf(what.at)
    const isAcross = what.runs === 'across'
    const how = what.how ?? 'tear'
    const letter = how === 'tear' || how === 'thread' ? 'T' : 'C'
    const flag = `${letter}${divisions.length + 1}`
    const first: Box = isAcross ? { ...hand, length: at } : { ...hand, width: at }
    const second: Box = isAcross
      ? { ...hand, y: length(hand.y + at), length: length(hand.length - at) }
      : { ...hand, x: length(hand.x + at), width: length(hand.width - at) }
    const far = what.fromFar === true
    const start = isAcross ? hand.y : hand.x
    divisions.push({
      n: divisions.length + 1,
      flag,
      how,
      runs: what.runs,
      at: length(start + at),
      from: isAcross ? hand.x : hand.y,
      to: length(isAcross ? hand.x + hand.width : hand.y + hand.length),
      hand,
      measure: far
        ? {
            distance: length((isAcross ? hand.length : hand.width) - at),
            from: edgesOfHand[isAcross ? 'end' : 'right'],
          }
        : { distance: at, from: edgesOfHand[isAcross ? 'start' : 'left'] },
      gives: [outcome(what.first, first), outcome(what.second, second)],
    })
    const here: MeasuredFrom = { kind: 'division', flag }
    divide(what.first, first, { ...edgesOfHand, [isAcross ? 'end' : 'right']: here })
    divide(what.second, second, { ...edgesOfHand, [isAcross ? 'start' : 'left']: here })
  }

  function edgeOf(side: 'left' | 'right' | 'start' | 'end'): PlacedEdge {
    const edge = edges[side]
    return edge.kind === 'selvedge'
      ? { kind: 'selvedge' }
      : edge.kind === 'hem'
        ? { kind: 'kept-hem', depth: edge.depth }
        : { kind: 'cut' }
  }
}

function outcome(cut: Cut, box: Box): Outcome {
  if ('piece' in cut) return { kind: 'piece', label: cut.piece, box }
  if ('remnant' in cut) return { kind: 'remnant', name: cut.remnant, box }
  if ('rest' in cut) return { kind: cut.rest, box }
  const labels: string[] = []
  const remnants: string[] = []
  const walk = (each: Cut): void => {
    if ('piece' in each) labels.push(each.piece)
    else if ('remnant' in each) remnants.push(each.remnant)
    else if ('runs' in each) {
      walk(each.first)
      walk(each.second)
    }
  }
  walk(cut)
  return { kind: 'part', labels, remnants, box }
}

/** A result round cloths that were laid by hand. */
export function resultOf(
  title: string,
  cloths: readonly CutCloth[],
  changes: {
    unit?: 'cm' | 'mm' | 'in'
    widths?: readonly WidthRow[]
    order?: Partial<Result['order']>
    buy?: Result['buy']
    sewing?: Result['sewing']
  } = {},
): Result {
  return {
    order: {
      title,
      date: '2026-05-02',
      measureIn: changes.unit ?? 'cm',
      currency: 'EUR',
      wash: 'before-cutting',
      seam: { kind: 'plain', allowance: cmOf(1.5) },
      markTo: cmOf(0.5),
      worthKeeping: { width: cmOf(20), length: cmOf(25) },
      items: [],
      cloths: cloths.map((c) => c.cloth),
      ...changes.order,
    },
    status: 'laid',
    timed: false,
    proof: { status: 'proved', objective: 'cost', value: 0n, bound: 0n, by: 'exhausted' },
    cloths,
    widths: changes.widths ?? [],
    missing: [],
    buy: changes.buy ?? [],
    pieces: cloths.flatMap((c) =>
      c.placed.map((p) => ({
        piece: p.piece,
        item: p.whose.replace(/ /g, '-') || 'tray-cloth-1',
        label: p.label,
        words: p.words,
        cloth: c.name,
        cutWidth: p.width,
        cutLength: p.length,
        marks: [],
      })),
    ),
    seams: [],
    finished: [],
    sewing: changes.sewing ?? [],
    cautions: [],
    goodToKnow: [],
  }
}

/** The twin room: two covers with backs from old sheets, two pillowcases, a tray cloth. */
export function twinRoom(unit: 'cm' | 'mm' | 'in' = 'cm'): Result {
  const stripe = bolt('ticking stripe', 150, {
    shrinks: { along: 50_000 as Cloth['shrinks']['along'], across: 30_000 as Cloth['shrinks']['across'] },
  })
  const cover = (n: 1 | 2, a: string, b: string): Cut =>
    along(123, piece(a, 'Front, centre', `cover ${n}`), along(18, piece(b, 'Right side', `cover ${n}`), waste))
  const third = along(
    18,
    piece('3', 'Left side', 'cover 1'),
    along(
      18,
      piece('6', 'Left side', 'cover 2'),
      across(
        174,
        along(
          53,
          piece('7', 'Pillowcase, one piece', 'pillowcase 1'),
          along(53, piece('8', 'Pillowcase, one piece', 'pillowcase 2'), waste),
        ),
        along(44, piece('9', 'Tray cloth'), keep('R1', 'tray cloth 40 × 25.5 cm')),
      ),
    ),
  )
  const map = laid(
    stripe,
    145.5,
    627,
    across(5, trim, across(203.5, cover(1, '1', '2'), across(203.5, cover(2, '4', '5'), across(203.5, third, trim)))),
    { bought: [150, 660] },
  )
  const old = sheet('old flat sheet', 180, 260, 10, 2.5, 2)
  const sheetCut = (strip: string, body: string, n: number, r: number): Cut =>
    across(
      12,
      along(153, piece(strip, 'Back, zip edge', `cover ${n}`), waste, 'shears'),
      across(
        56,
        keep(`R${r}`, 'pillowcase 50 × 75 cm'),
        along(153, piece(body, 'Back, body', `cover ${n}`), keep(`R${r + 1}`), 'shears-through-hem-then-tear'),
      ),
      'shears',
    )
  const sheets = [1, 2].map((n) =>
    laid(old, 180, 260, sheetCut(n === 1 ? '10' : '12', n === 1 ? '11' : '13', n, 2 * n), { piece: n, cutLike: 1 }),
  )
  const row = (width: number, long: number, cost: number, chosen: boolean, layout: CutCloth | null): WidthRow => ({
    cloth: 'ticking stripe',
    width: cmOf(width),
    possible: true,
    buyLength: cmOf(long),
    area: cmOf(width) * cmOf(long),
    cost: (BigInt(cost) * 365_760_000n) as Money,
    notUsedPercent: chosen ? 7.4 : 9.2,
    keepPercent: chosen ? 2.1 : 1.2,
    seams: 4,
    status: 'proved',
    chosen,
    why: null,
    enoughFrom: chosen ? cmOf(146.5) : cmOf(width),
    layout,
  })
  return resultOf('Hillside guest house, twin room', [map, ...sheets], {
    unit,
    widths: [
      row(150, 660, 9570, true, map),
      row(240, 440, 10780, false, null),
      {
        ...row(90, 440, 0, false, null),
        possible: false,
        buyLength: null,
        area: null,
        cost: null,
        notUsedPercent: null,
        keepPercent: null,
        seams: null,
        why: 'too narrow: Front, centre needs 123 cm across',
        enoughFrom: null,
      },
    ],
    buy: [
      { what: 'cloth', name: 'ticking stripe', quantity: cmOf(660), unit: 'mm', cost: map.buy!.cost },
      { what: 'zip', name: 'zip of 140 cm', quantity: 2, unit: 'piece', cost: null },
      { what: 'thread', name: 'thread to match', quantity: cmOf(30_000), unit: 'mm', cost: null },
    ],
    sewing: [
      {
        step: 1,
        item: 'cover-1',
        text: 'Sew 2 and 3 to 1, right sides together, 1.5 cm from the edge',
        seamLength: cmOf(203.5),
      },
      { step: 2, item: 'cover-1', text: 'Set the zip between the hem of 11 and the fold of 10', seamLength: cmOf(150) },
      { step: 1, item: 'pillowcase-1', text: 'Hem both ends of 7, fold 15 cm in as the flap', seamLength: cmOf(106) },
    ],
  })
}
