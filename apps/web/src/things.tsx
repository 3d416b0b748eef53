import type { Result } from '@lengthwise/planner'
import type { ComponentChildren } from 'preact'
import { useMemo, useState } from 'preact/hooks'
import { ITEM_FORMS } from './item-fields.ts'
import { memo } from './memo.tsx'
import type { Plan } from './plan.ts'
import { at, isRecord, listOf, put, textOf } from './plan.ts'
import { focusSoon } from './problems.tsx'
import { roundInches } from './round-inches.ts'
import type { Scope } from './scope.ts'
import { idOf, measureInOf } from './scope.ts'
import type { FaceSeams } from './seams.ts'
import { NO_SEAMS, seamsOf } from './seams.ts'
import { ThingToSew } from './sew.tsx'

// a longer list shows its things by name, to be opened one by one
const ALL_OPEN = 12

/** Everything to sew, and the way to add more. */
export function Things(props: {
  readonly plan: Plan
  readonly result: Result | null
  readonly scope: (base: Scope['base']) => Scope
  readonly onPlan: (step: (plan: Plan) => Plan) => void
}): ComponentChildren {
  const { plan, result, scope, onPlan } = props
  const seams = useMemo(() => seamsByThing(result), [result])
  const [kind, setKind] = useState('pillowcase')
  const make = listOf(plan.make)
  const [open, setOpen] = useState<ReadonlySet<number>>(new Set())
  const many = make.length > ALL_OPEN
  const add = (): void => {
    const cloth = textOf(at(plan, ['cloth', 0, 'name']))
    const form = ITEM_FORMS[kind]
    if (form === undefined) return
    const fresh = measureInOf(plan) === 'in' ? roundInches(form.fresh) : form.fresh
    const item = form.clothKeys.reduce((made, key) => put(made, key.split('.'), cloth), fresh)
    onPlan((now) => ({ ...now, make: [...listOf(now.make), item] }))
    setOpen(new Set([...open, make.length]))
    focusSoon(`make[${make.length}]`)
  }
  return (
    <>
      {make.map((item, n) => {
        const remove = (): void => {
          onPlan((now) => ({ ...now, make: listOf(now.make).filter((_, other) => other !== n) }))
          focusSoon(`make[${Math.max(0, n - 1)}]`)
        }
        if (!many || open.has(n))
          return <ThingToSew key={n} scope={scope(['make', n])} index={n} seams={seams(n)} onRemove={remove} />
        return <ClosedThing key={n} item={item} index={n} onOpen={() => setOpen((now) => new Set([...now, n]))} />
      })}
      <form
        class="ask"
        onSubmit={(event) => {
          event.preventDefault()
          add()
        }}
      >
        <div class="field">
          <label for="add-thing">Another thing to sew</label>
          <select id="add-thing" value={kind} onChange={(event) => setKind(event.currentTarget.value)}>
            {Object.entries(ITEM_FORMS).map(([key, form]) => (
              <option key={key} value={key}>
                {form.words}
              </option>
            ))}
          </select>
        </div>
        <button type="submit" class="outlined">
          Add it
        </button>
      </form>
    </>
  )
}

/** Seams by the place of a thing in the plan, each worked out once for an answer. */
function seamsByThing(result: Result | null): (n: number) => FaceSeams {
  const known = new Map<number, FaceSeams>()
  return (n) => {
    if (result === null || result.status !== 'laid') return NO_SEAMS
    const seams = known.get(n) ?? seamsOf(result, n)
    known.set(n, seams)
    return seams
  }
}

const ClosedThing = memo(
  (props: { readonly item: unknown; readonly index: number; readonly onOpen: () => void }): ComponentChildren => {
    const item = isRecord(props.item) ? props.item : {}
    const kind = textOf(item.item)
    const words = textOf(item.name) || ITEM_FORMS[kind]?.words || 'Something else'
    const measure = ['size', 'finished', 'insert', 'mattress', 'base', 'quilt', 'cut']
      .map((key) => textOf(item[key]))
      .find(Boolean)
    return (
      <p class="closed" id={idOf(`make[${props.index}]`)} tabIndex={-1}>
        <span>
          {textOf(item.count) || '1'} × {words}
          {measure ? `, ${measure}` : ''}
        </span>
        <button type="button" class="link" onClick={props.onOpen}>
          Change it<span class="unseen">: {words}</span>
        </button>
      </p>
    )
  },
)
