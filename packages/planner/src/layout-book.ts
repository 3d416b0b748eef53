import type { Order } from '@lengthwise/pieces'
import type { Answer, Certificate, Control, Known, Request } from '@lengthwise/solver'
import { bound, check, layKnowing, layQuickly } from '@lengthwise/solver'
import type { Objective } from './buying.ts'
import { buyLength, lengthOnTable } from './buying.ts'
import { comesApart, keepsOf } from './comes-apart.ts'
import type { Asked, Counts } from './demand.ts'
import { ask, countsKey } from './demand.ts'
import type { Effort } from './effort.ts'
import type { Ground } from './field.ts'
import { mustKeep, runsAlong } from './must-keep.ts'
import { leaves } from './parts.ts'
import type { Setting } from './setting.ts'
import type { Sharing } from './share.ts'

/** What was asked for on one ground, and how it is laid. */
export interface Laid {
  readonly asked: Asked
  readonly answer: Answer
}

/**
 * How hard a layout is looked for: bounds and quick starts only; as far as a tie deserves, where what is bought is settled; as far as
 * choosing among ways deserves; as far as a layout deserves that may be shown.
 */
export type How = 'quick' | 'glance' | 'look' | 'deep'

const QUICK = 1
/** What a layout on an owned length may still take after the end of a run. */
const LAST_STEPS = 5_000
/** What a bound costs, about, in steps, and what a bound, weights and the quick starts do. */
const BOUND_STEPS = 2_500
const START_STEPS = 5_000

const HARDER: readonly How[] = ['quick', 'glance', 'look', 'deep']

/** So many glances cost what one look does. */
const GLANCES = 4

const NOTHING: Known = { wider: null, placements: null }

/** Layouts worked out so far, so that no request is laid twice. */
export class LayoutBook {
  readonly order: Order
  readonly objective: Objective
  readonly effort: Effort
  /** steps of search taken */
  steps = 0
  /** steps taken by books that answer questions aside */
  aside = 0
  /** sharings of one cloth's pieces, by what was asked */
  readonly sharings = new Map<string, Sharing>()
  readonly #answers = new Map<string, Laid>()
  /** `whole`: no better bound comes of asking for more */
  readonly #bounds = new Map<string, { readonly certificate: Certificate; readonly whole: boolean }>()

  /** layouts known already; what this book works out is not added there */
  readonly before: LayoutBook | null

  constructor(order: Order, objective: Objective, effort: Effort, before: LayoutBook | null = null) {
    this.order = order
    this.objective = objective
    this.effort = effort
    this.before = before
  }

  lay(setting: Setting, ground: Ground, counts: Counts, how: How): Laid {
    const key = keyOf(setting, ground, counts)
    const known = this.#known(key, how)
    if (known) return known
    const looked = how === 'deep' ? this.#known(key, 'look') : undefined
    const anyWillDo = isAtHand(setting, ground) && mustKeep(ground).length === 0
    if (looked && (looked.answer.status === 'proved' || (anyWillDo && looked.answer.length !== null))) return looked
    const asked = looked?.asked ?? ask(this.order, ground, counts, setting.bundles)
    let found = this.#search(setting, ground, counts, how, asked, looked ? knownFrom(looked.answer) : NOTHING)
    // where no strip for a hem leaves room, the hem may end on pieces
    if (found.answer.length === null && asked.hems === 'on-strips') {
      const onPieces = ask(this.order, ground, counts, setting.bundles, 'on-pieces')
      found = this.#search(setting, ground, counts, how, onPieces, NOTHING)
    }
    // a run cut short by a clock says nothing about the next one
    if (found.answer.status !== 'stopped') this.#answers.set(`${how} ${key}`, found)
    return found
  }

  #search(setting: Setting, ground: Ground, counts: Counts, how: How, asked: Asked, known: Known): Laid {
    // an owned length costs nothing: any layout on it will do, unless it must keep its hems
    const atHand = isAtHand(setting, ground)
    const anyWillDo = atHand && mustKeep(ground).length === 0
    // where cloth cannot be bought there is nothing to show without a layout, even when the run is ended
    const ended = atHand && this.effort.stop?.()
    const control = ended ? { effort: LAST_STEPS, tidy: false } : this.#control(this.#stepsFor(how))
    let answer = (anyWillDo ? layAnyhow : layKnowing)(asked.request, control, known)
    this.steps += answer.steps + START_STEPS
    if (answer.length === null && answer.status === 'best-found' && how !== 'quick')
      answer = this.#asOnBolt(setting, ground, counts, how, asked) ?? answer
    return { asked, answer: this.#keepsHems(asked.ground, answer) }
  }

  /** What has been laid already as hard as this, or harder. */
  laidBefore(setting: Setting, ground: Ground, counts: Counts, how: How): Answer | null {
    const key = keyOf(setting, ground, counts)
    const harder = HARDER.slice(HARDER.indexOf(how)).reverse()
    for (const other of harder) {
      const known = this.#known(key, other)
      if (known) return known.answer
    }
    return null
  }

  /** The best of the quick layouts on a bolt: no more than a start. */
  start(setting: Setting, ground: Ground, counts: Counts): Laid {
    const key = keyOf(setting, ground, counts)
    const known = this.#known(key, 'start') ?? this.#known(key, 'look')
    if (known) return known
    const asked = ask(this.order, ground, counts, setting.bundles)
    const answer = this.#keepsHems(asked.ground, layQuickly(asked.request, this.effort.stop ?? undefined))
    this.steps += START_STEPS
    const found = { asked, answer }
    if (answer.status !== 'stopped') this.#answers.set(`start ${key}`, found)
    return found
  }

  /**
   * A layout once more, for the largest remnant, the fewest divisions and the fewest changes of direction; a shorter one where it
   * was not looked for as far as what is shown deserves. Null when there is none as short, or no time.
   */
  tidied(setting: Setting, ground: Ground, counts: Counts, { asked: { hems }, answer: before }: Laid): Laid | null {
    if (this.effort.stop?.()) return null
    const { lookSteps, deepSteps } = this.effort
    const proved = before.status === 'proved'
    const asked = this.#asBought(
      setting,
      ground,
      ask(this.order, ground, counts, setting.bundles, hems),
      proved ? before : null,
    )
    const searched = !proved && this.#known(keyOf(setting, ground, counts), 'deep') !== undefined
    const effort = searched ? QUICK : isAtHand(setting, ground) ? lookSteps : deepSteps
    const tidy = { tidy: true, worthKeeping: this.order.worthKeeping }
    // an exact method knows more than one layout as short as the one it found
    const known: Known = proved ? { wider: before, placements: null } : knownFrom(before)
    let answer = layKnowing(asked.request, { ...this.#control(effort), ...tidy }, known)
    this.steps += answer.steps + START_STEPS
    if (answer.length === null || answer.length > before.length!)
      answer = layKnowing(asked.request, { ...this.#control(QUICK), ...tidy }, knownFrom(before))
    answer = this.#keepsHems(asked.ground, answer)
    return answer.length === null || answer.length > before.length! || answer.status === 'stopped'
      ? null
      : { asked, answer }
  }

  /** A bolt whose laid length is settled, as long as it is bought: what goes beyond the pieces is part of what is left over. */
  #asBought({ cloth }: Setting, { field, origin }: Ground, asked: Asked, settled: Answer | null): Asked {
    if (field.length !== null || settled === null) return asked
    const { request } = asked
    const bought = lengthOnTable(this.order, cloth, buyLength(this.order, cloth, settled.length!))
    return { ...asked, request: { ...request, field: { ...request.field, length: bought - 2 * origin.y } } }
  }

  #stepsFor(how: How): number {
    const { lookSteps, deepSteps } = this.effort
    return { quick: QUICK, glance: lookSteps / GLANCES, look: lookSteps, deep: deepSteps }[how]
  }

  #control(effort: number): Control {
    const { stop } = this.effort
    return { effort, tidy: false, ...(stop ? { stop } : {}) }
  }

  #known(key: string, how: How | 'start'): Laid | undefined {
    return this.#answers.get(`${how} ${key}`) ?? (this.before ? this.before.#known(key, how) : undefined)
  }

  /** What was missed on an owned length may be known from the bolt: the same layout, where it is none too long and passes there. */
  #asOnBolt(setting: Setting, ground: Ground, counts: Counts, how: How, { request }: Asked): Answer | null {
    const { open, owned } = setting
    if (!open || !owned.some((o) => o.ground === ground)) return null
    const long = request.field.length!
    let found = this.lay(setting, open, counts, how).answer
    // an owned length costs nothing: it is worth looking as far as for what is shown
    if (how === 'look' && found.bound <= long && (found.length ?? long + 1) > long)
      found = this.lay(setting, open, counts, 'deep').answer
    return passedOn(request, found)
  }

  /** A layout of the same pieces moved to another ground; null when it does not pass there. */
  moved(ground: Ground, counts: Counts, bundles: Setting['bundles'], known: Answer): Laid | null {
    const asked = ask(this.order, ground, counts, bundles)
    const answer = passedOn(asked.request, known)
    const kept = answer && this.#keepsHems(asked.ground, answer)
    return kept?.length != null ? { asked, answer: kept } : null
  }

  /** A layout that leaves a hem on waste which must be kept is none, though there may be another. */
  #keepsHems(ground: Ground, answer: Answer): Answer {
    const sides = mustKeep(ground)
    const { table, origin } = ground
    if (sides.length === 0 || answer.length === null || table.length === null) return answer
    const usable = { ...origin, width: table.usableWidth, length: table.length - 2 * origin.y }
    const keeps = keepsOf(this.order)
    const kept = leaves(comesApart(this.order, ground, answer, table as { width: number; length: number }))
      .filter((leaf) => leaf.kind === 'piece' || (leaf.kind === 'left-over' && keeps(leaf.box)))
      .map((leaf) => leaf.box)
    if (sides.every((side) => runsAlong(side, usable, kept))) return answer
    return { ...answer, status: 'best-found', length: null, placements: [], tree: null }
  }

  /** A bound on the laid length of a bolt, cheaply, above all when one of `enough` is as good as any. */
  bound(setting: Setting, ground: Ground, counts: Counts, enough = Number.POSITIVE_INFINITY): Certificate {
    const key = `${setting.id}|${countsKey(counts)}`
    const known = this.#bounds.get(key) ?? (this.before ? this.before.#bounds.get(key) : undefined)
    if (known && (known.whole || known.certificate.bound >= enough)) return known.certificate
    const { stop } = this.effort
    const paid = { steps: 0, scales: false, ...(stop ? { stop } : {}) }
    const certificate = bound(ask(this.order, ground, counts, setting.bundles).request, paid, enough)
    this.steps += BOUND_STEPS + paid.steps
    this.#bounds.set(key, { certificate, whole: certificate.bound < enough })
    return certificate
  }
}

const keyOf = (setting: Setting, ground: Ground, counts: Counts): string =>
  `${setting.id}|${ground.field.length}${JSON.stringify(ground.field.flaws)}|${countsKey(counts)}`

const knownFrom = (answer: Answer): Known => ({
  wider: answer,
  placements: answer.length === null ? null : answer.placements,
})

/** A layout for another request with the same demands; null when it is too long for it or does not pass. */
function passedOn(request: Request, { length: laid, placements }: Answer): Answer | null {
  if (laid === null || laid > (request.field.length ?? laid)) return null
  const answer = layKnowing(request, { effort: QUICK, tidy: false }, { wider: null, placements })
  return check(request, answer).length === 0 ? answer : null
}

/** Is it a length, sheet or remnant that is owned? */
const isAtHand = (setting: Setting, ground: Ground): boolean => setting.owned.some((owned) => owned.ground === ground)

/** As `layKnowing`, but the first layout is as good as the shortest. */
function layAnyhow(request: Request, control: Control, known: Known): Answer {
  let found = false
  const answer = layKnowing(
    request,
    {
      ...control,
      stop: () => found || (control.stop?.() ?? false),
      onProgress: (best) => {
        found ||= best !== null
      },
    },
    known,
  )
  return found && answer.status === 'stopped' ? { ...answer, status: 'best-found' } : answer
}
