import type { ComponentChildren } from 'preact'
import type { FieldSpec } from './field-spec.ts'
import { Choice, ClothField, LengthField, LengthsField, SizeField, TextField } from './fields.tsx'
import { isRecord } from './plan.ts'
import type { Scope } from './scope.ts'
import { below, setBelow } from './scope.ts'

/** The fields of a list that apply just now. */
export function SpecFields(props: { readonly scope: Scope; readonly specs: readonly FieldSpec[] }): ComponentChildren {
  const get = (key: string): unknown => below(props.scope, key)
  return props.specs
    .filter((spec) => spec.when === undefined || spec.when(get))
    .map((spec) => <SpecField key={`${spec.kind} ${spec.key}`} scope={props.scope} spec={spec} />)
}

function SpecField({ scope, spec }: { readonly scope: Scope; readonly spec: FieldSpec }): ComponentChildren {
  const shared = { scope, name: spec.key, label: spec.label, hint: spec.hint }
  switch (spec.kind) {
    case 'length': {
      const usual = spec.usual?.[scope.measureIn === 'in' ? 1 : 0]
      return <LengthField {...shared} hint={usual ? `${usual} if left empty` : spec.hint} emptied={spec.emptied} />
    }
    case 'size':
      return <SizeField scope={scope} name={spec.key} labels={spec.labels} />
    case 'lengths':
      return <LengthsField {...shared} />
    case 'cloths':
      return <ClothField {...shared} />
    case 'choice': {
      const said = below(scope, spec.key)
      const { keeps, own } = spec
      if (own) return <OwnLengthChoice scope={scope} spec={spec} own={own} />
      return (
        <Choice
          {...shared}
          options={spec.options}
          chosen={(isRecord(said) ? kindOf(said) : said) ?? spec.usual}
          inRow={spec.inRow ?? false}
          {...(keeps ? { onChoose: (value: unknown) => chooseAnew(scope, spec.key, value, keeps) } : {})}
        />
      )
    }
    default:
      return <TextField {...shared} kind={spec.kind} />
  }
}

type ChoiceSpec = Extract<FieldSpec, { kind: 'choice' }>

/** One of a few words of the plan, or a length in their place. */
function OwnLengthChoice(props: {
  readonly scope: Scope
  readonly spec: ChoiceSpec
  readonly own: NonNullable<ChoiceSpec['own']>
}): ComponentChildren {
  const { scope, spec, own } = props
  const said = below(scope, spec.key) ?? spec.usual
  const isWord = spec.options.some((option) => option.value === said)
  const choose = (value: unknown): void => {
    setBelow(scope, spec.key, value === own.words ? undefined : value)
    if (value === own.words) setBelow(scope, own.key, own.start[scope.measureIn === 'in' ? 1 : 0])
  }
  return (
    <Choice
      scope={scope}
      name={spec.key}
      label={spec.label}
      hint={spec.hint}
      options={[...spec.options, { value: own.words, words: own.words }]}
      chosen={isWord ? said : own.words}
      onChoose={choose}
      beside
    />
  )
}

/** What a longer form of a choice comes to: `{ kept-hem: 2.5 cm }`, `{ count: 4, length: 23 cm }`. */
function kindOf(said: Record<string, unknown>): unknown {
  return said['kept-hem'] !== undefined ? 'kept-hem' : said.count
}

function chooseAnew(scope: Scope, key: string, value: unknown, keeps: readonly string[]): void {
  const [outer = '', inner = ''] = key.split('.')
  const before = below(scope, outer)
  const kept = isRecord(before) ? Object.entries(before).filter(([name]) => keeps.includes(name)) : []
  setBelow(scope, outer, { [inner]: value, ...(value === 'none' ? {} : Object.fromEntries(kept)) })
}
