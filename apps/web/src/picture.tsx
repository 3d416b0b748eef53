import type { Length } from '@lengthwise/units'
import { length, printLength } from '@lengthwise/units'
import type { ComponentChildren } from 'preact'
import { ITEM_FORMS } from './item-fields.ts'
import { textOf } from './plan.ts'
import type { Scope } from './scope.ts'
import { below } from './scope.ts'
import type { FaceSeams } from './seams.ts'
import { sizeOfThing } from './thing-size.ts'

// pixels for one centimetre of the finished thing: one scale for all of them
const SCALE = 1.32
const UNITS_PER_CM = 3200
const MARGIN = 44
const TYPE = 19

/** The finished thing as a book sets a figure: its outline, its measures, where it opens. For the eye only. */
export function Picture(props: { readonly scope: Scope; readonly seams: FaceSeams }): ComponentChildren {
  const { scope, seams } = props
  const size = sizeOfThing(scope.value, scope.measureIn)
  if (size === null) return <div class="picture" />
  const lying = liesOnItsSide(scope)
  const across = Math.min(Math.max(lying ? size.length : size.width, 1), 400 * UNITS_PER_CM)
  const down = Math.min(Math.max(lying ? size.width : size.length, 1), 400 * UNITS_PER_CM)
  const w = Math.round((across / UNITS_PER_CM) * SCALE)
  const h = Math.round((down / UNITS_PER_CM) * SCALE)
  const [left, top] = [MARGIN + 14, 30]
  return (
    <div class="picture">
      <svg width={left + w + 2} height={top + h + 2} viewBox={`0 0 ${left + w + 2} ${top + h + 2}`} aria-hidden="true">
        <g fill="none" stroke="currentColor">
          <rect x={left} y={top} width={w} height={h} stroke-width={1.6} />
          <path
            d={[
              ...seams.down.map((share) => `M${left + share * w} ${top}v${h}`),
              ...seams.across.map((share) => `M${left} ${top + share * h}h${w}`),
            ].join('')}
            stroke-width={1.2}
            stroke-dasharray="5 3"
          />
          <Closing scope={scope} x={left} y={top} w={w} h={h} lying={lying} />
          <path d={measureLine(left, left + w, 12, 'across')} stroke-width={0.8} />
          <path d={measureLine(top, top + h, left - 16, 'down')} stroke-width={0.8} />
        </g>
        <g class="drawn" font-size={TYPE}>
          <Measure x={left + w / 2} y={18} room={w} words={lying ? size.words[1] : size.words[0]} />
          <Measure x={left - 16} y={top + h / 2 + 6} room={h} words={lying ? size.words[0] : size.words[1]} turned />
        </g>
      </svg>
      <SeamWords seams={seams} width={size.width} length={size.length} unit={scope.measureIn} />
    </div>
  )
}

/** Where the seams fall, in words: the picture is for the eye only. */
function SeamWords(props: {
  readonly seams: FaceSeams
  readonly width: Length
  readonly length: Length
  readonly unit: 'cm' | 'mm' | 'in'
}): ComponentChildren {
  const { seams, width, length: long, unit } = props
  const places = (shares: readonly number[], whole: Length): string =>
    shares
      .map((share) => printLength(length(Math.round(share * whole)), unit, { bare: true, places: 0, finest: 2 }))
      .join(' and ')
  const words = [
    seams.down.length > 0 ? `${places(seams.down, width)}\u00a0${unit} from the left` : '',
    seams.across.length > 0 ? `${places(seams.across, long)}\u00a0${unit} from the head` : '',
  ].filter(Boolean)
  if (words.length === 0) return null
  const name = seams.down.length + seams.across.length > 1 ? 'Seams' : 'Seam'
  return (
    <p class="hint seams">
      {name} {words.join(', ')}
    </p>
  )
}

/** Pillowcases and cushions lie with their long side across the bed. */
function liesOnItsSide(scope: Scope): boolean {
  return ITEM_FORMS[textOf(below(scope, 'item'))]?.size?.[0] === 'Short side'
}

function measureLine(from: number, to: number, at: number, way: 'across' | 'down'): string {
  return way === 'across'
    ? `M${from} ${at - 5}V${at + 5}M${from} ${at}H${to}M${to} ${at - 5}V${at + 5}`
    : `M${at - 5} ${from}H${at + 5}M${at} ${from}V${to}M${at - 5} ${to}H${at + 5}`
}

/** A number in the middle of its measure line, on paper so that the line stops short of it. */
function Measure(props: {
  readonly x: number
  readonly y: number
  readonly room: number
  readonly words: string
  readonly turned?: boolean
}): ComponentChildren {
  const width = props.words.length * TYPE * 0.5 + 8
  const x = props.turned ? Math.max(props.x, width / 2) : props.x
  return (
    <>
      <rect class="paper" x={x - width / 2} y={props.y - 17} width={width} height={22} />
      <text x={x} y={props.y} text-anchor="middle">
        {props.words}
      </text>
    </>
  )
}

interface Place {
  readonly scope: Scope
  readonly x: number
  readonly y: number
  readonly w: number
  readonly h: number
  readonly lying: boolean
}

/** Where it opens: teeth for a zip, rings for buttons and snaps, short lines for ties, a broken line for a flap or hem. */
function Closing({ scope, x, y, w, h, lying }: Place): ComponentChildren {
  const item = textOf(below(scope, 'item'))
  if (item === 'pillowcase' || item === 'cushion' || item === 'sham') {
    const style = textOf(below(scope, 'style')) || 'inside-flap'
    if (item === 'pillowcase' && style === 'flanged')
      return <rect x={x + 7} y={y + 7} width={w - 14} height={h - 14} stroke-width={1} />
    return lying ? <path d={`M${x + w * 0.78} ${y}V${y + h}`} stroke-width={1} stroke-dasharray="5 4" /> : null
  }
  if (item !== 'duvet-cover') return null
  const kind = textOf(below(scope, 'opening.kind')) || 'zip'
  const at = textOf(below(scope, 'opening.at')) || 'foot'
  const upright = at === 'left' || at === 'right'
  const long = upright ? h : w
  const turn = { foot: 0, right: -90, head: 180, left: 90 }[at] ?? 0
  const [cx, cy] = [x + w / 2, y + h / 2]
  const low = (upright ? w : h) / 2 - 9
  const steps = Array.from({ length: Math.max(0, Math.floor((long - 30) / 22)) }, (_, n) => -long / 2 + 26 + n * 22)
  return (
    <g transform={`translate(${cx} ${cy}) rotate(${turn})`} stroke-width={1}>
      {kind === 'zip' && (
        <path d={`M${-long / 2 + 12} ${low}H${long / 2 - 12}`} stroke-dasharray="1.5 2.5" stroke-width={5} />
      )}
      {(kind === 'buttons' || kind === 'snaps') && steps.map((s) => <circle key={s} cx={s} cy={low} r={3.4} />)}
      {kind === 'ties' &&
        steps
          .filter((_, n) => n % 2 === 0)
          .map((s) => <path key={s} d={`M${s} ${low + 9}v11M${s + 5} ${low + 9}v11`} />)}
      {kind === 'flap' && <path d={`M${-long / 2} ${low - 16}H${long / 2}`} stroke-dasharray="5 4" />}
    </g>
  )
}
