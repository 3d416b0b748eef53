import type { RefusedWay } from '@lengthwise/pieces'
import type { Length } from '@lengthwise/units'
import { length, printLength } from '@lengthwise/units'
import type { AtWidths } from './at-widths.ts'
import type { Counts } from './demand.ts'
import { laidOn, measuredBefore } from './field.ts'
import type { LayoutBook } from './layout-book.ts'
import { clothsNamed } from './named-cloths.ts'
import type { Choice } from './options.ts'
import type { Missing } from './result.ts'
import type { Setting } from './setting.ts'
import { shareOut } from './sharing.ts'

/** Most sheets that are looked for beyond those at hand. */
const MORE_SHEETS = 24

/** Said where nothing shows that it cannot be done. */
const NOT_FOUND = 'found within this effort: try --effort thorough'

/** Why these widths cannot serve, in one sentence, with the width that would do. */
export function whyNot(book: LayoutBook, at: AtWidths): string {
  const [stuck] = at.choices.filter((choice) => choice.options.length === 0)
  if (!stuck) return shortOf(book, at)[0]?.words ?? 'there is not enough cloth'
  const refused = mostHelpful(stuck.refused, at)
  if (!refused) return `${itemWords(stuck)} cannot be made from it`
  return `${itemWords(stuck)}, ${refused.words}: ${refused.why}${whatWouldDo(book, refused)}`
}

/** What is missing when no width can serve; `tried` is every choice of widths, in the order of the plan. */
export function missingFrom(book: LayoutBook, tried: readonly AtWidths[]): readonly Missing[] {
  const [first] = tried
  if (!first) return []
  // the widths where most can be made tell what is missing
  const stuckIn = (at: AtWidths) => at.choices.filter((choice) => choice.options.length === 0).length
  const at = tried.reduce((a, b) =>
    stuckIn(b) < stuckIn(a) || (stuckIn(b) === stuckIn(a) && widest(b) > widest(a)) ? b : a,
  )
  const stuck = at.choices.filter((choice) => choice.options.length === 0)
  if (stuck.length === 0) {
    const short = book.effort.stop?.() ? [] : shortOf(book, at)
    return short.length > 0 ? short : [notFound(at)]
  }
  return stuck.map((choice) => tooSmall(book, at, choice))
}

/** Each cloth would do for what takes least of it, and yet nothing was found for all together. */
function notFound(at: AtWidths): Missing {
  const setting = at.settings.find((s) => !s.open) ?? at.settings[0]
  return {
    cloth: setting?.cloth.name ?? '',
    width: setting ? widthAsSold(setting) : null,
    short: null,
    direction: 'along',
    words:
      at.answer.status === 'proved'
        ? 'the pieces do not all go on the cloth at hand together'
        : `no way to lay all pieces on the cloth at hand was ${NOT_FOUND}`,
  }
}

/** No way to make an item: what the nearest of them lacks. */
function tooSmall(book: LayoutBook, at: AtWidths, choice: Choice): Missing {
  const refused = mostHelpful(choice.refused, at)
  const cloth = refused?.cloth ?? [...clothsNamed(choice.item)][0] ?? ''
  const setting = at.settings.find((s) => s.cloth.name === cloth)
  const cannot = `${itemWords(choice)} cannot be cut from ${cloth}`
  return {
    cloth,
    width: setting ? widthAsSold(setting) : null,
    short: refused?.short ?? null,
    direction: refused?.direction ?? 'across',
    words: refused ? `${cannot}: ${refused.why}${whatWouldDo(book, refused)}` : cannot,
  }
}

function whatWouldDo(book: LayoutBook, { direction, short, widthThatWouldDo: width }: RefusedWay): string {
  if (width !== null) return `; ${print(book, width)} or more would do`
  if (short === null) return ''
  return `; it is ${print(book, short)} too ${direction === 'along' ? 'short' : 'narrow'}`
}

/** Every item can be made, but there is too little owned cloth. */
function shortOf(book: LayoutBook, at: AtWidths): readonly Missing[] {
  const counts = leanest(at)
  return at.settings.flatMap((setting, s): Missing[] => {
    const asked = counts[s]!
    if (asked.size === 0 || setting.open) return []
    const { share, certain } = shareOut(book, setting, asked, 'look')
    if (share) return []
    const { cloth } = setting
    const width = widthAsSold(setting)
    if (cloth.from === 'bolt') {
      const open = { ...setting.ground, field: { ...setting.ground.field, length: null } }
      const { answer } = book.lay(setting, open, asked, 'look')
      const needed = answer.length === null ? null : laidOn(open, answer.length) + 2 * setting.ground.origin.y
      const before = needed === null ? null : measuredBefore(book.order, needed, cloth.shrinks.along)
      const short = before === null ? null : length(before - cloth.have)
      const words =
        before === null
          ? `${cloth.name} is too short`
          : `${cloth.name} is ${print(book, short!)} too short: ${print(book, before)} would do`
      return [{ cloth: cloth.name, width, short, direction: 'along', words }]
    }
    const more = sheetsMissing(book, setting, asked)
    const enough = more === null ? '' : `${more} more of the same size would do`
    const words = certain
      ? `${cloth.name} is not enough for all that is to come from it${enough && `: ${enough}`}`
      : `no way to lay all that is to come from ${cloth.name} was ${NOT_FOUND}${enough && `; ${enough}`}`
    const hems = cloth.mustKeep.length > 0 ? '; its hems must be kept: with keep: may there is more room' : ''
    // as many sheets as are missing, one after the other
    const short = more === null ? null : length(more * cloth.size!.length)
    return [{ cloth: cloth.name, width, short, direction: 'along', words: words + hems }]
  })
}

function sheetsMissing(book: LayoutBook, setting: Setting, counts: Counts): number | null {
  const [first] = setting.owned
  if (!first) return null
  for (let more = 1; more <= MORE_SHEETS && !book.effort.stop?.(); more++) {
    const nths = Array.from({ length: more }, (_, i) => setting.cloth.count + i + 1)
    const larger: Setting = {
      ...setting,
      owned: [...setting.owned, { ground: first.ground, nths }],
    }
    if (shareOut(book, larger, counts, 'look').share) return more
  }
  return null
}

// the ways that take least cloth
function leanest(at: AtWidths): Counts[] {
  const counts = at.settings.map(() => new Map<string, number>())
  const areaOf = (taken: readonly Counts[]) =>
    taken.reduce((sum, t, s) => {
      for (const [key, n] of t)
        for (const member of at.settings[s]!.bundles.get(key)!.members) sum += n * member.count * member.area
      return sum
    }, 0)
  for (const choice of at.choices) {
    const option = [...choice.options].sort((a, b) => areaOf(a.takes) - areaOf(b.takes))[0]
    option?.takes.forEach((taken, s) => {
      for (const [key, n] of taken) counts[s]!.set(key, (counts[s]!.get(key) ?? 0) + n * choice.count)
    })
  }
  return counts
}

/** The way that lacks least; a width that was tried and did not do is no help. */
function mostHelpful(refused: readonly RefusedWay[], at: AtWidths): RefusedWay | undefined {
  const tried = (name: string) => {
    const setting = at.settings.find((s) => s.cloth.name === name)
    return (setting && widthAsSold(setting)) ?? 0
  }
  return refused
    .map((way): RefusedWay => {
      const useless = way.widthThatWouldDo !== null && way.widthThatWouldDo <= tried(way.cloth)
      return useless ? { ...way, widthThatWouldDo: null, short: way.direction === 'across' ? null : way.short } : way
    })
    .sort((a, b) => (a.short ?? Infinity) - (b.short ?? Infinity) || compare(a.widthThatWouldDo, b.widthThatWouldDo))[0]
}

const compare = (a: number | null, b: number | null): number => (a === b ? 0 : (a ?? Infinity) - (b ?? Infinity))

const widest = (at: AtWidths): number => Math.max(0, ...at.settings.map((s) => s.table.width))

const widthAsSold = (setting: Setting): Length | null =>
  setting.cloth.size?.width ?? setting.cloth.widths[setting.widthIndex]?.width ?? null

const print = (book: LayoutBook, l: Length): string => printLength(l, book.order.measureIn, { places: 2 })

function itemWords(choice: Choice): string {
  const { item } = choice
  return item.item === 'rectangle' || item.item === 'strips' ? item.name : item.item.replaceAll('-', ' ')
}
