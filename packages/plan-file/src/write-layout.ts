import type { Mark } from '@lengthwise/pieces'
import type { Box, CutCloth, Placed, PlacedEdge, Result, WidthRow } from '@lengthwise/planner'
import type { Length, Money } from '@lengthwise/units'
import { toCoins, toMm, UNITS_PER_MM } from '@lengthwise/units'

/** The layout file, format lengthwise-layout/1: numbers in millimetres, keys always in this order. */
export function writeLayout(result: Result): string {
  const layout = {
    format: 'lengthwise-layout/1',
    title: result.order.title,
    unit: 'mm',
    timed: result.timed,
    proof: planProof(result.proof),
    cloths: result.cloths.map(cutCloth),
    widths: result.widths.map(widthRow),
    ...(result.status === 'cannot-be-cut' ? { missing: result.missing.map(missing) } : {}),
    buy: result.buy.map(({ what, name, quantity, unit, cost }) => ({
      what,
      name,
      quantity: unit === 'mm' ? mm(quantity as Length) : quantity,
      unit,
      cost: amount(cost),
    })),
    pieces: result.pieces.map(({ piece, item, cutWidth, cutLength, marks }) => ({
      piece,
      item,
      cutWidth: mm(cutWidth),
      cutLength: mm(cutLength),
      marks: marks.map(mark),
    })),
    seams: result.seams.map(({ a, b, length, allowanceA, allowanceB, lap, match }) => ({
      a,
      b,
      length: mm(length),
      allowanceA: mm(allowanceA),
      allowanceB: mm(allowanceB),
      lap: mm(lap),
      match,
    })),
    finished: result.finished.map(({ item, width, length, asked }) => ({
      item,
      width: mm(width),
      length: mm(length),
      asked: { width: mm(asked.width), length: mm(asked.length) },
    })),
    sewing: result.sewing.map(({ step, item, text, seamLength }) => ({ step, item, text, seamLength: mm(seamLength) })),
    cautions: result.cautions.map(({ code, text }) => ({ code, text })),
    goodToKnow: result.goodToKnow.map(({ code, text }) => ({ code, text })),
  }
  return `${JSON.stringify(layout, null, 2)}\n`
}

function planProof({ status, objective, value, bound, by }: Result['proof']) {
  const figure = (n: bigint) => (objective === 'cost' ? amount(n as Money) : squareMm(n))
  return { status, objective, value: figure(value), bound: figure(bound), by }
}

function cutCloth(cloth: CutCloth) {
  const { proof } = cloth
  return {
    name: cloth.name,
    from: cloth.from,
    piece: cloth.piece,
    width: mm(cloth.width),
    length: mm(cloth.length),
    usable: box(cloth.usable),
    ...(cloth.buy
      ? { buy: { width: mm(cloth.buy.width), length: mm(cloth.buy.length), cost: amount(cloth.buy.cost) } }
      : {}),
    proof: {
      status: proof.status,
      length: mm(proof.length),
      bound: mm(proof.bound),
      by: proof.by,
      ...(proof.certificate ? { certificate: proof.certificate } : {}),
    },
    notUsed: {
      percent: tenth(cloth.notUsed.percent),
      area: squareMm(BigInt(cloth.notUsed.area)),
      keepPercent: tenth(cloth.notUsed.keepPercent),
    },
    placed: cloth.placed.map(placed),
    divisions: cloth.divisions.map(({ n, how, runs, at, from, to }) => ({
      n,
      how,
      runs,
      at: mm(at),
      from: mm(from),
      to: mm(to),
    })),
    trims: cloth.trims.map(box),
    remnants: cloth.remnants.map((remnant) => ({ ...box(remnant), wouldMake: [...remnant.wouldMake] })),
  }
}

function placed(piece: Placed) {
  const { left, right, start, end } = piece.edges
  return {
    piece: piece.piece,
    label: piece.label,
    ...box(piece),
    turned: piece.turned,
    top: piece.top,
    phase: orNull(piece.phase),
    edges: { left: edge(left), right: edge(right), start: edge(start), end: edge(end) },
  }
}

const edge = (e: PlacedEdge) => (e.kind === 'kept-hem' ? { kind: e.kind, depth: mm(e.depth) } : { kind: e.kind })

function widthRow(row: WidthRow) {
  return {
    cloth: row.cloth,
    width: mm(row.width),
    possible: row.possible,
    buyLength: orNull(row.buyLength),
    area: row.area === null ? null : squareMm(BigInt(row.area)),
    cost: amount(row.cost),
    notUsedPercent: row.notUsedPercent === null ? null : tenth(row.notUsedPercent),
    keepPercent: row.keepPercent === null ? null : tenth(row.keepPercent),
    seams: row.seams,
    status: row.status,
    chosen: row.chosen,
    why: row.why,
    enoughFrom: orNull(row.enoughFrom),
  }
}

function missing({ cloth, width, short, direction, words }: Result['missing'][number]) {
  return { cloth, width: orNull(width), short: orNull(short), direction, words }
}

/** A finished edge is a fold to whoever reads the file, also where it is stitched to what is no edge of a piece. */
function mark({ kind: drawn, x, y, runs, size, isEdge }: Mark) {
  const kind = isEdge === true ? 'fold' : drawn
  return { kind, x: mm(x), y: mm(y), ...(runs ? { runs } : {}), ...(size === undefined ? {} : { size: mm(size) }) }
}

const box = ({ x, y, width, length }: Box) => ({ x: mm(x), y: mm(y), width: mm(width), length: mm(length) })

// a number of 1/320 mm has at most six places, and a double prints back its shortest decimal: this one; + 0 makes 0 of -0
const mm = (l: Length): number => toMm(l) + 0
const orNull = (l: Length | null): number | null => (l === null ? null : mm(l))

// whole square millimetres apart, so that the division works on a small number
function squareMm(units: bigint): number {
  const perSquareMm = BigInt(UNITS_PER_MM * UNITS_PER_MM)
  return Number(units / perSquareMm) + Number(units % perSquareMm) / Number(perSquareMm)
}

const amount = <M extends Money | null>(money: M) =>
  (money === null ? null : toCoins(money as Money) / 100) as M extends Money ? number : number | null
const tenth = (percent: number): number => Math.round(percent * 10) / 10
