import type { Figure } from '@lengthwise/drawing'
import { toSvg } from '@lengthwise/drawing'
import type { CutCloth, Result } from '@lengthwise/planner'
import type { ComponentChildren } from 'preact'
import { useMemo, useState } from 'preact/hooks'
import { useFigure } from './draw-apart.ts'
import { useWidth } from './use-width.ts'

/** A piece or remnant that is looked for in the drawing. */
export interface Spot {
  readonly kind: 'piece' | 'remnant'
  readonly name: string
}

const ZOOMS = [0.5, 0.7, 1, 1.4, 2, 2.8]
const UNITS_PER_METRE = 320_000
/** Height of capitals to the size of the typeface. */
const CAPITAL = 0.637

/** The cutting map of one cloth, set for the room it has. While one tears, it shows what is in the hand. */
export function MapDrawing(props: {
  readonly result: Result
  readonly cloth: CutCloth
  readonly done: number | null
  readonly spot: Spot | null
  readonly onSpot: (spot: Spot | null) => void
}): ComponentChildren {
  const { result, cloth, done, spot, onSpot } = props
  const [place, width] = useWidth<HTMLDivElement>()
  const [zoom, setZoom] = useState(2)
  const narrow = width < 640
  // pixels for one millimetre of the picture
  const pixels = narrow ? 1.7 : 2.2
  const room = useMemo(
    () =>
      width === 0
        ? null
        : {
            across: width / pixels,
            smallestCapital: ((narrow ? 16 : 19) * CAPITAL) / pixels,
            zoom: ZOOMS[zoom] ?? 1,
            done,
          },
    [width, narrow, pixels, zoom, done],
  )
  const { figure, late } = useFigure(result, result.cloths.indexOf(cloth), room)
  const id = `map-${result.cloths.indexOf(cloth)}`
  const svg = useMemo(() => (figure === null ? '' : toSvg(figure, { id })), [figure, id])
  const view = figure === null ? null : inHand(figure, cloth, done)
  const found = figure?.spots.find((one) => one.kind === spot?.kind && one.name === spot.name)
  const point = (event: MouseEvent): void => {
    const box = (event.currentTarget as HTMLElement).getBoundingClientRect()
    const x = (event.clientX - box.left) / pixels
    const y = (event.clientY - box.top) / pixels + (view?.from ?? 0)
    const under = figure?.spots.find(
      (one) => one.kind !== 'division' && x >= one.x && x <= one.x + one.width && y >= one.y && y <= one.y + one.height,
    )
    onSpot(under === undefined || under.kind === 'division' ? null : { kind: under.kind, name: under.name })
  }
  return (
    <div class="drawing" ref={place}>
      <p class="buttons unprinted">
        <button type="button" class="outlined" disabled={zoom === 0} onClick={() => setZoom(zoom - 1)}>
          Smaller
        </button>
        <button type="button" class="outlined" disabled={zoom === ZOOMS.length - 1} onClick={() => setZoom(zoom + 1)}>
          Bigger
        </button>
      </p>
      {late && (
        <p class="hint" role="status">
          Drawing the map of {cloth.placed.length} pieces…
        </p>
      )}
      {figure && view && (
        <section
          class="map"
          {...(figure.width * pixels > width ? { tabIndex: 0, 'aria-label': 'The drawing; it can be scrolled' } : {})}
        >
          {/* biome-ignore lint/a11y/useKeyWithClickEvents: the keyboard finds every piece in the list below */}
          {/* biome-ignore lint/a11y/noStaticElementInteractions: as above */}
          <div
            class="sized"
            style={{
              '--width': `${figure.width * pixels}px`,
              '--shown': `${(view.to - view.from) * pixels}px`,
              '--height': `${figure.height * pixels}px`,
              '--above': `${-view.from * pixels}px`,
            }}
            onClick={point}
          >
            <div class="moved">
              <div class="figure" dangerouslySetInnerHTML={{ __html: svg }} />
              {found && (
                <svg class="found" viewBox={`0 0 ${figure.width} ${figure.height}`} aria-hidden="true">
                  <rect
                    x={found.x + 0.8}
                    y={found.y + 0.8}
                    width={Math.max(0.1, found.width - 1.6)}
                    height={Math.max(0.1, found.height - 1.6)}
                    fill="none"
                    stroke="currentColor"
                    stroke-width={1.6}
                  />
                </svg>
              )}
            </div>
          </div>
        </section>
      )}
    </div>
  )
}

// as much of a long cloth as is shown around a tear, in units of length, and the room for flags beyond it in the picture
const ON_EACH_SIDE = 1.3 * UNITS_PER_METRE
const BEYOND = 12

/** The part of the picture to show, from top to bottom: all of it, or what is in the hand around the division to do now. */
function inHand(figure: Figure, cloth: CutCloth, done: number | null): { readonly from: number; readonly to: number } {
  const whole = { from: 0, to: figure.height }
  const division = done === null ? undefined : cloth.divisions[done]
  // a piece and its place in the picture tell where the cloth lies in it
  const piece = cloth.placed[0]
  const place = figure.spots.find((one) => one.kind === 'piece' && one.name === piece?.label)
  if (division === undefined || piece === undefined || place === undefined) return whole
  const scale = place.height / piece.length
  const at = (y: number): number => place.y + (y - piece.y) * scale
  const { hand } = division
  const middle = division.runs === 'across' ? division.at : hand.y + ON_EACH_SIDE
  const first = Math.max(hand.y, Math.min(middle - ON_EACH_SIDE, hand.y + hand.length - 2 * ON_EACH_SIDE))
  const last = Math.min(hand.y + hand.length, Math.max(middle + ON_EACH_SIDE, hand.y + 2 * ON_EACH_SIDE))
  return { from: Math.max(0, at(first) - BEYOND), to: Math.min(figure.height, at(last) + BEYOND) }
}
