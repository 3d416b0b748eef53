import type { Result } from '@lengthwise/planner'
import type { ComponentChildren } from 'preact'
import { useState } from 'preact/hooks'
import type { Answer } from './answer.ts'
import { clothLines } from './buy.tsx'
import { Box } from './fields.tsx'
import { ITEM_FORMS } from './item-fields.ts'
import type { Plan } from './plan.ts'
import { at, isRecord, listOf, textOf } from './plan.ts'
import { bestFirst, bought, money, size, verdict } from './said.ts'
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
            {answer.progress === '' ? 'Trying layouts' : answer.progress}
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
            For {thingsIn(result)}: <InOneSentence result={result} /> <a href="#buy">See why</a>
          </p>
        </div>
      )}
      {result === null && answer.problems.length === 0 && fault === null && (
        <p class="lead">Working out how much to buy…</p>
      )}
    </>
  )
}

/** '2 duvet covers and 4 pillowcases' */
function thingsIn(result: Result): string {
  const counts = new Map<string, number>()
  for (const item of result.order.items) {
    const kind = 'name' in item ? `"${item.name}` : item.item
    counts.set(kind, (counts.get(kind) ?? 0) + item.count)
  }
  if (counts.size > 3) return `${[...counts.values()].reduce((a, b) => a + b)} things`
  const words = [...counts].map(([kind, count]) => {
    if (kind.startsWith('"')) return `${count}${count === 1 ? '' : ' ×'} ${kind.slice(1)}`
    const form = ITEM_FORMS[kind]
    return `${count} ${count === 1 ? form?.words.toLowerCase() : form?.plural}`
  })
  return words.length < 2 ? words.join('') : `${words.slice(0, -1).join(', ')} and ${words.at(-1)}`
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
  const rows = answer.result === null ? [] : bestFirst(answer.result.widths.filter((row) => row.cloth === name))
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
              <span>{size(row.width, unit)}</span>
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
