import { stringify } from 'yaml'

/** A plan's keys as they stand in the file. */
export type PlanKeys = { make: Keys[]; cloth: Keys[] } & Keys
export type Keys = Record<string, unknown>

type Unit = 'cm' | 'mm' | 'in'

/**
 * A plan of a few items and cloths, always the same for a seed: every kind of item, cloth, print, wash, opening, hem and unit
 * comes up. Most can be cut; some are too large for their cloth or ask for what no cloth gives, as plans do. With `measureIn` every
 * length has its unit, so that the same plan comes out for centimetres and for millimetres.
 */
export function randomPlan(seed: number, measureIn?: Unit): PlanKeys {
  const dice = new Dice(seed)
  const any = dice.one<Unit>('cm', 'cm', 'mm', 'in')
  const unit = measureIn ?? any
  const say = new Sizes(dice, unit, measureIn !== undefined)
  const cloths = dice.times(1, 3, (i) => cloth(dice, say, i))
  const names = cloths.map((c) => String(c.name))
  const make = dice.times(1, 3, (i) => item(dice, say, names, i))
  return {
    plan: 1,
    title: dice.one('Hill house', 'Room 3: «blue»', '', 'Ann\'s "best" <linen> & more'),
    ...dice.maybe(0.3, { date: '2026-05-02' }),
    'measure-in': unit,
    wash: dice.one('before-cutting', 'after-sewing', 'none'),
    ...dice.maybe(0.6, { seam: { kind: dice.one('plain', 'french', 'flat-felled'), allowance: say.short(8, 20) } }),
    ...dice.maybe(0.7, {
      'mark-to': dice.one<unknown>(0, say.exactly(5), say.exactly(10), unit === 'in' ? '1/4 in' : '2 mm'),
    }),
    ...dice.maybe(0.3, { 'worth-keeping': say.size(dice.whole(150, 300), dice.whole(300, 600)) }),
    make,
    cloth: cloths,
  }
}

/** The plan as a file, in one of the ways such a file is written. */
export function planText(plan: PlanKeys, seed: number): string {
  const dice = new Dice(seed ^ 0x5bd1e995)
  if (dice.chance(0.2)) return JSON.stringify(plan, null, dice.one(0, 2))
  const text = stringify(plan, { lineWidth: dice.one(0, 80), collectionStyle: dice.one('any', 'block') })
  return dice.chance(0.1) ? text.replaceAll('\n', '\r\n') : text
}

function cloth(dice: Dice, say: Sizes, i: number): Keys {
  const from = dice.one('bolt', 'bolt', 'bolt', 'sheet', 'remnant')
  const shared: Keys = {
    name: `${dice.one('stripe', 'linen', 'old sheet', 'blue')} ${i + 1}`,
    from,
    ...dice.maybe(0.5, { shrinks: { along: `${dice.whole(0, 9)} %`, across: `${dice.whole(0, 6)} %` } }),
    ...dice.maybe(0.2, { 'unused-selvedge': say.short(5, 20) }),
    ...dice.maybe(0.3, { 'spare-each-end': dice.chance(0.4) ? 0 : say.short(10, 60) }),
    ...dice.maybe(0.5, { 'divide-by': dice.one('tearing', 'thread', 'shears') }),
    ...dice.maybe(0.2, { 'lost-per-tear': say.short(1, 4) }),
    ...dice.maybe(0.5, { print: print(dice, say) }),
  }
  if (from === 'bolt') {
    const price = dice.one(`${dice.whole(4, 40)}.${dice.whole(10, 99)} per m`, `${dice.whole(4, 40)} per yd`)
    const widths = dice.times(1, 3, (n) => 900 + 310 * n + dice.whole(0, 250))
    return {
      ...shared,
      widths: widths.map((width) =>
        dice.chance(0.15) ? { width: say.exactly(width), price: `${dice.whole(5, 30)}.50 per m` } : say.exactly(width),
      ),
      ...dice.maybe(0.7, { price }),
      ...dice.maybe(0.5, { 'sold-by': dice.one<unknown>(0, say.exactly(100), say.exactly(250), '1/4 yd', '1 m') }),
      ...dice.maybe(0.2, { 'smallest-sale': say.long(300, 1200) }),
      ...(widths.length === 1 && {
        ...dice.maybe(0.3, { have: say.long(500, 5000) }),
        ...dice.maybe(0.2, { sold: 'no', have: say.long(4000, 15_000) }),
      }),
    }
  }
  const width = dice.whole(500, 2500)
  const length = dice.whole(700, 2900)
  return {
    ...shared,
    size: say.size(width, length),
    ...dice.maybe(0.5, { count: dice.whole(1, 4) }),
    ...dice.maybe(0.7, {
      hems: {
        head: hemDepth(dice, say, 100),
        foot: hemDepth(dice, say, 30),
        left: hemDepth(dice, say, 20),
        right: hemDepth(dice, say, 20),
      },
    }),
    ...dice.maybe(0.3, { selvedges: dice.one('left', 'right', 'both', 'none') }),
    ...dice.maybe(0.1, { keep: dice.one<unknown>('must', { head: 'must' }) }),
    ...dice.maybe(0.3, {
      flaws: dice.times(1, 2, () => ({
        x: say.exactly(dice.whole(0, width - 60)),
        y: say.exactly(dice.whole(0, length - 60)),
        width: say.exactly(dice.whole(5, 60)),
        length: say.exactly(dice.whole(5, 60)),
      })),
    }),
  }
}

function hemDepth(dice: Dice, say: Sizes, most: number): unknown {
  return dice.one<unknown>('selvedge', 'none', say.exactly(most), say.short(10, most))
}

function print(dice: Dice, say: Sizes): unknown {
  if (dice.chance(0.4)) return dice.one('plain', 'two-way', 'one-way')
  const repeat = dice.chance(0.7)
  return {
    way: dice.one('plain', 'two-way', 'one-way', 'one-way'),
    ...dice.maybe(0.5, { top: dice.one('cut-end', 'bolt', 'left', 'right') }),
    ...(repeat && {
      repeat: say.exactly(dice.whole(20, 700)),
      match: dice.one('none', 'straight', 'half-drop'),
      'repeat-measured': dice.one('on-the-table', 'in-shop'),
    }),
    ...(repeat &&
      dice.maybe(0.3, { 'across-repeat': say.exactly(dice.whole(20, 400)), 'match-line': say.short(0, 15) })),
    ...(repeat && dice.maybe(0.2, { motif: dice.one<unknown>('centred', { first: say.short(10, 200) }) })),
  }
}

function item(dice: Dice, say: Sizes, names: readonly string[], i: number): Keys {
  const cloth = (): unknown => (dice.chance(0.5) ? dice.one(...names) : dice.some(names))
  const common: Keys = {
    ...dice.maybe(0.5, { count: dice.whole(1, 4) }),
    ...dice.maybe(0.2, { for: dice.one('room 2', '=2+2', '-') }),
    ...dice.maybe(0.2, {
      seam: dice.one<unknown>('french', 'flat-felled', { kind: 'plain', allowance: say.short(5, 25) }),
    }),
    cloth: cloth(),
  }
  const other = (key: string): Keys => dice.maybe(0.25, { [key]: cloth() })
  const short = (least: number, most: number): string => {
    const side = dice.whole(least, most)
    return say.size(side, dice.whole(side, most * 1.5))
  }
  const eased = (): Keys => (dice.chance(0.3) ? { ease: say.short(0, 30) } : {})

  switch (dice.one(...KINDS)) {
    case 'duvet-cover':
      return {
        item: 'duvet-cover',
        ...common,
        ...dice.one<Keys>(
          { finished: say.size(dice.whole(600, 2200), dice.whole(700, 2200)) },
          { insert: say.size(dice.whole(600, 2200), dice.whole(700, 2200)), ...eased() },
          { size: 'uk-single', ...eased() },
          { size: 'uk-double' },
        ),
        ...dice.maybe(0.4, { front: dice.chance(0.5) ? cloth() : { cloth: cloth(), ...joining(dice, say, cloth) } }),
        ...dice.maybe(0.4, {
          back: {
            cloth: cloth(),
            ...joining(dice, say, cloth),
            ...dice.maybe(0.3, { 'zip-edge': 'kept-hems', finger: say.short(10, 25), lap: say.short(0, 6) }),
          },
        }),
        ...dice.maybe(0.8, { opening: opening(dice, say) }),
        ...dice.maybe(0.3, {
          'corner-ties': dice.one<unknown>(0, 2, 4, { count: 4, length: say.short(150, 250), bought: 'no' }),
        }),
      }
    case 'pillowcase':
      return {
        item: 'pillowcase',
        ...common,
        finished: short(300, 600),
        style: dice.one('inside-flap', 'flanged', 'envelope', 'open-end'),
        faces: dice.one('one-piece', 'separate', 'any', 'any'),
        ...dice.maybe(0.4, { flap: say.short(80, 200) }),
        ...dice.maybe(0.3, { flange: say.short(20, 60) }),
        ...dice.maybe(0.3, { hem: hem(dice, say) }),
        ...dice.maybe(0.2, {
          cuff: {
            depth: say.short(50, 140),
            cloth: cloth(),
            ...dice.maybe(0.5, { trim: { depth: say.short(5, 20) } }),
          },
        }),
        ...dice.maybe(0.2, { 'opening-edge': need(dice, say) }),
        ...other('back-cloth'),
        ...dice.maybe(0.3, { 'length-runs': dice.one('along', 'across', 'either') }),
      }
    case 'flat-sheet':
      return {
        item: 'flat-sheet',
        ...common,
        finished: say.size(dice.whole(600, 2600), dice.whole(700, 2800)),
        ...dice.maybe(0.6, {
          hems: Object.fromEntries(
            ['head', 'foot', 'left', 'right'].map((edge) => [
              edge,
              dice.one<unknown>('selvedge', 'kept-hem', say.short(10, 100), hem(dice, say), hem(dice, say)),
            ]),
          ),
        }),
        ...dice.maybe(0.4, joining(dice, say, cloth)),
      }
    case 'fitted-sheet':
      return {
        item: 'fitted-sheet',
        ...common,
        ...dice.one<Keys>(
          { mattress: say.size(dice.whole(600, 1600), dice.whole(900, 2000), dice.whole(80, 350)) },
          { size: 'uk-single', depth: say.short(150, 300) },
        ),
        ...dice.maybe(0.3, { tuck: say.short(0, 150), casing: say.short(15, 40) }),
        corners: dice.one('cut', 'kept'),
        ...dice.maybe(0.4, {
          elastic: dice.one<unknown>('all-round', 'ends', 'corners', { where: 'ends', ratio: 0.7 }),
        }),
        ...dice.maybe(0.3, joining(dice, say, cloth)),
      }
    case 'bed-skirt':
      return {
        item: 'bed-skirt',
        ...common,
        base: say.size(dice.whole(700, 1600), dice.whole(1200, 2000)),
        drop: say.short(200, 450),
        style: dice.one('gathered', 'corner-pleats'),
        ...dice.maybe(0.5, { fullness: dice.one<unknown>(1, 1.5, '2,5', 3) }),
        ...dice.maybe(0.3, { pleat: say.short(80, 200) }),
        ...dice.maybe(0.3, { hem: hem(dice, say) }),
        ...dice.maybe(0.3, { deck: dice.chance(0.5) ? cloth() : { cloth: cloth(), ...joining(dice, say, cloth) } }),
        ...other('skirt-cloth'),
      }
    case 'bolster':
      return {
        item: 'bolster',
        ...common,
        diameter: say.short(100, 300),
        length: say.long(300, 1400),
        ends: dice.one('circles', 'tied'),
        ...dice.maybe(0.3, { 'tie-end': say.short(80, 250) }),
      }
    case 'cushion':
      return {
        item: dice.one('cushion', 'sham'),
        ...common,
        finished: short(250, 600),
        back: dice.one('envelope', 'zip', 'one-piece-envelope'),
        ...dice.maybe(0.4, { overlap: say.short(60, 160) }),
        ...dice.maybe(0.4, { flange: say.short(0, 70) }),
        ...dice.maybe(0.3, { hem: hem(dice, say) }),
        ...other('back-cloth'),
      }
    case 'throw':
      return {
        item: 'throw',
        ...common,
        finished: say.size(dice.whole(600, 1600), dice.whole(800, 2000)),
        ...dice.maybe(0.5, { hem: hem(dice, say) }),
        ...dice.maybe(0.4, joining(dice, say, cloth)),
      }
    case 'quilt-back':
      return {
        item: 'quilt-back',
        ...common,
        quilt: say.size(dice.whole(700, 2400), dice.whole(800, 2500)),
        ...dice.maybe(0.5, { overhang: say.short(0, 120) }),
        ...dice.maybe(0.5, joining(dice, say, cloth)),
      }
    case 'strips':
      return {
        item: 'strips',
        ...common,
        name: `binding ${i + 1}`,
        width: say.short(25, 90),
        run: say.long(800, 6000),
        runs: dice.one('along', 'across', 'either'),
      }
    default:
      return {
        item: 'rectangle',
        ...common,
        name: `${dice.one('tray cloth', 'napkin', 'Läufer', '@home')} ${i + 1}`,
        ...dice.one<Keys>(
          { cut: say.size(dice.whole(50, 1000), dice.whole(50, 1400)) },
          {
            finished: say.size(dice.whole(100, 1000), dice.whole(100, 1400)),
            ...dice.maybe(0.7, {
              hems: dice.one<unknown>(say.short(5, 40), {
                head: dice.one<unknown>('seam', 'none', hem(dice, say)),
                left: dice.one<unknown>('seam', 'raw', say.short(5, 40)),
              }),
            }),
          },
        ),
        ...dice.maybe(0.3, { 'same-cloth': dice.one('item', 'none') }),
        ...dice.maybe(0.4, { 'length-runs': dice.one('along', 'across', 'either') }),
        ...dice.maybe(0.25, { edges: { [dice.one('head', 'foot', 'left', 'right')]: need(dice, say) } }),
      }
  }
}

const KINDS = [
  'duvet-cover',
  'duvet-cover',
  'pillowcase',
  'pillowcase',
  'flat-sheet',
  'fitted-sheet',
  'bed-skirt',
  'bolster',
  'cushion',
  'throw',
  'quilt-back',
  'strips',
  'rectangle',
  'rectangle',
] as const

const need = (dice: Dice, say: Sizes): unknown =>
  dice.one<unknown>('none', 'selvedge', 'kept-hem', { 'kept-hem': say.short(5, 40) })

const hem = (dice: Dice, say: Sizes): unknown =>
  dice.one<unknown>(say.short(5, 60), {
    depth: say.short(5, 60),
    turns: dice.one(1, 2),
    ...dice.maybe(0.4, { 'turned-in': say.short(3, 15) }),
  })

function joining(dice: Dice, say: Sizes, cloth: () => unknown): Keys {
  return {
    ...dice.maybe(0.7, { joined: dice.one('any', 'one-piece', 'centre-and-sides', 'centre-seam', 'full-widths') }),
    ...dice.maybe(0.3, { 'smallest-panel': say.short(50, 300) }),
    ...dice.maybe(0.2, { centre: dice.one<unknown>('full', 'any', say.long(400, 900)) }),
    ...dice.maybe(0.3, { 'cross-joins': dice.whole(0, 3) }),
    ...dice.maybe(0.2, { 'selvedge-to-selvedge': dice.one('yes', 'no') }),
    ...dice.maybe(0.3, { 'length-runs': dice.one('along', 'across', 'either') }),
    ...dice.maybe(0.2, { 'most-seams': dice.whole(0, 5) }),
    ...dice.maybe(0.15, {
      band: { at: dice.one('head', 'foot'), depth: say.short(80, 300), ...dice.maybe(0.5, { cloth: cloth() }) },
    }),
  }
}

function opening(dice: Dice, say: Sizes): unknown {
  const at = dice.one('foot', 'head', 'left', 'right')
  const kind = dice.one('zip', 'buttons', 'snaps', 'poppers', 'ties', 'flap', 'none')
  if (kind === 'none' || dice.chance(0.3)) return kind
  if (kind === 'zip') return { kind, at, ...dice.maybe(0.3, { zips: [say.long(400, 700), say.long(1200, 1600)] }) }
  if (kind === 'flap') return { kind, at, ...dice.maybe(0.5, { depth: say.short(100, 300), hem: hem(dice, say) }) }
  if (kind === 'ties')
    return { kind, at, ...dice.maybe(0.5, { hem: hem(dice, say), 'tie-length': say.short(150, 300) }) }
  return {
    kind,
    at,
    ...dice.maybe(0.5, { depth: say.short(20, 60), turns: dice.one(1, 2), spacing: say.short(80, 250) }),
  }
}

/** Lengths as people write them, given in whole millimetres. */
class Sizes {
  private readonly dice: Dice
  private readonly unit: Unit
  private readonly spelled: boolean

  constructor(dice: Dice, unit: Unit, spelled: boolean) {
    this.dice = dice
    this.unit = unit
    this.spelled = spelled
  }

  exactly = (mm: number): string | number => {
    const way = this.dice.whole(0, 4)
    if (this.unit === 'in') return way < 3 || this.spelled ? `${eighths(mm)} in` : eighths(mm)
    if (way === 0 && !this.spelled) return this.unit === 'mm' ? mm : mm / 10
    return [`${mm} mm`, `${mm} mm`, `${mm / 10} cm`, `${(mm / 1000).toFixed(4)} m`, `${eighths(mm)} in`][way]!
  }
  short = (least: number, most: number): string | number => this.exactly(this.dice.whole(least, most))
  long = this.short

  /** W × L, or W × L × depth */
  size = (...measures: readonly number[]): string => {
    const by = this.dice.one(' x ', ' × ', ' by ', 'x')
    const bare = this.dice.chance(0.5)
    if (this.spelled) return `${measures.map((mm) => `${mm / 10}`).join(by)} cm`
    const plain = measures.map((mm) => (this.unit === 'in' ? eighths(mm) : `${this.unit === 'mm' ? mm : mm / 10}`))
    return `${plain.join(by)}${bare ? '' : ` ${this.unit}`}`
  }
}

function eighths(mm: number): string {
  const all = Math.max(1, Math.round((mm / 25.4) * 8))
  const [whole, rest] = [Math.floor(all / 8), all % 8]
  return [whole > 0 || rest === 0 ? `${whole}` : '', rest > 0 ? `${rest}/8` : '']
    .filter((text) => text !== '')
    .join(' ')
}

/** A small generator with a state of 32 bits (mulberry32): the same dice for a seed on every machine. */
export class Dice {
  private state: number
  constructor(seed: number) {
    this.state = seed >>> 0
  }
  next(): number {
    this.state = (this.state + 0x6d2b79f5) >>> 0
    let mixed = Math.imul(this.state ^ (this.state >>> 15), this.state | 1)
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61)
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32
  }
  chance = (share: number): boolean => this.next() < share
  whole = (least: number, most: number): number => least + Math.floor(this.next() * (Math.floor(most) - least + 1))
  one = <T>(...choices: readonly T[]): T => choices[Math.floor(this.next() * choices.length)]!
  /** one or several of them, each once */
  some = <T>(all: readonly T[]): T[] => {
    const kept = all.filter(() => this.chance(0.6))
    return kept.length > 0 ? kept : [...all]
  }
  maybe = (share: number, keys: Keys): Keys => (this.chance(share) ? keys : {})
  times = <T>(least: number, most: number, make: (i: number) => T): T[] =>
    Array.from({ length: this.whole(least, most) }, (_, i) => make(i))
}
