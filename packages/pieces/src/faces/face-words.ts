import type { Length } from '@lengthwise/units'
import { printLength } from '@lengthwise/units'
import type { RefusedWay } from '../answers.ts'
import type { Order } from '../order.ts'
import type { Lack } from '../refusals.ts'
import type { FaceAsk } from './face.ts'
import type { Split } from './split.ts'

/** What each kind of split is called. */
export const WORDS: Record<Split['kind'], string> = {
  'one-piece': 'one piece',
  'centre-and-sides': 'a centre and two equal sides',
  'centre-seam': 'two halves with a seam down the middle',
  'full-widths': 'full widths and the rest',
}

/** A split as the page and the map say it. */
export function wordsOf(order: Order, split: Split): string {
  if (split.kind === 'full-widths') {
    const k = split.strips.filter((strip) => strip.role.startsWith('width-')).length
    const rest =
      split.strips.length === k
        ? ''
        : split.detail.endsWith('one-side')
          ? ' and the rest at one side'
          : ' and the rest shared at both sides'
    return `${k} full width${k === 1 ? '' : 's'}${rest}`
  }
  const centre = split.strips.find((strip) => strip.role === 'centre')
  return centre !== undefined && !centre.spans
    ? `a centre of ${show(order, centre.size)} and two equal sides`
    : WORDS[split.kind]
}

/** A way that will not do, and what the cloth lacks for it. */
export function refusal(ask: FaceAsk, words: string, why: string, lack: Lack): RefusedWay {
  const face = ask.name === '' ? '' : `${ask.words.toLowerCase()}: `
  return { words: `${face}${words}`, why, ...lack }
}

/** To a tenth of the plan's unit. */
export const show = (order: Order, l: Length): string => printLength(l, order.measureIn, { places: 1 })
