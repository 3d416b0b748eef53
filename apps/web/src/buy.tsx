import { answerInWords, bestFirst, capital, clothTitle } from '@lengthwise/drawing'
import type { Result, WidthRow } from '@lengthwise/planner'
import type { ComponentChildren } from 'preact'
import { Fragment } from 'preact'
import { LyingCloth, Ruler } from './lying.tsx'
import { memo } from './memo.tsx'
import { area, atLeast, bought, money, size, unbroken, verdict, widthSold } from './said.ts'
import { useWidth } from './use-width.ts'

type Remark = Result['cautions'][number]

/** What to buy: the answer, its proof, every width drawn at one scale, the figures, the basket. */
export const WhatToBuy = memo(({ result }: { readonly result: Result }): ComponentChildren => {
  if (result.status === 'cannot-be-cut') return <CannotBeCut result={result} />
  const words = answerInWords(result)
  const cloths = [...new Set(result.widths.map((row) => row.cloth))]
  const infants = result.cautions.filter((remark) => remark.code.startsWith('cot'))
  return (
    <>
      {clothLines(result).map((line, n) => (
        <p key={line} class={n === 0 ? 'answer' : 'lead'}>
          {line}.
        </p>
      ))}
      <p class="lead">
        {sentence(words.waste)} {sentence(words.proof)}
      </p>
      {result.timed && <p class="lead">It was stopped by hand: there may be a better layout.</p>}
      {cloths.map((cloth) => (
        <Widths
          key={cloth}
          result={result}
          rows={bestFirst(
            result.widths.filter((row) => row.cloth === cloth),
            result,
          )}
        />
      ))}
      <Basket result={result} />
      <Cautions remarks={infants} />
      <GoodToKnow remarks={result.goodToKnow} />
    </>
  )
})

/** The sentences that buy cloth, one for each bolt; what else there is to buy goes in the basket. */
export function clothLines(result: Result): readonly string[] {
  const bolts = result.cloths.filter((cloth) => cloth.buy !== null).length
  return answerInWords(result).buy.slice(0, Math.max(1, bolts)).map(unbroken)
}

const sentence = (words: string): string => (words === '' || /[.!?]$/.test(words) ? words : `${words}.`)

function CannotBeCut({ result }: { readonly result: Result }): ComponentChildren {
  const unit = result.order.measureIn
  const reasons = new Set([
    ...result.missing.map((missing) => sentence(missing.words)),
    ...result.widths.flatMap((row) =>
      row.why === null ? [] : [sentence(`${widthSold(row.width, unit)} ${row.cloth}: ${row.why}`)],
    ),
  ])
  return (
    <div class="summary">
      <h3>This cannot be cut from this cloth</h3>
      <ul>
        {[...reasons].map((reason) => (
          <li key={reason}>{reason}</li>
        ))}
      </ul>
    </div>
  )
}

function Widths(props: { readonly result: Result; readonly rows: readonly WidthRow[] }): ComponentChildren {
  const { result, rows } = props
  const [room, width] = useWidth<HTMLDivElement>()
  const unit = result.order.measureIn
  const currency = result.order.currency
  const drawn = rows.flatMap((row) => (row.layout ? [row.layout] : []))
  const longest = Math.max(1, ...drawn.map((cloth) => cloth.length))
  const widest = Math.max(1, ...drawn.map((cloth) => cloth.width))
  // no picture higher than it helps to see
  const scale = Math.min(Math.max(0, width - 28) / longest, 260 / widest)
  const enough = rows.find((row) => row.chosen)?.enoughFrom ?? null
  return (
    <>
      {enough !== null && (
        <p>
          Another width? <strong>{atLeast(enough, unit)} or more is enough</strong> for the same length.
        </p>
      )}
      <h3>{capital(clothTitle(rows[0]?.cloth ?? ''))} at each width</h3>
      <div ref={room} class="lying-cloths">
        {width > 0 &&
          rows.map((row) => (
            <figure key={row.width}>
              <figcaption>
                <strong>{widthSold(row.width, unit)}</strong>
                {row.possible && row.buyLength !== null && <span>{bought(row.buyLength, unit)}</span>}
                {row.cost !== null && <span>{money(row.cost, currency)}</span>}
                <span class={row.chosen ? 'boxed' : ''}>{verdict(row, rows, result)}</span>
              </figcaption>
              {row.layout && (
                <LyingCloth
                  cloth={row.layout}
                  scale={scale}
                  words={`${widthSold(row.width, unit)} cloth as it lies, ${row.layout.placed.length} pieces on ${size(row.layout.length, unit)}`}
                />
              )}
            </figure>
          ))}
        {width > 0 && drawn.length > 0 && (
          <Ruler
            longest={longest}
            scale={scale}
            unit={unit === 'in' ? 292_608 : 320_000}
            sign={unit === 'in' ? 'yd' : 'm'}
          />
        )}
      </div>
      {drawn.length > 0 && (
        <p class="hint">
          {drawn.length > 1 ? 'All at one scale, as' : 'As'} they lie on the table, cut end at the left. Oblique lines
          are waste, points are remnants worth keeping, the fine grid is trimmed off.
        </p>
      )}
      <FigureTable result={result} rows={rows} />
    </>
  )
}

/** The roles are said, since a narrow screen sets every row in two lines and some readers then lose them. */
function FigureTable({
  result,
  rows,
}: {
  readonly result: Result
  readonly rows: readonly WidthRow[]
}): ComponentChildren {
  const unit = result.order.measureIn
  const priced = rows.some((row) => row.cost !== null)
  return (
    // biome-ignore-start lint/a11y: see above
    <table class="figures" role="table">
      <caption>Cloth to buy at each width</caption>
      <thead role="rowgroup">
        <tr role="row">
          <th role="columnheader">Width</th>
          <th role="columnheader">Buy</th>
          {priced && <th role="columnheader">Cost</th>}
          <th role="columnheader">Area</th>
          <th role="columnheader">Not used</th>
          <th role="columnheader">Seams</th>
          <th role="columnheader" class="words">
            Result
          </th>
        </tr>
      </thead>
      <tbody role="rowgroup">
        {rows.map((row) => (
          <tr key={row.width} role="row" class={row.chosen ? 'best' : ''}>
            <th role="rowheader">{widthSold(row.width, unit)}</th>
            <td role="cell">{row.buyLength === null ? none : bought(row.buyLength, unit)}</td>
            {priced && <td role="cell">{row.cost === null ? none : money(row.cost, null)}</td>}
            <td role="cell">{row.area === null ? none : area(row.area, unit)}</td>
            <td role="cell">{row.notUsedPercent === null ? none : waste(row)}</td>
            <td role="cell">{row.seams ?? none}</td>
            <td role="cell" class="words">
              {verdict(row, rows, result)}
              {row.possible && row.status !== 'proved' ? '; perhaps less' : ''}
            </td>
          </tr>
        ))}
      </tbody>
    </table>
    // biome-ignore-end lint/a11y: see above
  )
}

const waste = (row: WidthRow): string =>
  `${percent(row.notUsedPercent ?? 0)}, ${percent(row.keepPercent ?? 0)} worth keeping`

const none = (
  <Fragment>
    <span aria-hidden="true">–</span>
    <span class="unseen">not possible</span>
  </Fragment>
)
const percent = (value: number): string => `${Math.round(value)}\u00a0%`

/** What else goes in the basket. */
function Basket({ result }: { readonly result: Result }): ComponentChildren {
  const others = answerInWords(result).buy.slice(clothLines(result).length)
  if (others.length === 0) return null
  return (
    <>
      <h3>Also in the basket</h3>
      <ul class="plain">
        {others.map((line) => (
          <li key={line}>{capital(unbroken(line.replace(/^Buy /, '')))}</li>
        ))}
      </ul>
    </>
  )
}

export function Cautions({ remarks }: { readonly remarks: readonly Remark[] }): ComponentChildren {
  if (remarks.length === 0) return null
  return (
    <div class="caution">
      <h3>Take care</h3>
      {remarks.map((remark) => (
        <p key={remark.code + remark.text}>{sentence(remark.text)}</p>
      ))}
    </div>
  )
}

function GoodToKnow({ remarks }: { readonly remarks: readonly Remark[] }): ComponentChildren {
  if (remarks.length === 0) return null
  return (
    <>
      <h3>Good to know</h3>
      <ul class="plain">
        {remarks.map((remark) => (
          <li key={remark.code + remark.text}>{sentence(remark.text)}</li>
        ))}
      </ul>
    </>
  )
}
