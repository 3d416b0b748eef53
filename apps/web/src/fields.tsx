import { printLength, readLength } from '@lengthwise/units'
import type { ComponentChildren } from 'preact'
import { useState } from 'preact/hooks'
import { joinSize, namesOf, splitSize, textOf, withoutUnit } from './plan.ts'
import { unbroken } from './said.ts'
import type { Scope } from './scope.ts'
import { below, fieldId, problemsAt, setBelow, typeBelow, UNIT_WORDS } from './scope.ts'

/** What every field has: a label above it, at most one hint, and its problem in words. */
interface FieldProps {
  readonly scope: Scope
  readonly name: string
  readonly label: string
  readonly hint?: string | undefined
}

/** A length in any unit; what was understood stands under it when it is not a plain number of the plan's unit. */
export function LengthField(
  props: FieldProps & { readonly emptied?: readonly [key: string, value: string] | undefined },
): ComponentChildren {
  const { scope, name, label, hint, emptied } = props
  const type = (next: string): void => {
    if (next.trim() !== '') typeBelow(scope, name, next)
    else if (emptied) typeBelow(scope, emptied[0], emptied[1])
    else typeBelow(scope, name, undefined)
  }
  const text = withoutUnit(textOf(below(scope, name)), scope.measureIn)
  return (
    <Box
      id={fieldId(scope, name)}
      label={withUnit(label, scope.measureIn)}
      hint={hint}
      text={text}
      unit={scope.measureIn}
      width={7}
      echo={readAs(text, scope.measureIn)}
      problem={problemWords(scope, name)}
      onText={type}
    />
  )
}

/** Several lengths in one box. A comma before a space or a semicolon stands between them: `137,5, 180` are two. */
export function LengthsField(props: FieldProps): ComponentChildren {
  const { scope, name, label, hint } = props
  const said = below(scope, name)
  const lengths = (Array.isArray(said) ? said : [said]).map((one) => withoutUnit(textOf(one), scope.measureIn))
  const type = (text: string): void => {
    const parts = text.split(/;|,\s+|,$/).map((part) => part.trim())
    const kept = parts.filter((part) => part !== '')
    typeBelow(scope, name, kept.length === 0 ? undefined : kept)
  }
  return (
    <Box
      id={fieldId(scope, name)}
      label={withUnit(label, scope.measureIn)}
      hint={hint}
      text={lengths.filter((one) => one !== '').join('; ')}
      unit={scope.measureIn}
      width={18}
      problem={problemWords(scope, name)}
      onText={type}
    />
  )
}

/** `Width, in centimetres (optional)`: readers do not say the sign behind the box. */
const withUnit = (label: string, unit: Scope['measureIn']): string =>
  label.replace(/( \(optional\))?$/, (optional) => `, in ${UNIT_WORDS[unit]}${optional}`)

/** A size in two or three boxes: one value of the plan, across the bed first. */
export function SizeField(
  props: Pick<FieldProps, 'scope' | 'name'> & { readonly labels: readonly string[] },
): ComponentChildren {
  const { scope, name, labels } = props
  const unit = scope.measureIn
  const boxes = splitSize(textOf(below(scope, name)), labels.length, unit)
  const set = (changed: number, text: string): void =>
    typeBelow(
      scope,
      name,
      joinSize(
        boxes.map((box, n) => (n === changed ? text : box)),
        unit,
      ),
      changed,
    )
  const id = fieldId(scope, name)
  const problem = problemWords(scope, name)
  return (
    <div class="pair">
      {labels.map((label, n) => (
        <Box
          key={label}
          id={n === 0 ? id : `${id}-${n + 1}`}
          label={withUnit(label, unit)}
          text={boxes[n] ?? ''}
          unit={unit}
          width={7}
          echo={readAs(boxes[n] ?? '', unit)}
          problem={n === 0 ? problem : ''}
          marked={problem !== ''}
          onText={(text) => set(n, text)}
        />
      ))}
    </div>
  )
}

/** A whole number, a share or a word: as it is typed. Whole numbers are kept as numbers. */
export function TextField(
  props: FieldProps & { readonly kind: 'count' | 'percent' | 'price' | 'words'; readonly wide?: boolean },
): ComponentChildren {
  const { scope, name, label, hint, kind } = props
  const shown = textOf(below(scope, name))
  const store = (next: string): void => {
    const text = next.trim()
    const kept = kind === 'count' && /^\d{1,6}$/.test(text) ? Number(text) : kind === 'words' ? next : withSuffix(text)
    typeBelow(scope, name, text === '' ? undefined : kept)
  }
  const withSuffix = (text: string): string => (kind === 'percent' && /[\d]$/.test(text) ? `${text} %` : text)
  return (
    <Box
      id={fieldId(scope, name)}
      label={label}
      hint={hint}
      text={kind === 'percent' ? shown.replace(/\s*%$/, '') : shown}
      unit={kind === 'percent' ? '%' : undefined}
      width={kind === 'words' ? (props.wide ? 30 : 18) : kind === 'price' ? 7 : 4}
      mode={kind === 'count' ? 'numeric' : kind === 'percent' || kind === 'price' ? 'decimal' : 'text'}
      problem={problemWords(scope, name)}
      onText={store}
    />
  )
}

export interface Option {
  /** what the plan says; `undefined` leaves the key out */
  readonly value: unknown
  readonly words: string
  readonly hint?: string
}

/** One of a few, all in sight. */
export function Choice(
  props: FieldProps & {
    readonly options: readonly Option[]
    readonly chosen: unknown
    readonly onChoose?: (value: unknown) => void
    readonly inRow?: boolean
    /** a box edits the same key: it has the name in the document, and the problems */
    readonly beside?: boolean
  },
): ComponentChildren {
  const { scope, name, label, hint, options, chosen } = props
  const id = `${fieldId(scope, name)}${props.beside ? '-kind' : ''}`
  const problem = props.beside ? '' : problemWords(scope, name)
  return (
    <fieldset id={id} class="choice" tabIndex={-1} aria-describedby={describedBy(id, hint, problem)}>
      <legend>{label}</legend>
      {hint && (
        <p class="hint" id={`${id}-hint`}>
          {hint}
        </p>
      )}
      <ProblemLine id={id} words={problem} />
      <div class={props.inRow ? 'options row' : 'options'}>
        {options.map((option) => (
          <label key={String(option.value)} class="option">
            <input
              type="radio"
              name={id}
              checked={option.value === chosen}
              onChange={() => (props.onChoose ?? ((value) => setBelow(scope, name, value)))(option.value)}
            />
            <span>
              {option.words}
              {option.hint && <span class="hint under">{option.hint}</span>}
            </span>
          </label>
        ))}
      </div>
    </fieldset>
  )
}

/** One of many: a list that opens. */
export function PickList(
  props: FieldProps & {
    readonly groups: readonly { readonly label: string; readonly options: readonly Option[] }[]
    readonly chosen: string
    readonly onChoose: (value: string) => void
  },
): ComponentChildren {
  const { scope, name, label, hint, groups, chosen } = props
  const id = fieldId(scope, name)
  const problem = problemWords(scope, name)
  return (
    <div class="field">
      <label for={id}>{label}</label>
      {hint && (
        <p class="hint" id={`${id}-hint`}>
          {hint}
        </p>
      )}
      <ProblemLine id={id} words={problem} />
      <select
        id={id}
        value={chosen}
        aria-describedby={describedBy(id, hint, problem)}
        onChange={(event) => props.onChoose(event.currentTarget.value)}
      >
        {groups.map((group) =>
          group.label === '' ? (
            group.options.map(optionOf)
          ) : (
            <optgroup key={group.label} label={group.label}>
              {group.options.map(optionOf)}
            </optgroup>
          ),
        )}
      </select>
    </div>
  )
}

const optionOf = (option: Option): ComponentChildren => (
  <option key={String(option.value)} value={String(option.value)}>
    {option.words}
  </option>
)

export function Tick(
  props: FieldProps & { readonly ticked: boolean; readonly onTick: (ticked: boolean) => void },
): ComponentChildren {
  const id = fieldId(props.scope, props.name)
  return (
    <div class="field">
      <label class="option">
        <input
          id={id}
          type="checkbox"
          checked={props.ticked}
          onChange={(event) => props.onTick(event.currentTarget.checked)}
        />
        <span>
          {props.label}
          {props.hint && <span class="hint under">{props.hint}</span>}
        </span>
      </label>
      <ProblemLine id={id} words={problemWords(props.scope, props.name)} />
    </div>
  )
}

/** Which of the plan's cloths may serve: one name, or several. Not asked while there is only one. */
export function ClothField(props: FieldProps): ComponentChildren {
  const { scope, name, label } = props
  const chosen = namesOf(below(scope, name))
  const unknown = chosen.filter((cloth) => !scope.cloths.includes(cloth))
  if (scope.cloths.length < 2 && unknown.length === 0 && problemsAt(scope, name).length === 0)
    return props.hint === undefined ? null : (
      <p>
        <a href="#more-cloth">{props.hint}</a>
      </p>
    )
  const id = fieldId(scope, name)
  const problem = problemWords(scope, name)
  const toggle = (cloth: string, on: boolean): void => {
    const next = [...scope.cloths, ...unknown].filter((other) => (other === cloth ? on : chosen.includes(other)))
    setBelow(scope, name, next.length > 1 ? next : next[0])
  }
  return (
    <fieldset id={id} class="choice" tabIndex={-1} aria-describedby={describedBy(id, undefined, problem)}>
      <legend>{label}</legend>
      <ProblemLine id={id} words={problem} />
      <div class="options">
        {[...scope.cloths, ...unknown].map((cloth) => (
          <label key={cloth} class="option">
            <input
              type="checkbox"
              checked={chosen.includes(cloth)}
              onChange={(event) => toggle(cloth, event.currentTarget.checked)}
            />
            <span>{cloth}</span>
          </label>
        ))}
      </div>
    </fieldset>
  )
}

interface BoxProps {
  readonly id: string
  readonly label: string
  readonly hint?: string | undefined
  readonly text: string
  readonly unit?: string | undefined
  readonly width: number
  readonly mode?: 'text' | 'numeric' | 'decimal'
  readonly echo?: string
  readonly problem?: string
  /** its problem stands at the box before it */
  readonly marked?: boolean
  /** what stands after the box, such as its button */
  readonly after?: ComponentChildren
  readonly onText: (text: string) => void
}

/** A box to write in. While someone writes, it shows what is written, not what the plan makes of it. */
export function Box(props: BoxProps): ComponentChildren {
  const { id, hint, problem = '' } = props
  const [draft, setDraft] = useState<string | null>(null)
  // while a box is being written in, its problem waits until the hand has left it
  const told = draft === null ? problem : ''
  return (
    <div class={told ? 'field wrong' : 'field'}>
      <label for={id}>{props.label}</label>
      {hint && (
        <p class="hint" id={`${id}-hint`}>
          {hint}
        </p>
      )}
      <ProblemLine id={id} words={told} />
      <div class="entry">
        <input
          id={id}
          type="text"
          inputMode={props.mode ?? 'text'}
          autocomplete="off"
          spellcheck={false}
          style={{ width: `calc(${props.width}ch + 28px)` }}
          value={draft ?? props.text}
          aria-invalid={told !== '' || props.marked === true ? 'true' : undefined}
          aria-describedby={describedBy(id, hint, told, props.echo)}
          onInput={(event) => {
            setDraft(event.currentTarget.value)
            props.onText(event.currentTarget.value)
          }}
          onBlur={() => setDraft(null)}
        />
        {props.unit && (
          <span class="unit" aria-hidden="true">
            {props.unit}
          </span>
        )}
        {props.after}
      </div>
      {props.echo && (
        <p class="read-as" id={`${id}-read`}>
          {props.echo}
        </p>
      )}
    </div>
  )
}

function ProblemLine(props: { readonly id: string; readonly words: string }): ComponentChildren {
  return props.words === '' ? null : (
    <p class="problem" id={`${props.id}-problem`}>
      <span class="unseen">Problem: </span>
      {props.words}
    </p>
  )
}

function describedBy(id: string, hint: string | undefined, problem: string, echo = ''): string | undefined {
  const ids = [hint && `${id}-hint`, problem && `${id}-problem`, echo && `${id}-read`].filter(Boolean)
  return ids.length > 0 ? ids.join(' ') : undefined
}

function problemWords(scope: Scope, name: string): string {
  return problemsAt(scope, name)
    .map((problem) => `${problem.message}. ${problem.hint}`)
    .join(' ')
}

/** `Read as 54 1/8 in (137.5 cm)`: only where it is not plain that it was understood. */
function readAs(text: string, measureIn: 'cm' | 'mm' | 'in'): string {
  if (text.trim() === '' || /^\s*\d+([.,]\d{1,2})?\s*$/.test(text)) return ''
  const read = readLength(text, { measureIn })
  if (!read.ok) return ''
  const typedInches = measureIn === 'in' ? !/m\s*$/i.test(text) : /(in|inch|inches|ft|yd|["'″′”])\.?\s*$/i.test(text)
  // what was typed is said exactly, the other unit as near as it can be measured
  const inch = printLength(read.value, 'in', { noBreak: true, finest: typedInches ? 64 : 8 })
  const metric = printLength(read.value, 'cm', { noBreak: true, places: typedInches ? 1 : 4 })
  return unbroken(typedInches ? `Read as ${inch} (${metric})` : `Read as ${metric} (${inch})`)
}
