/**
 * Reads a layout file against the plan it answers, knowing only the published meaning of both files:
 * none of the project's own code. Millimetres come in as exact decimals and are compared as whole 1/320 mm.
 */
interface Rect {
  readonly x: number
  readonly y: number
  readonly width: number
  readonly length: number
}
type PlacedEdge = { kind: 'cut' | 'selvedge' | 'kept-hem'; depth?: number }
interface Placed extends Rect {
  readonly piece: string
  readonly label: string
  readonly turned: boolean
  readonly top: string
  readonly phase: number | null
  readonly edges: Record<'left' | 'right' | 'start' | 'end', PlacedEdge>
}
interface Division {
  readonly n: number
  readonly how: string
  readonly runs: 'across' | 'along'
  readonly at: number
  readonly from: number
  readonly to: number
}
interface CutCloth {
  readonly name: string
  readonly from: string
  readonly width: number
  readonly length: number
  readonly usable: Rect
  readonly buy?: { width: number; length: number; cost: number | null }
  readonly proof: { status: string; length: number; bound: number }
  readonly notUsed: { percent: number; area: number; keepPercent: number }
  readonly placed: readonly Placed[]
  readonly divisions: readonly Division[]
  readonly trims: readonly Rect[]
  readonly remnants: readonly Rect[]
}
export interface LayoutFile {
  readonly format: string
  readonly unit: string
  readonly proof: { status: string; objective: string; value: number; bound: number }
  readonly cloths: readonly CutCloth[]
  readonly widths: readonly {
    cloth: string
    width: number
    possible: boolean
    buyLength: number | null
    cost: number | null
    why: string | null
    chosen: boolean
  }[]
  readonly pieces: readonly { piece: string; item: string; cutWidth: number; cutLength: number }[]
  readonly seams: readonly { a: string; b: string; length: number; match: string }[]
  readonly finished: readonly {
    item: string
    width: number
    length: number
    asked: { width: number; length: number }
  }[]
}

/** What the plan says of a cloth, in millimetres and per cent, as far as the check needs it. */
export interface PlanFacts {
  readonly worthKeeping: { readonly width: number; readonly length: number }
  readonly wash: 'before-cutting' | 'after-sewing' | 'none'
  readonly markTo: number
  readonly cloths: Readonly<
    Record<
      string,
      {
        readonly divideBy: 'tearing' | 'thread' | 'shears'
        readonly spare: number
        readonly shrinkAlongPercent: number
        readonly soldBy: number
        readonly smallestSale: number
        readonly pricePerMetre: number | null
        readonly repeat: number
        /** one repeat more is bought where a motif is centred and the place of the first is not known */
        readonly play: number
        readonly unusedSelvedge: number
        /** torn edges lose this much, so that pieces lie so much larger */
        readonly lostPerTear: number
        readonly selvedges: Readonly<Record<'left' | 'right' | 'start' | 'end', boolean>>
        readonly hems: { readonly left: number; readonly right: number; readonly start: number; readonly end: number }
      }
    >
  >
}

const units = (mm: number): number => Math.round(mm * 320)
const area = (r: Rect): number => r.width * r.length

/** Every disagreement between the two files, in words; empty when the layout is sound. */
export function checkLayout(file: LayoutFile, facts: PlanFacts): readonly string[] {
  const wrong: string[] = []
  const say = (text: string): void => void wrong.push(text)

  if (file.format !== 'lengthwise-layout/1' || file.unit !== 'mm') say('format or unit')
  if (file.proof.status === 'proved' && file.proof.value !== file.proof.bound)
    say('the plan is called proved with a bound apart')
  if (file.proof.bound > file.proof.value) say('the bound of the plan is above its value')

  // every piece of the list lies on exactly one cloth, once
  const rows = new Map(file.pieces.map((row) => [row.piece, row]))
  if (rows.size !== file.pieces.length) say('two rows of pieces have one name')
  const seen = new Map<string, number>()
  for (const cloth of file.cloths) for (const p of cloth.placed) seen.set(p.piece, (seen.get(p.piece) ?? 0) + 1)
  for (const name of rows.keys()) if (seen.get(name) !== 1) say(`${name} is placed ${seen.get(name) ?? 0} times`)
  for (const name of seen.keys()) if (!rows.has(name)) say(`${name} is placed and not listed`)

  for (const cloth of file.cloths) checkCloth(cloth)

  // one joined face keeps its phase
  const place = new Map(file.cloths.flatMap((cloth) => cloth.placed.map((p) => [p.piece, { p, cloth }] as const)))
  for (const seam of file.seams) {
    if (seam.match !== 'straight' && seam.match !== 'half-drop') continue
    const [a, b] = [seam.a, seam.b].map((end) => place.get(end.split('#')[0] ?? ''))
    if (a === undefined || b === undefined) {
      say(`seam ${seam.a} ~ ${seam.b} names a piece that is not placed`)
      continue
    }
    const repeat = units(facts.cloths[a.cloth.name]?.repeat ?? 0)
    if (repeat === 0 || a.p.turned || b.p.turned) continue
    const apart = (((units(a.p.y) - units(b.p.y)) % repeat) + repeat) % repeat
    if (apart !== (seam.match === 'straight' ? 0 : repeat / 2))
      say(`seam ${seam.a} ~ ${seam.b}: the print does not meet`)
  }

  for (const row of file.finished) {
    for (const side of ['width', 'length'] as const) {
      const more = row[side] - row.asked[side]
      if (more < 0) say(`${row.item} finishes ${-more} mm short in ${side}`)
      // each of a few cut edges, and of many pieces in a row each, may have been rounded up to what can be marked
      const edges = Math.max(4, file.pieces.filter(({ item }) => item === row.item).length)
      if (more > Math.max(facts.markTo * edges, 1)) say(`${row.item} finishes ${more} mm over in ${side}`)
    }
  }

  for (const row of file.widths) {
    if (row.possible !== (row.buyLength !== null)) say(`width ${row.width}: possible and buyLength disagree`)
    if (!row.possible && !row.why) say(`width ${row.width} is impossible and does not say why`)
  }
  return wrong

  function checkCloth(cloth: CutCloth): void {
    const fact = facts.cloths[cloth.name]
    if (fact === undefined) {
      say(`${cloth.name} is not in the plan`)
      return
    }
    const at = (text: string): void => say(`${cloth.name}: ${text}`)
    const whole: Rect = { x: 0, y: 0, width: cloth.width, length: cloth.length }

    for (const p of cloth.placed) {
      const row = rows.get(p.piece)
      if (row !== undefined) {
        const [w, l] = p.turned ? [row.cutLength, row.cutWidth] : [row.cutWidth, row.cutLength]
        const { left, right, start, end } = p.edges
        // over the full usable width what is trimmed with the selvedges takes the fraying with it
        const full = fact.unusedSelvedge > 0 && units(p.width) === units(cloth.usable.width)
        if (
          !(grown(p.width - w, [left, right], fact) || (full && units(p.width) === units(w))) ||
          !grown(p.length - l, [start, end], fact)
        )
          at(`${p.piece} is placed ${p.width} × ${p.length}, cut ${w} × ${l}`)
      }
      if (!inside(p, cloth.usable)) at(`${p.piece} lies outside the usable cloth`)
      const flush = {
        left: units(p.x) === 0,
        right: units(p.x + p.width) === units(cloth.width),
        start: units(p.y) === 0,
        end: units(p.y + p.length) === units(cloth.length),
      }
      for (const side of ['left', 'right', 'start', 'end'] as const) {
        const edge = p.edges[side]
        const hem = fact.hems[side]
        if (edge.kind === 'selvedge' && !(flush[side] && fact.selvedges[side]))
          at(`${p.piece} has no selvedge at its ${side}`)
        if (edge.kind === 'kept-hem' && !(flush[side] && hem > 0 && units(edge.depth ?? -1) === units(hem)))
          at(`${p.piece} has no such hem at its ${side}`)
        if (hem > 0 && !flush[side] && reaches(p, side, cloth, hem))
          at(`${p.piece} overlaps the hem at the ${side} without being flush with it`)
      }
    }
    cloth.placed.forEach((p, i) => {
      for (const q of cloth.placed.slice(i + 1)) if (overlap(p, q)) at(`${p.piece} and ${q.piece} overlap`)
    })

    // the laid length, and what is bought for it
    const farthest = Math.max(0, ...cloth.placed.map((p) => units(p.y + p.length) - units(cloth.usable.y)))
    if (cloth.from === 'bolt' && farthest !== units(cloth.proof.length))
      at(`laid length says ${cloth.proof.length}, the farthest piece ends at ${farthest / 320}`)
    if (units(cloth.proof.bound) > units(cloth.proof.length)) at('the bound is above the length')
    if (cloth.proof.status === 'proved' && units(cloth.proof.bound) !== units(cloth.proof.length))
      at('proved with a bound apart')
    if (cloth.buy !== undefined) {
      const shrink = facts.wash === 'before-cutting' ? fact.shrinkAlongPercent : 0
      const needed = Math.max(
        units(fact.smallestSale),
        Math.ceil(
          ((units(cloth.proof.length) + 2 * units(fact.spare) + units(fact.play)) * 100) / (100 - shrink) - 1e-7,
        ),
      )
      const step = units(fact.soldBy)
      const bought = step === 0 ? needed : Math.ceil(needed / step) * step
      if (units(cloth.buy.length) !== bought) at(`bought ${cloth.buy.length}, by the rule ${bought / 320}`)
      if (
        fact.pricePerMetre !== null &&
        Math.abs((cloth.buy.cost ?? Number.NaN) - (fact.pricePerMetre * bought) / 320_000) > 0.00501
      )
        at(`costs ${cloth.buy.cost}`)
    }

    // the order of dividing, rehearsed from one rectangle
    let hands: Rect[] = [whole]
    for (const d of [...cloth.divisions].sort((a, b) => a.n - b.n)) {
      const i = hands.findIndex((h) =>
        d.runs === 'across'
          ? units(h.x) === units(d.from) && units(h.x + h.width) === units(d.to) && h.y < d.at && d.at < h.y + h.length
          : units(h.y) === units(d.from) && units(h.y + h.length) === units(d.to) && h.x < d.at && d.at < h.x + h.width,
      )
      const hand = hands[i]
      if (hand === undefined) {
        if (fact.divideBy !== 'shears') at(`division ${d.n} does not run right across anything in hand`)
        continue
      }
      const parts: Rect[] =
        d.runs === 'across'
          ? [
              { ...hand, length: d.at - hand.y },
              { ...hand, y: d.at, length: hand.y + hand.length - d.at },
            ]
          : [
              { ...hand, width: d.at - hand.x },
              { ...hand, x: d.at, width: hand.x + hand.width - d.at },
            ]
      hands = [...hands.slice(0, i), ...hands.slice(i + 1), ...parts]
    }
    if (fact.divideBy !== 'shears') {
      const key = (r: Rect): string => [r.x, r.y, r.width, r.length].map(units).join(' ')
      const left = new Set(hands.map(key))
      for (const p of cloth.placed) if (!left.delete(key(p))) at(`${p.piece} does not come off whole`)
      for (const r of cloth.remnants)
        if (!left.delete(key(r))) at(`remnant ${r.width} × ${r.length} is no rectangle left at the end`)
      for (const t of cloth.trims) left.delete(key(t))
      for (const h of hands)
        if (left.has(key(h)) && worthKeeping(h))
          at(`${h.width} × ${h.length} at ${h.x}, ${h.y} is worth keeping and not listed`)
    }
    for (const r of cloth.remnants)
      if (!worthKeeping(r)) at(`remnant ${r.width} × ${r.length} is smaller than worth keeping`)

    // both figures of waste
    const used = cloth.placed.reduce((total, p) => total + area(p), 0)
    const notUsed = area(whole) - used
    if (Math.abs(notUsed - cloth.notUsed.area) > 1) at(`not used ${cloth.notUsed.area} mm², by the drawing ${notUsed}`)
    if (Math.abs((100 * notUsed) / area(whole) - cloth.notUsed.percent) > 0.06)
      at(`not used ${cloth.notUsed.percent} %`)
    const keep = cloth.remnants.reduce((total, r) => total + area(r), 0)
    if (Math.abs((100 * keep) / area(whole) - cloth.notUsed.keepPercent) > 0.06)
      at(`worth keeping ${cloth.notUsed.keepPercent} %, by the drawing ${(100 * keep) / area(whole)}`)
  }

  function worthKeeping(r: Rect): boolean {
    const { width, length } = facts.worthKeeping
    const fits = (a: number, b: number): boolean => units(r.width) >= units(a) && units(r.length) >= units(b)
    return fits(width, length) || fits(length, width)
  }
}

const inside = (p: Rect, q: Rect): boolean =>
  units(p.x) >= units(q.x) &&
  units(p.y) >= units(q.y) &&
  units(p.x + p.width) <= units(q.x + q.width) &&
  units(p.y + p.length) <= units(q.y + q.length)

const overlap = (p: Rect, q: Rect): boolean =>
  units(p.x) < units(q.x + q.width) &&
  units(q.x) < units(p.x + p.width) &&
  units(p.y) < units(q.y + q.length) &&
  units(q.y) < units(p.y + p.length)

/** Torn, a piece lies larger by what each torn edge loses: by every edge that is no edge of the cloth, and by two at most. */
function grown(more: number, edges: readonly PlacedEdge[], fact: PlanFacts['cloths'][string]): boolean {
  const lost = fact.divideBy === 'tearing' ? units(fact.lostPerTear) : 0
  const torn = edges.filter((edge) => edge.kind === 'cut').length
  return [torn, 1, 2].some((times) => times >= torn && units(more) === times * lost)
}

function reaches(p: Rect, side: 'left' | 'right' | 'start' | 'end', cloth: Rect | CutCloth, hem: number): boolean {
  if (side === 'left') return units(p.x) < units(hem)
  if (side === 'start') return units(p.y) < units(hem)
  if (side === 'right') return units(p.x + p.width) > units(cloth.width - hem)
  return units(p.y + p.length) > units(cloth.length - hem)
}
