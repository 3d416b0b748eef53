import { capital, clothTitle, orderInWords } from '@lengthwise/drawing'
import type { CutCloth, Result } from '@lengthwise/planner'
import type { ComponentChildren } from 'preact'
import { useEffect, useMemo, useRef, useState } from 'preact/hooks'
import { Cautions } from './buy.tsx'
import type { Spot } from './map-drawing.tsx'
import { MapDrawing } from './map-drawing.tsx'
import { memo } from './memo.tsx'
import { size, sizes } from './said.ts'

/** Where to cut: each cloth with its drawing, its tears one by one, its pieces and what is left; then the sewing. */
export const WhereToCut = memo(
  ({ result }: { readonly result: Result }): ComponentChildren => (
    <>
      {result.cloths.map((cloth) => (
        <OneCloth key={`${cloth.name} ${cloth.piece}`} result={result} cloth={cloth} />
      ))}
      <Sewing result={result} />
      <Cautions remarks={result.cautions.filter((remark) => !remark.code.startsWith('cot'))} />
    </>
  ),
)

interface ClothProps {
  readonly result: Result
  readonly cloth: CutCloth
}

function OneCloth({ result, cloth }: ClothProps): ComponentChildren {
  const [done, setDone] = useState<number | null>(null)
  const [spot, setSpot] = useState<Spot | null>(null)
  // a new layout is seen whole first
  useEffect(() => {
    setDone(null)
    setSpot(null)
  }, [cloth])
  const unit = result.order.measureIn
  const copies = result.cloths.filter((other) => other.name === cloth.name).length
  const id = `cut-${result.cloths.indexOf(cloth)}`
  return (
    <section class="cut" aria-labelledby={id}>
      <h3 id={id}>
        {capital(clothTitle(cloth.name))}
        {copies > 1 ? `, number ${cloth.piece}` : ''}, {size(cloth.width, unit)} wide and {size(cloth.length, unit)}{' '}
        long as it lies
      </h3>
      <Steps result={result} cloth={cloth} done={done} onDone={setDone} />
      <MapDrawing result={result} cloth={cloth} done={done} spot={spot} onSpot={setSpot} />
      <Pieces result={result} cloth={cloth} spot={spot} onSpot={setSpot} />
      <Remnants result={result} cloth={cloth} spot={spot} onSpot={setSpot} />
      <TearOrder result={result} cloth={cloth} done={done} />
    </section>
  )
}

/** One tear at a time: a sentence with two buttons. */
function Steps(
  props: ClothProps & { readonly done: number | null; readonly onDone: (done: number | null) => void },
): ComponentChildren {
  const { result, cloth, done, onDone } = props
  const lines = useMemo(() => orderInWords(result, cloth), [result, cloth])
  const flags = cloth.divisions.map((division) => division.flag)
  if (flags.length === 0) return null
  const line = done === null ? undefined : lines.find((one) => one.flag === flags[done])
  return (
    <div class="steps">
      <div role="status">
        {done === null ? (
          <p class="step">The whole map: {countOf(cloth)}.</p>
        ) : done >= flags.length || line === undefined ? (
          <p class="step">All done. Write the numbers on the pieces, and keep the remnants.</p>
        ) : (
          <>
            <p>
              {line.flag.startsWith('C') ? 'Cut' : 'Tear'} {done + 1} of {flags.length}
            </p>
            <p class="step">
              <span class="flag">{line.flag}</span> {line.todo[0]}
              <strong>{line.todo[1]}</strong>
              {line.todo[2]}. {line.gives}.
            </p>
          </>
        )}
      </div>
      <p class="buttons">
        {done === null ? (
          <button type="button" class="filled" onClick={() => onDone(0)}>
            Show {flags[0]}, one at a time
          </button>
        ) : (
          <>
            <button type="button" class="outlined" onClick={() => onDone(done === 0 ? null : done - 1)}>
              {done === 0 ? 'Back to the whole map' : `Back to ${flags[done - 1]}`}
            </button>
            {done < flags.length && (
              <button type="button" class="filled" onClick={() => onDone(done + 1)}>
                {done + 1 < flags.length ? `Done, show ${flags[done + 1]}` : 'Done'}
              </button>
            )}
            {done >= flags.length && (
              <button type="button" class="filled" onClick={() => onDone(null)}>
                Show the whole map
              </button>
            )}
          </>
        )}
      </p>
    </div>
  )
}

function countOf(cloth: CutCloth): string {
  const shears = cloth.divisions.filter((division) => division.flag.startsWith('C')).length
  const tears = cloth.divisions.length - shears
  const words = cloth.cloth.divideBy === 'thread' ? 'drawn threads' : 'tears'
  return [
    tears > 0 ? `${tears} ${tears === 1 ? words.slice(0, -1) : words}` : '',
    shears > 0 ? `${shears} with shears` : '',
  ]
    .filter(Boolean)
    .join(', ')
}

interface ListProps extends ClothProps {
  readonly spot: Spot | null
  readonly onSpot: (spot: Spot | null) => void
}

function Pieces({ result, cloth, spot, onSpot }: ListProps): ComponentChildren {
  const unit = result.order.measureIn
  const rows = new Map(result.pieces.map((row) => [row.piece, row]))
  return (
    <table class="pieces">
      <caption>Pieces to cut</caption>
      <thead>
        <tr>
          <th scope="col">No.</th>
          <th scope="col" class="words">
            Piece
          </th>
          <th scope="col">Width × length</th>
        </tr>
      </thead>
      <tbody>
        {cloth.placed.map((piece) => {
          const row = rows.get(piece.piece)
          return (
            <tr key={piece.piece}>
              <th scope="row">
                <SpotButton kind="piece" name={piece.label} spot={spot} onSpot={onSpot} />
              </th>
              <td class="words">{[piece.words, piece.whose].filter(Boolean).join(', ')}</td>
              <td class="figure-pair">{row && sizes(row.cutWidth, row.cutLength, unit)}</td>
            </tr>
          )
        })}
      </tbody>
    </table>
  )
}

function Remnants({ result, cloth, spot, onSpot }: ListProps): ComponentChildren {
  const unit = result.order.measureIn
  if (cloth.remnants.length === 0) return null
  return (
    <>
      <h4>Remnants worth keeping</h4>
      <ul class="plain">
        {cloth.remnants.map((remnant) => (
          <li key={remnant.name} class="remnant">
            <SpotButton kind="remnant" name={remnant.name} spot={spot} onSpot={onSpot} />
            <span>
              {sizes(remnant.width, remnant.length, unit)}
              {remnant.wouldMake.length > 0 && `. Would make a ${remnant.wouldMake.join(' or a ')}`}
            </span>
          </li>
        ))}
      </ul>
    </>
  )
}

/** Shows a piece in the drawing; pressing again lets go of it. */
function SpotButton(
  props: Spot & { readonly spot: Spot | null; readonly onSpot: (spot: Spot | null) => void },
): ComponentChildren {
  const { kind, name, spot, onSpot } = props
  const pressed = spot?.kind === kind && spot.name === name
  const button = useRef<HTMLButtonElement>(null)
  return (
    <button
      ref={button}
      type="button"
      class="link spot"
      aria-pressed={pressed}
      onClick={() => onSpot(pressed ? null : { kind, name })}
    >
      {name}
      <span class="unseen">, show it in the drawing</span>
    </button>
  )
}

function TearOrder({ result, cloth, done }: ClothProps & { readonly done: number | null }): ComponentChildren {
  const lines = useMemo(() => orderInWords(result, cloth), [result, cloth])
  const now = done === null ? undefined : cloth.divisions[done]?.flag
  return (
    <>
      <h4>Tear and cut in this order</h4>
      <ol class="order">
        {lines.map((line, n) => (
          <li key={n} aria-current={line.flag === now ? 'step' : undefined}>
            <span class="flag">{line.flag}</span>
            <span>
              {line.todo[0]}
              <strong>{line.todo[1]}</strong>
              {line.todo[2]}. <span class="gives">{line.gives}.</span>
            </span>
          </li>
        ))}
      </ol>
    </>
  )
}

function Sewing({ result }: { readonly result: Result }): ComponentChildren {
  if (result.sewing.length === 0) return null
  const unit = result.order.measureIn
  return (
    <section aria-labelledby="sewing">
      <h3 id="sewing">Sew in this order</h3>
      <ol class="sewing">
        {result.sewing.map((step) => (
          <li key={step.step}>
            {step.text}
            {step.seamLength > 0 && <span class="gives"> Seam of {size(step.seamLength, unit)}.</span>}
          </li>
        ))}
      </ol>
    </section>
  )
}
