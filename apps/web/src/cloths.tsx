import type { ComponentChildren } from 'preact'
import { ClothSection, freshCloth } from './cloth.tsx'
import { Choice } from './fields.tsx'
import type { Plan } from './plan.ts'
import { at, isRecord, listOf, namesOf, put, textOf } from './plan.ts'
import { focusSoon } from './problems.tsx'
import { roundInches } from './round-inches.ts'
import type { Scope } from './scope.ts'
import { below, measureInOf } from './scope.ts'

/** When the cloth is washed: what holds for all of it. */
export function Washing({ scope }: { readonly scope: Scope }): ComponentChildren {
  return (
    <Choice
      scope={scope}
      name="wash"
      label="When is the cloth washed first?"
      options={[
        { value: 'before-cutting', words: 'Before cutting', hint: 'The cloth shrinks, the pieces do not' },
        { value: 'after-sewing', words: 'After sewing', hint: 'The pieces are cut larger' },
        { value: 'none', words: 'Leave shrinkage out' },
      ]}
      chosen={textOf(below(scope, 'wash'))}
    />
  )
}

/** Every cloth, bought or owned, and the way to add more. */
export function Cloths(props: {
  readonly plan: Plan
  readonly scope: (base: Scope['base']) => Scope
  readonly onPlan: (step: (plan: Plan) => Plan, typing?: string) => void
}): ComponentChildren {
  const { plan, scope, onPlan } = props
  const cloths = listOf(plan.cloth)
  const add = (from: 'bolt' | 'sheet' | 'remnant'): void => {
    const taken = cloths.map((cloth) => (isRecord(cloth) ? textOf(cloth.name) : ''))
    const cloth = freshCloth(from, taken)
    onPlan((now) => ({
      ...now,
      cloth: [...listOf(now.cloth), measureInOf(now) === 'in' ? roundInches(cloth) : cloth],
    }))
    focusSoon(`cloth[${cloths.length}]`)
  }
  return (
    <>
      {cloths.map((_, n) => (
        <ClothSection
          key={n}
          scope={scope(['cloth', n])}
          index={n}
          onRename={(name) => onPlan((now) => renamed(now, n, name), `name of cloth ${n}`)}
          onRemove={() => {
            onPlan((now) => ({ ...now, cloth: listOf(now.cloth).filter((_, other) => other !== n) }))
            focusSoon(`cloth[${Math.max(0, n - 1)}]`)
          }}
        />
      ))}
      <p class="buttons" id="more-cloth" tabIndex={-1}>
        <button type="button" class="outlined" onClick={() => add('bolt')}>
          Add cloth off the bolt
        </button>
        <button type="button" class="outlined" onClick={() => add('sheet')}>
          Add flat sheets I have
        </button>
        <button type="button" class="outlined" onClick={() => add('remnant')}>
          Add a remnant I have
        </button>
      </p>
    </>
  )
}

/** A cloth's name changed, in the cloth itself and wherever a thing to sew names it. */
function renamed(plan: Plan, n: number, name: string): Plan {
  const before = textOf(at(plan, ['cloth', n, 'name']))
  const others = listOf(plan.cloth).some((cloth, other) => other !== n && isRecord(cloth) && cloth.name === before)
  const next = put(plan, ['cloth', n, 'name'], name)
  if (before === '' || others) return next
  const follow = (value: unknown, key: string): unknown => {
    if (/cloth$/.test(key)) {
      const names = namesOf(value).map((one) => (one === before ? name : one))
      return Array.isArray(value) ? names : typeof value === 'string' ? names[0] : value
    }
    if (Array.isArray(value)) return value.map((one) => follow(one, key))
    if (!isRecord(value)) return value
    return Object.fromEntries(Object.entries(value).map(([inner, one]) => [inner, follow(one, inner)]))
  }
  return { ...next, make: listOf(plan.make).map((item) => follow(item, '')) }
}
