import type { ComponentChildren } from 'preact'
import { Component } from 'preact'
import { useState } from 'preact/hooks'
import { CLOTH_FIELDS, MORE_CLOTH_FIELDS } from './cloth-fields.ts'
import { Box, Choice, LengthField, SizeField, TextField, Tick } from './fields.tsx'
import { isRecord, listOf, textOf } from './plan.ts'
import type { Scope } from './scope.ts'
import { below, fieldId, idOf, problemsAt, setBelow, typeBelow } from './scope.ts'
import { SpecFields } from './spec-field.tsx'

interface ClothProps {
  readonly scope: Scope
  readonly index: number
  readonly onRename: (name: string) => void
  readonly onRemove: () => void
}

/** One cloth: off the bolt, a flat sheet or a remnant one has. */
export class ClothSection extends Component<ClothProps> {
  override shouldComponentUpdate(next: ClothProps): boolean {
    const { scope } = this.props
    return (
      next.scope.value !== scope.value ||
      next.scope.measureIn !== scope.measureIn ||
      next.scope.currency !== scope.currency ||
      next.scope.problems !== scope.problems ||
      next.index !== this.props.index
    )
  }

  override render(): ComponentChildren {
    const { scope, onRename, onRemove } = this.props
    const from = textOf(below(scope, 'from'))
    const name = textOf(below(scope, 'name'))
    const heading = idOf(`cloth[${this.props.index}]`)
    return (
      <section class="cloth" aria-labelledby={heading}>
        <h3 id={heading} tabIndex={-1}>
          {headingOf(name, from)}
        </h3>
        <Box
          id={fieldId(scope, 'name')}
          label="What you call it"
          text={name}
          width={18}
          problem={problemsAt(scope, 'name')
            .map((problem) => `${problem.message}. ${problem.hint}`)
            .join(' ')}
          onText={onRename}
        />
        {from === 'bolt' ? <Widths scope={scope} /> : <OwnSize scope={scope} from={from} />}
        {from === 'sheet' && <Hems scope={scope} />}
        <PrintWay scope={scope} />
        <Shrinkage scope={scope} />
        <SpecFields scope={scope} specs={CLOTH_FIELDS} />
        <More scope={scope} />
        <p>
          <button type="button" class="link" onClick={onRemove}>
            Remove {name || 'this cloth'}
          </button>
        </p>
      </section>
    )
  }
}

function headingOf(name: string, from: string): string {
  const words = name === '' ? 'A cloth' : name.charAt(0).toUpperCase() + name.slice(1)
  return from === 'bolt' ? `${words}, off the bolt` : from === 'sheet' ? `${words}, flat sheets` : `${words}, a remnant`
}

function Widths({ scope }: { readonly scope: Scope }): ComponentChildren {
  const widths = listOf(below(scope, 'widths'))
  const per = scope.measureIn === 'in' ? 'yd' : 'm'
  const priceWords = `per ${per === 'yd' ? 'yard' : 'metre'}${scope.currency === '' ? '' : `, in ${scope.currency}`}`
  const set = (n: number, width: string, price: string): void =>
    typeBelow(scope, `widths.${n}`, price.trim() === '' ? width : { width, price: withPer(price, per) })
  return (
    <fieldset class="widths" id={fieldId(scope, 'widths')} tabIndex={-1}>
      <legend>Widths to compare</legend>
      <p class="hint">Measure between the selvedges</p>
      {widths.map((entry, n) => {
        const width = textOf(isRecord(entry) ? entry.width : entry)
        const price = isRecord(entry) ? withoutPer(textOf(entry.price), per) : ''
        return (
          <div class="pair" key={n}>
            {isRecord(entry) ? (
              <LengthField scope={scope} name={`widths.${n}.width`} label={`Width ${n + 1}`} />
            ) : (
              <LengthField scope={scope} name={`widths.${n}`} label={`Width ${n + 1}`} />
            )}
            <Box
              id={`${fieldId(scope, `widths.${n}`)}-price`}
              label={`Price ${priceWords} (optional)`}
              text={price}
              width={6}
              mode="decimal"
              problem={problemsAt(scope, `widths.${n}.price`)
                .map((problem) => `${problem.message}. ${problem.hint}`)
                .join(' ')}
              onText={(next) => set(n, width, next)}
            />
            {widths.length > 1 && (
              <button type="button" class="link low" onClick={() => setBelow(scope, `widths.${n}`, undefined)}>
                Take out<span class="unseen"> width {n + 1}</span>
              </button>
            )}
          </div>
        )
      })}
      <p>
        <button type="button" class="link" onClick={() => setBelow(scope, 'widths', [...widths, ''])}>
          Add a width
        </button>
      </p>
      {(textOf(below(scope, 'price')) !== '' || (widths.length > 1 && widths.some((entry) => !isRecord(entry)))) && (
        <Box
          id={fieldId(scope, 'price')}
          label={`One price for the widths without their own, ${priceWords} (optional)`}
          text={withoutPer(textOf(below(scope, 'price')), per)}
          width={6}
          mode="decimal"
          problem={problemsAt(scope, 'price')
            .map((problem) => `${problem.message}. ${problem.hint}`)
            .join(' ')}
          onText={(next) => typeBelow(scope, 'price', next.trim() === '' ? undefined : withPer(next, per))}
        />
      )}
    </fieldset>
  )
}

const withPer = (text: string, per: string): string => (/\d\s*$/.test(text) ? `${text.trim()} per ${per}` : text)
const withoutPer = (text: string, per: string): string => text.replace(new RegExp(`\\s*(?:per|/)\\s*${per}$`), '')

function OwnSize({ scope, from }: { readonly scope: Scope; readonly from: string }): ComponentChildren {
  const labels = from === 'sheet' ? ['Width', 'Hem to hem'] : ['Width', 'Length along the selvedge']
  return (
    <div class="pair">
      <TextField scope={scope} name="count" label="How many?" kind="count" />
      <SizeField scope={scope} name="size" labels={labels} />
    </div>
  )
}

const ENDS = [
  ['head', 'Head hem', 'The deep one'],
  ['foot', 'Foot hem', undefined],
] as const
const SIDES = [
  ['left', 'Left side'],
  ['right', 'Right side'],
] as const

function Hems({ scope }: { readonly scope: Scope }): ComponentChildren {
  const keep = below(scope, 'keep')
  const hemmed = [...ENDS.map(([side, words]) => [side, words] as const), ...SIDES].filter(([side]) =>
    /\d/.test(textOf(below(scope, `hems.${side}`))),
  )
  return (
    <>
      <div class="pair">
        {ENDS.map(([side, words, hint]) => (
          <LengthField key={side} scope={scope} name={`hems.${side}`} label={`${words}, depth`} hint={hint} />
        ))}
      </div>
      {SIDES.map(([side, words]) => {
        const said = textOf(below(scope, `hems.${side}`))
        const kind = said === '' || said === 'none' || said === 'selvedge' ? said || 'none' : 'hem'
        return (
          <div key={side}>
            <Choice
              scope={scope}
              name={`hems.${side}`}
              label={`${words} of the sheet`}
              options={[
                { value: 'selvedge', words: 'A selvedge' },
                { value: 'hem', words: 'A hem' },
                { value: 'none', words: 'Raw' },
              ]}
              chosen={kind}
              onChoose={(value) => setBelow(scope, `hems.${side}`, value === 'hem' ? '1 cm' : value)}
              inRow
              beside={kind === 'hem'}
            />
            {kind === 'hem' && (
              <LengthField
                scope={scope}
                name={`hems.${side}`}
                label={`${words}, depth of the hem`}
                emptied={[`hems.${side}`, ' ']}
              />
            )}
          </div>
        )
      })}
      <Choice
        scope={scope}
        name="keep"
        label="Shall the hems stay finished edges?"
        options={[
          { value: 'may', words: 'They may, where it helps' },
          { value: 'must', words: 'They must', hint: 'No part of them goes to waste' },
          { value: 'some', words: 'Some must' },
        ]}
        chosen={keep === 'must' ? 'must' : isRecord(keep) ? 'some' : 'may'}
        onChoose={(value) => setBelow(scope, 'keep', value === 'some' ? { head: 'must' } : value)}
      />
      {isRecord(keep) &&
        hemmed.map(([side, words]) => (
          <Tick
            key={side}
            scope={scope}
            name={`keep.${side}`}
            label={`${words} must stay`}
            ticked={keep[side] === 'must'}
            onTick={(on) => setBelow(scope, `keep.${side}`, on ? 'must' : 'may')}
          />
        ))}
    </>
  )
}

function PrintWay({ scope }: { readonly scope: Scope }): ComponentChildren {
  const [unsure, setUnsure] = useState(false)
  const print = below(scope, 'print')
  const way = textOf(isRecord(print) ? print.way : print)
  const choose = (value: unknown): void => {
    setUnsure(value === 'unsure')
    setBelow(scope, 'print', { ...(isRecord(print) ? print : {}), way: value === 'unsure' ? 'one-way' : value })
  }
  return (
    <Choice
      scope={scope}
      name="print"
      label="Does the print have a right way up?"
      hint={way === '' ? 'Until you choose, it is taken as plain cloth' : undefined}
      options={[
        { value: 'plain', words: 'Plain cloth' },
        { value: 'two-way', words: 'It looks the same upside down' },
        { value: 'one-way', words: 'It has a top' },
        { value: 'unsure', words: 'I do not know', hint: 'It is treated as having a top' },
      ]}
      chosen={unsure && way === 'one-way' ? 'unsure' : way}
      onChoose={choose}
    />
  )
}

const CAUTIOUS = '5 %'

function Shrinkage({ scope }: { readonly scope: Scope }): ComponentChildren {
  const [unsure, setUnsure] = useState(false)
  const shrinks = below(scope, 'shrinks')
  const both = isRecord(shrinks) ? shrinks : {}
  const cautious = both.along === CAUTIOUS && both.across === CAUTIOUS
  return (
    <>
      <div class="pair">
        <TextField scope={scope} name="shrinks.along" label="Shrinks along the selvedge (optional)" kind="percent" />
        <TextField scope={scope} name="shrinks.across" label="Shrinks across (optional)" kind="percent" />
      </div>
      <Tick
        scope={scope}
        name="shrinks-unsure"
        label="I do not know how much it shrinks"
        hint="5 % is taken each way; change it when you have washed a sample"
        ticked={unsure && cautious}
        onTick={(on) => {
          setUnsure(on)
          setBelow(scope, 'shrinks', on ? { along: CAUTIOUS, across: CAUTIOUS } : undefined)
        }}
      />
    </>
  )
}

function More({ scope }: { readonly scope: Scope }): ComponentChildren {
  const [all, setAll] = useState(false)
  return (
    <>
      <p>
        <button type="button" class="link" aria-expanded={all} onClick={() => setAll(!all)}>
          {all ? 'Hide these again' : 'Change how it is sold, its ends, edges or flaws'}
        </button>
      </p>
      {all && <SpecFields scope={scope} specs={MORE_CLOTH_FIELDS} />}
      {all && <Flaws scope={scope} />}
    </>
  )
}

const FLAW_BOXES = [
  ['x', 'From the left'],
  ['y', 'From the head or cut end'],
  ['width', 'Width'],
  ['length', 'Length'],
] as const

function Flaws({ scope }: { readonly scope: Scope }): ComponentChildren {
  const flaws = listOf(below(scope, 'flaws'))
  return (
    <fieldset class="widths" id={fieldId(scope, 'flaws')} tabIndex={-1}>
      <legend>Places to keep clear of</legend>
      <p class="hint">A stain, a hole or a mend, as measured before washing</p>
      {flaws.map((_, n) => (
        <fieldset class="pair" key={n}>
          <legend class="unseen">Place {n + 1}</legend>
          {FLAW_BOXES.map(([key, words]) => (
            <LengthField key={key} scope={scope} name={`flaws.${n}.${key}`} label={words} />
          ))}
          <button type="button" class="link low" onClick={() => setBelow(scope, `flaws.${n}`, undefined)}>
            Take out<span class="unseen"> place {n + 1}</span>
          </button>
        </fieldset>
      ))}
      <p>
        <button
          type="button"
          class="link"
          onClick={() =>
            setBelow(scope, 'flaws', [...flaws, { x: '20 cm', y: '20 cm', width: '5 cm', length: '5 cm' }])
          }
        >
          Add a place
        </button>
      </p>
    </fieldset>
  )
}

/** What a cloth is called when it is new: the first of these names that is free. */
export function freshCloth(from: 'bolt' | 'sheet' | 'remnant', taken: readonly string[]): Record<string, unknown> {
  const base = from === 'bolt' ? 'cloth' : from === 'sheet' ? 'old sheets' : 'remnant'
  const name = [base, ...Array.from({ length: 100 }, (_, n) => `${base} ${n + 2}`)].find((one) => !taken.includes(one))
  if (from === 'bolt') return { name, from, widths: ['150 cm'], 'sold-by': '10 cm', 'spare-each-end': '5 cm' }
  if (from === 'remnant') return { name, from, size: '110 x 140 cm', selvedges: 'none' }
  return {
    name,
    from,
    size: '230 x 260 cm',
    count: 1,
    hems: { head: '10 cm', foot: '2.5 cm', left: 'selvedge', right: 'selvedge' },
    keep: 'may',
  }
}
