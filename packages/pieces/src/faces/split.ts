import type { Length } from '@lengthwise/units'
import { length, roundUpTo } from '@lengthwise/units'
import { shareOut } from '../cut-size.ts'
import type { FaceSpec } from '../order.ts'

/** One panel across the face: cut size in the direction the face is split. */
export interface Strip {
  readonly role:
    | 'whole'
    | 'centre'
    | 'first-side'
    | 'last-side'
    | 'first-half'
    | 'last-half'
    | `width-${number}`
    | 'rest'
  readonly size: Length
  /** made by the whole width of the cloth: neither marked nor rounded */
  readonly spans: boolean
}

/** A way of splitting a face into panels; the strips run from the left (or from the head). */
export interface Split {
  readonly kind: 'one-piece' | 'centre-and-sides' | 'centre-seam' | 'full-widths'
  /** tells apart splits of one kind */
  readonly detail: string
  readonly strips: readonly Strip[]
}

export interface SplitAsk {
  /** what the strips must come to when joined, outer allowances included; not rounded */
  readonly need: number
  /** width of cloth a panel can be cut from */
  readonly available: Length
  /** false where hems at the sides keep a panel from spanning the cloth */
  readonly maySpan: boolean
  /** allowance of each joining edge */
  readonly join: Length
  readonly markTo: Length
  /** cut size a finished centre of the asked width would have; null unless the plan gives one */
  readonly centreCut: Length | null
  readonly spec: FaceSpec
}

export interface Splits {
  readonly splits: readonly Split[]
  readonly refused: readonly { readonly kind: Split['kind']; readonly why: string }[]
  /** some centre widths were left out */
  readonly thinned: boolean
}

/** Most centre widths tried for `centre: any`. */
const MOST_CENTRES = 16

/**
 * The closed list: one piece; a centre and two equal sides; a centre seam where asked; full widths and the rest at one side
 * or shared at both. A face that fits the cloth is not joined.
 *
 * With n panels joined by n − 1 seams, each of allowance s on both edges, the panels come to need + 2 s (n − 1).
 */
export function splitsOf(ask: SplitAsk): Splits {
  const whole = fit(ask, ask.need)
  if (whole !== null)
    return {
      splits: [{ kind: 'one-piece', detail: '', strips: [{ role: 'whole', ...whole }] }],
      refused: [],
      thinned: false,
    }

  const { joined } = ask.spec
  const splits: Split[] = []
  const refused: Splits['refused'][number][] = [{ kind: 'one-piece', why: 'the cloth is narrower than the face' }]
  let thinned = false
  if (joined === 'any' || joined === 'centre-and-sides') {
    const found = centreAndSides(ask)
    splits.push(...found.splits)
    thinned = found.thinned
    if (found.splits.length === 0) refused.push({ kind: 'centre-and-sides', why: tooNarrow(ask, 3) })
  }
  if (joined === 'centre-seam') {
    const side = fit(ask, half(ask.need + 2 * ask.join))
    if (side === null) refused.push({ kind: 'centre-seam', why: tooNarrow(ask, 2) })
    else
      splits.push({
        kind: 'centre-seam',
        detail: '',
        strips: [
          { role: 'first-half', ...side },
          { role: 'last-half', ...side },
        ],
      })
  }
  const fullCentreToo = joined === 'any' && (typeof ask.spec.centre === 'string' || ask.spec.selvedgeToSelvedge)
  if (joined === 'any' || joined === 'full-widths') {
    const full = fullWidths(ask, fullCentreToo)
    splits.push(...full)
    if (full.length === 0)
      refused.push({ kind: 'full-widths', why: 'the rest would be narrower than the smallest panel' })
  }
  return { splits: splits.filter(isFirstOfItsSizes), refused, thinned }
}

/** Whether no split before it has the same panels: where the rest is a full width too, several kinds are one. */
function isFirstOfItsSizes(split: Split, nth: number, all: readonly Split[]): boolean {
  const sizes = (s: Split): string => s.strips.map((strip) => strip.size).join()
  return all.findIndex((other) => sizes(other) === sizes(split)) === nth
}

function centreAndSides(ask: SplitAsk): { splits: Split[]; thinned: boolean } {
  const splits: Split[] = []
  const centres = centreWidths(ask)
  for (const centre of centres.list) {
    const side = fit(ask, half(ask.need + 4 * ask.join - centre.size))
    // sides that take the whole width are full widths, not sides
    if (side === null || side.spans || side.size < ask.spec.smallestPanel) continue
    splits.push({
      kind: 'centre-and-sides',
      detail: centre.spans ? '' : `${centre.size}`,
      strips: [
        { role: 'first-side', ...side },
        { role: 'centre', ...centre },
        { role: 'last-side', ...side },
      ],
    })
  }
  return { splits, thinned: centres.thinned }
}

/** Centre widths to try, the full width first. */
function centreWidths(ask: SplitAsk): { list: { size: Length; spans: boolean }[]; thinned: boolean } {
  const { centre, smallestPanel, selvedgeToSelvedge } = ask.spec
  const full = fullWidth(ask)
  if (centre === 'full' || selvedgeToSelvedge) return { list: [full], thinned: false }
  if (centre !== 'any') {
    const own = ask.centreCut === null ? null : fit(ask, ask.centreCut)
    return { list: own === null ? [] : [own], thinned: false }
  }
  // every marking step whose sides fit the cloth and are no narrower than the smallest panel
  const step = Math.max(1, ask.markTo)
  const total = ask.need + 4 * ask.join
  const low = Math.max(step, smallestPanel, total - 2 * ask.available)
  const high = Math.min(full.size, total - 2 * Math.max(1, smallestPanel))
  const first = Math.ceil(low / step)
  const last = Math.floor(high / step)
  const all = last - first + 1
  const chosen = new Set<number>()
  if (all <= MOST_CENTRES) for (let n = first; n <= last; n++) chosen.add(n)
  else {
    // widths at which panels start to share a length of cloth, then an even spread: the rest is left out and said so
    for (const size of [total - ask.available, total / 3, 2 * ask.available - total, low, high])
      for (const n of [Math.floor(size / step), Math.ceil(size / step)]) if (n >= first && n <= last) chosen.add(n)
    for (let i = 0; chosen.size < MOST_CENTRES && i < MOST_CENTRES; i++)
      chosen.add(first + Math.floor(((all - 1) * i) / (MOST_CENTRES - 1)))
  }
  const sizes = [...chosen].sort((a, b) => b - a).map((n) => length(n * step))
  return {
    list: [full, ...sizes.filter((size) => size < full.size).map((size) => ({ size, spans: false }))],
    thinned: all > MOST_CENTRES,
  }
}

function fullWidths(ask: SplitAsk, fullCentreToo: boolean): Split[] {
  const full = fullWidth(ask)
  const splits: Split[] = []
  const widths = (k: number): Strip[] => Array.from({ length: k }, (_, i) => ({ role: `width-${i + 1}`, ...full }))
  // each further width adds the same, so a panel that no longer shrinks the rest ends the list
  if (full.size <= 2 * ask.join) return []
  for (let k = 1; ; k++) {
    const atOneSide = ask.need + 2 * ask.join * k - k * full.size
    const shared = half(ask.need + 2 * ask.join * (k + 1) - k * full.size)
    if (shared <= 0 && atOneSide <= 0) return splits
    const rest = atOneSide > 0 ? fit(ask, atOneSide) : null
    if (rest !== null && rest.size >= ask.spec.smallestPanel)
      splits.push({
        kind: 'full-widths',
        detail: `${k}-rest-at-one-side`,
        strips: [...widths(k), { role: 'rest', ...rest }],
      })
    // one full width and two equal sides may be in the list as a centre already
    const side = shared > 0 && !(k === 1 && fullCentreToo) ? fit(ask, shared) : null
    if (side !== null && !side.spans && side.size >= ask.spec.smallestPanel)
      splits.push({
        kind: 'full-widths',
        detail: `${k}-rest-at-both-sides`,
        strips: [{ role: 'first-side', ...side }, ...widths(k), { role: 'last-side', ...side }],
      })
  }
}

/** A panel of at least `exact`: at the next marking step, or the full width where only that is enough. */
function fit(ask: SplitAsk, exact: number): { size: Length; spans: boolean } | null {
  if (exact > ask.available) return null
  const marked = roundUpTo(length(Math.ceil(exact)), ask.markTo)
  if (marked <= ask.available) return { size: marked, spans: false }
  return ask.maySpan ? { size: ask.available, spans: true } : null
}

/** The whole width, or the largest panel that can be marked on it between side hems. */
function fullWidth(ask: SplitAsk): { size: Length; spans: boolean } {
  if (ask.maySpan) return { size: ask.available, spans: true }
  const step = Math.max(1, ask.markTo)
  return { size: length(Math.floor(ask.available / step) * step), spans: false }
}

/** Narrowest usable width from which `panels` panels come to the face. */
export const narrowest = (ask: Pick<SplitAsk, 'need' | 'join'>, panels: number): Length =>
  shareOut(ask.need + 2 * ask.join * (panels - 1), panels)

function tooNarrow(ask: SplitAsk, panels: number): string {
  return narrowest(ask, panels) > ask.available
    ? `${panels} widths of this cloth do not reach across the face`
    : 'a panel would be narrower than the smallest allowed'
}

const half = (a: number): number => Math.ceil(a / 2)
