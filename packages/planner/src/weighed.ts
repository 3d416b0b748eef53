import type { Measure } from './additive-bound.ts'
import { measuresFor, weigh } from './additive-bound.ts'
import type { Choice, Option } from './options.ts'
import type { Setting } from './setting.ts'

/** The measures of one cloth; the first is the area. */
export interface Scale {
  readonly measures: readonly Measure[]
  readonly ownedArea: number
}

/** One way with what it weighs. */
export interface WeighedOption {
  readonly option: Option
  /** on the cloths where it is not what the item weighs at least: by measure, how much more it weighs */
  readonly more: readonly { readonly setting: number; readonly by: readonly number[] }[]
}

/** An item with its ways, those of least area first, so that the first whole choice is a good one. */
export interface WeighedItem {
  readonly count: number
  readonly together: boolean
  readonly options: readonly WeighedOption[]
  /** by setting and measure: what one copy weighs at least */
  readonly least: readonly (readonly number[])[]
  readonly fewestJoins: number
}

export function scaleOf(setting: Setting, s: number, choices: readonly Choice[]): Scale {
  const widths = choices.flatMap((choice) =>
    choice.options.flatMap((option) =>
      [...option.takes[s]!.keys()].flatMap((key) =>
        setting.bundles.get(key)!.members.flatMap((member) => member.postures.map((p) => p.width)),
      ),
    ),
  )
  const ownedArea = setting.owned.reduce(
    (sum, { ground, nths }) => sum + nths.length * ground.field.width * (ground.field.length ?? 0),
    0,
  )
  return { measures: measuresFor(setting.ground.field.width, widths), ownedArea }
}

export function weighItem(choice: Choice, scales: readonly Scale[], settings: readonly Setting[]): WeighedItem {
  const weighed = choice.options.map((option) => ({
    option,
    weights: scales.map((scale, s) => scale.measures.map((measure) => weightOf(option, measure, settings[s]!, s))),
  }))
  const area = ({ weights }: (typeof weighed)[number]) => weights.reduce((sum, row) => sum + row[0]!, 0)
  const least = scales.map((scale, s) =>
    scale.measures.map((_, m) => Math.min(...weighed.map(({ weights }) => weights[s]![m]!))),
  )
  return {
    count: choice.count,
    together: choice.together,
    options: weighed
      .sort((a, b) => area(a) - area(b))
      .map(({ option, weights }) => ({
        option,
        more: weights.flatMap((row, setting) => {
          const by = row.map((weight, m) => weight - least[setting]![m]!)
          return by.some((weight) => weight > 0) ? [{ setting, by }] : []
        }),
      })),
    least,
    fewestJoins: Math.min(...choice.options.map((option) => option.joins)),
  }
}

function weightOf(option: Option, measure: Measure, setting: Setting, s: number): number {
  let sum = 0
  for (const [key, n] of option.takes[s]!)
    for (const member of setting.bundles.get(key)!.members) sum += n * member.count * weigh(measure, member.postures)
  return sum
}
