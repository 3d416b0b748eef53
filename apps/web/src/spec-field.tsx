import type { ComponentChildren } from 'preact'
import type { FieldSpec } from './field-spec.ts'
import { Choice, ClothField, LengthField, SizeField, TextField } from './fields.tsx'
import { isRecord } from './plan.ts'
import type { Scope } from './scope.ts'
import { below, setBelow } from './scope.ts'

/** The fields of a list that apply just now. */
export function SpecFields(props: { readonly scope: Scope; readonly specs: readonly FieldSpec[] }): ComponentChildren {
  const get = (key: string): unknown => below(props.scope, key)
  return props.specs
    .filter((spec) => spec.when === undefined || spec.when(get))
    .map((spec) => <SpecField key={spec.key} scope={props.scope} spec={spec} />)
}

function SpecField({ scope, spec }: { readonly scope: Scope; readonly spec: FieldSpec }): ComponentChildren {
  const shared = { scope, name: spec.key, label: spec.label, hint: spec.hint }
  switch (spec.kind) {
    case 'length': {
      const usual = spec.usual?.[scope.measureIn === 'in' ? 1 : 0]
      return <LengthField {...shared} hint={usual ? `${usual} if left empty` : spec.hint} />
    }
    case 'size':
      return <SizeField scope={scope} name={spec.key} labels={spec.labels} />
    case 'cloths':
      return <ClothField {...shared} />
    case 'choice': {
      const said = below(scope, spec.key)
      const { keeps } = spec
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
