import { bestFirst } from '@lengthwise/drawing'
import type { Result } from '@lengthwise/planner'
import type { ComponentChildren } from 'preact'
import { useState } from 'preact/hooks'
import type { Answer } from './answer.ts'
import { clothLines } from './buy.tsx'
import { Box } from './fields.tsx'
import { ITEM_FORMS } from './item-fields.ts'
import type { Plan } from './plan.ts'
import { at, isRecord, listOf, textOf } from './plan.ts'
import type { Unit } from './said.ts'
import { bought, money, sizes, verdict, widthSold } from './said.ts'
import type { Change } from './scope.ts'
import { measureInOf, UNIT_WORDS } from './scope.ts'

/** The answer so far in one sentence, or what stands in its way. */
export function SoFar(props: {
  readonly answer: Answer
  readonly problems: number
  readonly onStop: () => void
}): ComponentChildren {
  const { answer, problems, onStop } = props
  return (
    <div class="so-far">
      <div role="status">
        <Standing answer={answer} problems={problems} />
        {answer.working && (
          <p class="hint">
            Trying {answer.progress === '' ? 'layouts' : answer.progress}
            {answer.current && answer.result !== null ? '; what stands here is the best so far' : ''}
          </p>
        )}
      </div>
      {answer.working && answer.current && (
        <p>
          <button type="button" class="link" onClick={onStop}>
            Stop and use the best so far
          </button>
        </p>
      )}
    </div>
  )
}

function Standing(props: { readonly answer: Answer; readonly problems: number }): ComponentChildren {
  const { answer, problems } = props
  const { result, fault } = answer
  return (
    <>
      {fault !== null && (
        <p class="lead">
          The program found a mistake of its own and shows no new answer: {fault}. Save the plan and tell whoever looks
          after the program.
        </p>
      )}
      {problems > 0 && (
        <p class="lead">
          {problems === 1 ? 'One thing' : `${problems} things`} to mend before there is a new answer.{' '}
          <a href="#problems">See what</a>
        </p>
      )}
      {result !== null && (
        <div class={answer.current ? 'standing' : 'standing before'}>
          {!answer.current && <p class="hint earlier">From before the last change</p>}
          <p class="lead">
            For {thingsIn(result)}: <InOneSentence result={result} />
          </p>
          <p class="ways-on">
            <a href="#sewing-what">Change what you sew</a> <a href="#buy">See why, and the widths</a>
          </p>
        </div>
      )}
      {result === null && answer.problems.length === 0 && fault === null && (
        <p class="lead">Working out how much to buy…</p>
      )}
    </>
  )
}

/** '2 duvet covers 150 × 200 cm and 4 pillowcases 50 × 75 cm' */
function thingsIn(result: Result): string {
  const { items, measureIn } = result.order
  const counts = new Map<string, { readonly item: Item; readonly count: number }>()
  for (const item of items) {
    const kind = `${nameOf(item, 1)} ${sizeOf(item, measureIn)}`
    counts.set(kind, { item, count: (counts.get(kind)?.count ?? 0) + item.count })
  }
  if (counts.size > 3) return `${items.reduce((sum, item) => sum + item.count, 0)} things`
  const words = [...counts.values()].map(({ item, count }) =>
    [count, nameOf(item, count), sizeOf(item, measureIn)].filter((word) => word !== '').join(' '),
  )
  return words.length < 2 ? words.join('') : `${words.slice(0, -1).join(', ')} and ${words.at(-1)}`
}

type Item = Result['order']['items'][number]

function nameOf(item: Item, count: number): string {
  if ('name' in item) return count === 1 ? item.name : `× ${item.name}`
  const form = ITEM_FORMS[item.item]
  return (count === 1 ? form?.words.toLowerCase() : form?.plural) ?? ''
}

function sizeOf(item: Item, unit: Unit): string {
  if (item.item === 'rectangle') {
    const { width, length } = 'cut' in item.size ? item.size.cut : item.size.finished
    return sizes(width, length, unit)
  }
  if ('finished' in item) return sizes(item.finished.width, item.finished.length, unit)
  if ('quilt' in item) return `for ${sizes(item.quilt.width, item.quilt.length, unit)}`
  return 'mattress' in item ? `for ${sizes(item.mattress.width, item.mattress.length, unit)}` : ''
}

function InOneSentence({ result }: { readonly result: Result }): ComponentChildren {
  if (result.status === 'cannot-be-cut') return <strong>this cannot be cut from this cloth.</strong>
  const lines = clothLines(result)
  return <strong>{lines.map((line) => line.charAt(0).toLowerCase() + line.slice(1)).join(', and ')}.</strong>
}

/** In the shop: every width with its metres, and a box for the width in front of you. */
export function InTheShop(props: {
  readonly plan: Plan
  readonly answer: Answer
  readonly change: Change
}): ComponentChildren {
  const { plan, answer, change } = props
  const [typed, setTyped] = useState('')
  const n = listOf(plan.cloth).findIndex((cloth) => isRecord(cloth) && cloth.from === 'bolt')
  if (n < 0) return null
  const unit = measureInOf(plan)
  const widths = listOf(at(plan, ['cloth', n, 'widths']))
  const name = textOf(at(plan, ['cloth', n, 'name']))
  const rows =
    answer.result === null
      ? []
      : bestFirst(
          answer.result.widths.filter((row) => row.cloth === name),
          answer.result,
        )
  const add = (event: Event): void => {
    event.preventDefault()
    if (typed.trim() === '') return
    change(['cloth', n, 'widths'], [...widths.filter((width) => textOf(width) !== '' || isRecord(width)), typed.trim()])
    setTyped('')
  }
  return (
    <section class={answer.current ? 'shop' : 'shop before'} aria-label="This width: how much?">
      {rows.length > 0 && answer.result !== null && (
        <ul class="shop-widths">
          {rows.map((row) => (
            <li key={row.width} class={row.chosen ? 'best' : ''}>
              <span>{widthSold(row.width, unit)}</span>
              <strong>{row.buyLength === null ? '–' : bought(row.buyLength, unit)}</strong>
              <span>
                {row.cost === null ? '' : `${money(row.cost, answer.result?.order.currency ?? null)}. `}
                {answer.result && verdict(row, rows, answer.result)}
              </span>
            </li>
          ))}
        </ul>
      )}
      <form onSubmit={add}>
        <Box
          id="shop-width"
          label={`Another width, in ${UNIT_WORDS[unit]}`}
          text={typed}
          unit={unit}
          width={7}
          onText={setTyped}
          after={
            <button type="submit" class="outlined">
              How much?
            </button>
          }
        />
      </form>
    </section>
  )
}
