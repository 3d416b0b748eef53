import { NAMED_SIZES, SIZE_KINDS } from '@lengthwise/plan-file'
import { printLength } from '@lengthwise/units'
import type { ComponentChildren } from 'preact'
import { Component } from 'preact'
import { useState } from 'preact/hooks'
import type { ItemForm } from './field-spec.ts'
import { PickList, SizeField, TextField } from './fields.tsx'
import { ITEM_FORMS } from './item-fields.ts'
import { Picture } from './picture.tsx'
import { isRecord, textOf } from './plan.ts'
import type { Scope } from './scope.ts'
import { below, idOf } from './scope.ts'
import type { FaceSeams } from './seams.ts'
import { SpecFields } from './spec-field.tsx'

/** One thing to sew: words and boxes, and a picture of it finished, at one scale with all the others. */
export class ThingToSew extends Component<{
  readonly scope: Scope
  readonly index: number
  readonly seams: FaceSeams
  readonly onRemove: () => void
}> {
  // a plan of hundreds of things redraws only the one that changed
  override shouldComponentUpdate(next: this['props']): boolean {
    const { scope, index } = this.props
    return (
      next.index !== index ||
      next.seams !== this.props.seams ||
      next.scope.value !== scope.value ||
      next.scope.measureIn !== scope.measureIn ||
      next.scope.problems !== scope.problems ||
      next.scope.cloths !== scope.cloths
    )
  }

  override render(): ComponentChildren {
    const { scope, onRemove } = this.props
    const kind = textOf(below(scope, 'item'))
    const form = ITEM_FORMS[kind]
    const heading = idOf(`make[${this.props.index}]`)
    return (
      <section class="thing" aria-labelledby={heading}>
        <div>
          <h3 id={heading} tabIndex={-1}>
            {nameOfThing(scope.value)}
          </h3>
          {form ? (
            <ThingFields scope={scope} form={form} />
          ) : (
            <p>
              This plan asks for something that is not in the list of things to sew. Take it out, or mend the plan file.
            </p>
          )}
          <p>
            <button type="button" class="link" onClick={onRemove}>
              Remove {lower(nameOfThing(scope.value))}
            </button>
          </p>
        </div>
        <Picture scope={scope} seams={this.props.seams} />
      </section>
    )
  }
}

export function nameOfThing(item: unknown): string {
  const kind = isRecord(item) ? textOf(item.item) : ''
  const name = isRecord(item) ? textOf(item.name) : ''
  const words = ITEM_FORMS[kind]?.words ?? 'Something else'
  return name === '' ? words : name.charAt(0).toUpperCase() + name.slice(1)
}

const lower = (words: string): string => words.charAt(0).toLowerCase() + words.slice(1)

function ThingFields({ scope, form }: { readonly scope: Scope; readonly form: ItemForm }): ComponentChildren {
  const kind = textOf(below(scope, 'item'))
  const [all, setAll] = useState(false)
  return (
    <>
      <div class="pair">
        <TextField scope={scope} name="count" label="How many?" kind="count" />
        <NamedSize scope={scope} kind={kind} form={form} />
      </div>
      <Measures scope={scope} kind={kind} form={form} />
      <SpecFields scope={scope} specs={form.first} />
      <p>
        <button type="button" class="link" aria-expanded={all} onClick={() => setAll(!all)}>
          {all ? 'Hide these again' : form.moreWords}
        </button>
      </p>
      {all && <SpecFields scope={scope} specs={form.more} />}
    </>
  )
}

const OWN = 'own'
const INSERT = 'insert'

/** Sizes by region, or one's own measures. */
function NamedSize(props: {
  readonly scope: Scope
  readonly kind: string
  readonly form: ItemForm
}): ComponentChildren {
  const { scope, kind, form } = props
  const sizes = namedFor(kind)
  if (sizes.length === 0) return null
  const named = textOf(below(scope, 'size'))
  const regions = [...new Set(sizes.map((size) => size.region))]
  const own = [
    { value: OWN, words: 'My own measures' },
    ...(form.insert ? [{ value: INSERT, words: form.insert }] : []),
    ...(named !== '' && !sizes.some((size) => size.name === named) ? [{ value: named, words: named }] : []),
  ]
  return (
    <PickList
      scope={scope}
      name="size"
      label="Size"
      groups={[
        { label: '', options: own },
        ...regions.map((region) => ({
          label: region,
          options: sizes
            .filter((size) => size.region === region)
            .map((size) => ({ value: size.name, words: `${size.words}, ${measures(size.size, scope.measureIn)}` })),
        })),
      ]}
      chosen={named !== '' ? named : below(scope, 'insert') !== undefined ? INSERT : OWN}
      onChoose={(choice) => choose(scope, kind, choice)}
    />
  )
}

/** The key that holds the measures of an item when it has no named size. */
export const MEASURE_KEYS: Readonly<Record<string, string>> = {
  'fitted-sheet': 'mattress',
  'bed-skirt': 'base',
  'quilt-back': 'quilt',
}

function choose(scope: Scope, kind: string, choice: string): void {
  const own = MEASURE_KEYS[kind] ?? 'finished'
  const item = isRecord(scope.value) ? { ...scope.value } : {}
  const before = namedFor(kind).find((size) => size.name === item.size)
  const text = before ? measures(before.size, scope.measureIn, ' x ') : textOf(item[own]) || textOf(item.insert)
  for (const key of ['size', own, INSERT]) delete item[key]
  if (choice === OWN) item[own] = text
  else if (choice === INSERT) item.insert = text
  else item.size = choice
  scope.change(scope.base, item)
}

function namedFor(kind: string): typeof NAMED_SIZES {
  const kinds: readonly string[] = SIZE_KINDS[kind as keyof typeof SIZE_KINDS] ?? []
  return NAMED_SIZES.filter((size) => kinds.includes(size.kind))
}

/** The boxes for the measures, where no named size stands for them. */
function Measures(props: { readonly scope: Scope; readonly kind: string; readonly form: ItemForm }): ComponentChildren {
  const { scope, kind, form } = props
  if (textOf(below(scope, 'size')) !== '' && kind !== 'fitted-sheet') return null
  if (below(scope, 'insert') !== undefined)
    return <SizeField scope={scope} name="insert" labels={['Duvet, width', 'Duvet, length']} />
  if (kind === 'rectangle') return <RectangleSize scope={scope} />
  if (form.size === null) return null
  return <SizeField scope={scope} name={MEASURE_KEYS[kind] ?? 'finished'} labels={form.size} />
}

function RectangleSize({ scope }: { readonly scope: Scope }): ComponentChildren {
  const asCut = below(scope, 'cut') !== undefined
  return asCut ? (
    <SizeField scope={scope} name="cut" labels={['Width as cut', 'Length as cut']} />
  ) : (
    <SizeField scope={scope} name="finished" labels={['Finished width', 'Finished length']} />
  )
}

function measures(size: (typeof NAMED_SIZES)[number]['size'], unit: 'cm' | 'mm' | 'in', cross = ' × '): string {
  return `${printLength(size.width, unit, { bare: true })}${cross}${printLength(size.length, unit)}`
}
