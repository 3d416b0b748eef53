import type { Box, CutCloth } from '@lengthwise/planner'
import type { ComponentChildren } from 'preact'
import type { Area } from './hatch.ts'
import { gridLines, obliqueLines, points } from './hatch.ts'

const TYPE = 17

/** A cloth as it lies, cut end at the left, so that its length is seen: pictures of all widths share one scale and one left edge. */
export function LyingCloth(props: {
  readonly cloth: CutCloth
  /** pixels for one unit of length */
  readonly scale: number
  readonly words: string
}): ComponentChildren {
  const { cloth, scale, words } = props
  const width = cloth.length * scale
  const height = cloth.width * scale
  // turned a quarter to the left: what points down the cloth points right, its left selvedge lies below
  const area = (box: Box): Area => ({
    x: box.y * scale,
    y: (cloth.width - box.x - box.width) * scale,
    w: box.length * scale,
    h: box.width * scale,
  })
  const all = (boxes: readonly Box[], hatch: (area: Area, step: number) => string, step: number): string =>
    boxes.map((box) => hatch(area(box), step)).join('')
  return (
    <svg
      class="lying"
      role="img"
      aria-label={words}
      width={width + 4}
      height={height + 4}
      viewBox={`-2 -2 ${width + 4} ${height + 4}`}
    >
      <g fill="none" stroke="currentColor">
        <path d={all(cloth.waste, obliqueLines, 7)} stroke-width={0.7} />
        <path d={all(cloth.trims, gridLines, 4)} stroke-width={0.6} />
        <path d={all(cloth.remnants, points, 8)} stroke-width={1.7} stroke-linecap="round" />
        {cloth.placed.map((piece) => {
          const { x, y, w, h } = area(piece)
          return <rect key={piece.piece} x={x} y={y} width={w} height={h} stroke-width={0.9} />
        })}
        <rect x={0} y={0} width={width} height={height} stroke-width={1.2} />
        <path d={`M0 0H${width}M0 ${height}H${width}`} stroke-width={2.2} />
      </g>
      <g class="drawn" font-size={TYPE}>
        {cloth.placed.map((piece) => {
          const { x, y, w, h } = area(piece)
          const said = [piece.words, piece.label].find((text) => text.length * TYPE * 0.47 + 12 <= w && TYPE + 6 <= h)
          return said === undefined ? null : (
            <text key={piece.piece} x={x + w / 2} y={y + h / 2 + TYPE * 0.32} text-anchor="middle">
              {said}
            </text>
          )
        })}
      </g>
    </svg>
  )
}

/** Metres or yards under the last picture. */
export function Ruler(props: {
  readonly longest: number
  readonly scale: number
  readonly unit: number
  readonly sign: string
}): ComponentChildren {
  const { longest, scale, unit, sign } = props
  const each = [1, 2, 5, 10, 20, 50].find((n) => n * unit * scale >= 56) ?? 100
  const steps = Array.from({ length: Math.floor(longest / unit / each) + 1 }, (_, n) => n * each)
  return (
    <svg
      class="ruler"
      width={longest * scale + 24}
      height={36}
      viewBox={`-2 0 ${longest * scale + 24} 36`}
      aria-hidden="true"
    >
      <path
        d={`M0 1H${longest * scale}${steps.map((n) => `M${n * unit * scale} 1v8`).join('')}`}
        fill="none"
        stroke="currentColor"
        stroke-width={1}
      />
      <g class="drawn" font-size={TYPE}>
        {steps.map((n) => (
          <text key={n} x={n * unit * scale} y={28} text-anchor={n === 0 ? 'start' : 'middle'}>
            {n === 0 ? '0' : `${n} ${sign}`}
          </text>
        ))}
      </g>
    </svg>
  )
}
