import { WORDS } from '@lengthwise/drawing'
import type { Problem } from '@lengthwise/units'
import type { ComponentChildren } from 'preact'
import { useEffect, useMemo, useRef, useState } from 'preact/hooks'
import type { Answer } from './answer.ts'
import { Answerer, askOnce, NO_ANSWER } from './answer.ts'
import { WhatToBuy } from './buy.tsx'
import { Cloths, Washing } from './cloths.tsx'
import { WhereToCut } from './cut.tsx'
import { EXAMPLES } from './examples.ts'
import { Choice, TextField } from './fields.tsx'
import { kept, LARGEST_PLAN } from './files.ts'
import { measuredIn } from './measured-in.ts'
import type { Plan } from './plan.ts'
import { at, isRecord, listOf, textOf, writeOut } from './plan.ts'
import { PLAN_FIELDS } from './plan-fields.ts'
import { ProblemSummary } from './problems.tsx'
import type { Unit } from './said.ts'
import type { Scope } from './scope.ts'
import { inside, measureInOf } from './scope.ts'
import { nameOfThing } from './sew.tsx'
import { SpecFields } from './spec-field.tsx'
import type { History } from './store.ts'
import { begin, change, redo, replace, undo } from './store.ts'
import { TakeToTheTable } from './take.tsx'
import { Things } from './things.tsx'
import { InTheShop, SoFar } from './top.tsx'

// whoever has not touched a box for so long has finished writing in it
const WRITING = 2000

/** The whole page: one column, read from top to bottom. */
export function App(): ComponentChildren {
  const [history, setHistory] = useState<History>(() => begin(EXAMPLES[0].plan))
  const [answer, setAnswer] = useState<Answer>(NO_ANSWER)
  const [refused, setRefused] = useState<readonly Problem[]>([])
  const [asked, setAsked] = useState(false)
  const [opening, setOpening] = useState(false)
  const [settled, setSettled] = useState(true)
  const answerer = useRef<Answerer | null>(null)
  const { plan } = history
  const told = settled ? answer.problems : []

  useEffect(() => {
    answerer.current = new Answerer(setAnswer)
    const before = kept.read()
    if (before !== null) openText(before, false)
    return () => answerer.current?.stop()
  }, [])
  useEffect(() => {
    answerer.current?.ask(plan)
    setOpening(false)
    // what is wrong with a half-written number is not called out while it is being written
    const writing = document.activeElement instanceof HTMLInputElement && document.activeElement.type === 'text'
    setSettled(!writing)
    const timer = setTimeout(() => setSettled(true), WRITING)
    return () => clearTimeout(timer)
  }, [plan])
  useEffect(() => {
    document.title = `${told.length > 0 ? 'Problem: ' : ''}How much cloth, and where to cut`
  }, [told.length])
  useEffect(() => {
    if (answer.current) setAsked(false)
  }, [answer.current])
  useEffect(() => {
    const onKey = (event: KeyboardEvent): void => {
      const writing = event.target instanceof HTMLInputElement && event.target.type === 'text'
      if (writing || !(event.ctrlKey || event.metaKey) || event.key.toLowerCase() !== 'z') return
      event.preventDefault()
      setHistory(event.shiftKey ? redo : undo)
    }
    addEventListener('keydown', onKey)
    return () => removeEventListener('keydown', onKey)
  }, [])

  const alter = useMemo<Scope['change']>(
    () => (path, value, typing) => setHistory((now) => change(now, path, value, typing)),
    [],
  )
  const exchange = (next: Plan): void => setHistory((now) => replace(now, next))
  // every step starts from the plan as it is then, not as it was when the button was drawn
  const rearrange = (step: (plan: Plan) => Plan, typing?: string): void =>
    setHistory((now) => replace(now, step(now.plan), typing))

  async function openText(text: string, tell = true): Promise<void> {
    setOpening(true)
    const opened = await askOnce({ ask: 'open', text })
    if (opened.tell === 'opened' && opened.outcome.ok) {
      exchange(writeOut(opened.outcome.value))
      setRefused([])
      setAsked(tell)
    } else {
      setOpening(false)
      setRefused(
        opened.tell === 'opened' && !opened.outcome.ok
          ? opened.outcome.problems
          : [unreadable(opened.tell === 'fault' ? opened.message : 'It is no plan')],
      )
    }
  }

  async function open(input: HTMLInputElement): Promise<void> {
    const file = input.files?.[0]
    input.value = ''
    if (file === undefined) return
    if (file.size > LARGEST_PLAN) setRefused([unreadable('The file is larger than 1 MB')])
    else await openText(await file.text())
  }

  const measureIn = measureInOf(plan)
  const currency = textOf(plan.currency)
  const clothNames = useSame(listOf(plan.cloth).map((cloth) => (isRecord(cloth) ? textOf(cloth.name) : '')))
  const problemsBelow = useProblemsBelow(answer.problems)
  const scope = (base: Scope['base']): Scope => ({
    base,
    value: at(plan, base),
    change: alter,
    measureIn,
    currency,
    cloths: clothNames,
    problems: base.length === 0 ? answer.problems : problemsBelow(base),
  })
  const whole = scope([])
  const nameOf = (path: string): string => {
    const [, list, n] = /^(make|cloth)\[(\d+)\]/.exec(path) ?? []
    const one = list === undefined ? undefined : at(plan, [list, Number(n)])
    return list === 'make' ? nameOfThing(one) : isRecord(one) ? textOf(one.name) : ''
  }

  return (
    <>
      <a class="skip" href="#buy">
        Go to what to buy
      </a>
      <header>
        <p>Works without the internet. What you type stays on this device.</p>
        <label class="link open">
          Open a plan you saved
          <input
            type="file"
            accept=".yaml,.yml,.json,.plan,text/plain,application/json"
            onChange={(event) => open(event.currentTarget)}
          />
        </label>
      </header>
      <main data-answer={opening || answer.working ? 'working' : 'there'} onFocusOut={() => setSettled(true)}>
        <ProblemSummary
          problems={refused}
          focus={refused.length > 0}
          lead="The file was not opened; what was here before is still here."
        />
        <ProblemSummary problems={refused.length > 0 ? [] : told} nameOf={nameOf} focus={asked} />
        <h1>How much cloth, and where to cut</h1>
        <SoFar answer={answer} problems={told.length} onStop={() => answerer.current?.stop()} />
        <InTheShop plan={plan} answer={answer} change={alter} />

        <section aria-labelledby="sewing-what">
          <h2 id="sewing-what" tabIndex={-1}>
            What are you sewing?
          </h2>
          <Start onStart={exchange} />
          <TextField scope={whole} name="title" label="Name of this plan (optional)" kind="words" wide />
          <Choice
            scope={whole}
            name="measure-in"
            label="Measure in"
            hint="You can type the other with its sign, such as 4 cm or 1 5/8 in"
            options={[
              { value: 'cm', words: 'Centimetres' },
              { value: 'in', words: 'Inches' },
              { value: 'mm', words: 'Millimetres' },
            ]}
            chosen={measureIn}
            onChoose={(unit) => setHistory((now) => measuredIn(now, unit as Unit))}
            inRow
          />
          <Things plan={plan} result={answer.result} scope={scope} onPlan={rearrange} />
          <WholePlan scope={whole} />
          <Undoing history={history} onHistory={setHistory} />
        </section>

        <section aria-labelledby="cloth-what">
          <h2 id="cloth-what">What cloth?</h2>
          <Washing scope={whole} />
          <Cloths plan={plan} scope={scope} onPlan={rearrange} />
          <Undoing history={history} onHistory={setHistory} />
        </section>

        <section aria-labelledby="buy" class={answer.current ? 'answers' : 'answers before'}>
          <h2 id="buy" tabIndex={-1}>
            What to buy
          </h2>
          <Standing answer={answer} />
          {answer.result && <WhatToBuy result={answer.result} />}
        </section>

        {answer.result?.status === 'laid' && (
          <section aria-labelledby="cut" class={answer.current ? 'answers' : 'answers before'}>
            <h2 id="cut">Where to cut</h2>
            <Standing answer={answer} />
            <WhereToCut result={answer.result} />
          </section>
        )}

        <section aria-labelledby="take" class="take">
          <h2 id="take">Take it to the table</h2>
          <TakeToTheTable
            plan={plan}
            result={answer.current ? answer.result : null}
            onForget={() => setHistory(begin(EXAMPLES[0].plan))}
          />
        </section>
      </main>
      <footer>
        <details>
          <summary>Words used here</summary>
          <dl>
            {WORDS.map((word) => (
              <div key={word.term}>
                <dt>{word.term}</dt>
                <dd>{word.meaning}</dd>
              </div>
            ))}
          </dl>
        </details>
        <details>
          <summary>How the figures are worked out</summary>
          <p>
            Every piece is its finished size with seams, hems and shrinkage added, rounded up to what can be marked. The
            pieces are then laid on the cloth in every way the cloth and its print allow, until no shorter layout can
            exist or the time set aside is used up; the page says which. Before anything is shown, a second reckoning
            checks that no pieces overlap, that the tears free every piece, and that the sewn thing has the size you
            asked for.
          </p>
          <p>
            Not used is what is left of all cloth bought or taken from what you have, as it lies on the table. Worth
            keeping is the share of the whole that remains in remnants large enough to list.
          </p>
        </details>
      </footer>
    </>
  )
}

const unreadable = (message: string): Problem => ({
  code: 'unreadable',
  path: '',
  message,
  hint: 'Choose a plan that was saved here or written for the command',
})

function Standing({ answer }: { readonly answer: Answer }): ComponentChildren {
  if (answer.current) return null
  if (answer.result === null) return <p>There is no answer yet.</p>
  return <p class="hint earlier">From before the last change</p>
}

/** Plans to start from. */
function Start({ onStart }: { readonly onStart: (plan: Plan) => void }): ComponentChildren {
  return (
    <details class="start">
      <summary>Start from an example</summary>
      <ul class="plain">
        {EXAMPLES.map((example) => (
          <li key={example.words}>
            <button type="button" class="link" onClick={() => onStart(example.plan)}>
              {example.words}
            </button>
          </li>
        ))}
      </ul>
    </details>
  )
}

function WholePlan({ scope }: { readonly scope: Scope }): ComponentChildren {
  const [all, setAll] = useState(false)
  return (
    <>
      <p>
        <button type="button" class="link" aria-expanded={all} onClick={() => setAll(!all)}>
          {all ? 'Hide these again' : 'Change the seams, the marking step or the date'}
        </button>
      </p>
      {all && <SpecFields scope={scope} specs={PLAN_FIELDS} />}
    </>
  )
}

function Undoing(props: {
  readonly history: History
  readonly onHistory: (next: (now: History) => History) => void
}): ComponentChildren {
  const { history, onHistory } = props
  return (
    <p class="buttons undoing">
      <button type="button" class="link" disabled={history.past.length === 0} onClick={() => onHistory(undo)}>
        Undo the last change
      </button>
      <button type="button" class="link" disabled={history.future.length === 0} onClick={() => onHistory(redo)}>
        Do it again
      </button>
    </p>
  )
}

/** The same list as before while its entries are the same, so that nothing is drawn anew for it. */
function useSame(list: readonly string[]): readonly string[] {
  const last = useRef(list)
  if (last.current.join('\n') !== list.join('\n')) last.current = list
  return last.current
}

const NO_PROBLEMS: readonly Problem[] = []

/** Problems by the thing or cloth they belong to; the same empty list for all that have none. */
function useProblemsBelow(problems: readonly Problem[]): (base: Scope['base']) => readonly Problem[] {
  return useMemo(() => {
    const found = new Map<string, readonly Problem[]>()
    return (base) => {
      const path = `${base[0]}[${base[1]}]`
      if (problems.length === 0) return NO_PROBLEMS
      const before = found.get(path)
      if (before !== undefined) return before
      const own = problems.filter((problem) => problem.path === path || inside(problem.path, path))
      const kept = own.length === 0 ? NO_PROBLEMS : own
      found.set(path, kept)
      return kept
    }
  }, [problems])
}
