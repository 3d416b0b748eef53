import { cuttingMap, shopNote, slips, toCsv } from '@lengthwise/drawing'
import type { Result } from '@lengthwise/planner'
import type { ComponentChildren } from 'preact'
import { useMemo, useState } from 'preact/hooks'
import { askOnce } from './answer.ts'
import { fileName, kept, save } from './files.ts'
import { toPdf } from './pdf.ts'
import type { Plan } from './plan.ts'
import { textOf } from './plan.ts'
import { lettersMissing, withBoxes } from './printed-letters.ts'
import { canStay, stay } from './stay.ts'

type Paper = 'a4' | 'letter'

/** Everything that can be taken along: the cutting map, slips, the shop note, the plan, figures for one's own books. */
export function TakeToTheTable(props: {
  readonly plan: Plan
  readonly result: Result | null
  readonly onForget: () => void
}): ComponentChildren {
  const { plan, result } = props
  const [paper, setPaper] = useState<Paper>('a4')
  const [large, setLarge] = useState(false)
  const [said, setSaid] = useState('')
  const title = textOf(plan.title)
  const laid = result !== null && result.status === 'laid' ? result : null
  const doing = (words: string, what: () => Promise<string>): void => {
    setSaid(words)
    what().then(setSaid, (fault) => setSaid(`It could not be done: ${fault instanceof Error ? fault.message : fault}`))
  }
  const pdf = (kind: 'map' | 'slips', of: Result): void =>
    doing('Drawing the pages', async () => {
      const scene = kind === 'map' ? cuttingMap(of, { paper, large }) : slips(of, { paper, large })
      save(fileName(title, kind === 'map' ? '.pdf' : '-slips.pdf'), 'application/pdf', await toPdf(withBoxes(scene)))
      return kind === 'map' ? 'The cutting map is saved' : 'The slips are saved'
    })
  const file = (what: 'plan' | 'layout', of: Result | null): void =>
    doing('Writing', async () => {
      const told = await askOnce(
        what === 'plan' || of === null ? { ask: 'write', plan } : { ask: 'layout', result: of },
      )
      if (told.tell !== 'text') throw new Error(told.tell === 'fault' ? told.message : 'no text came back')
      if (what === 'plan') save(fileName(title, '.yaml'), 'application/yaml', told.text)
      else save(fileName(title, '-layout.json'), 'application/json', told.text)
      return what === 'plan' ? 'The plan is saved' : 'The layout is saved'
    })
  const share = (): void =>
    doing('Writing', async () => {
      const told = await askOnce({ ask: 'write', plan })
      if (told.tell !== 'text') throw new Error('no text came back')
      await navigator.share({ files: [planFile(title, told.text)], title })
      return 'The plan is handed on'
    })
  const strange = useMemo(() => lettersMissing(plan), [plan])
  const note = useMemo(() => (laid ? shopNote(laid) : ''), [laid])
  return (
    <>
      {laid ? (
        <>
          <div class="pair">
            <Radios
              name="paper"
              label="Paper"
              options={[
                ['a4', 'A4'],
                ['letter', 'US Letter'],
              ]}
              chosen={paper}
              onChoose={(value) => setPaper(value as Paper)}
            />
            <Radios
              name="lettering"
              label="Lettering"
              options={[
                ['usual', 'Usual'],
                ['large', 'Large'],
              ]}
              chosen={large ? 'large' : 'usual'}
              onChoose={(value) => setLarge(value === 'large')}
            />
          </div>
          <p class="buttons">
            <button type="button" class="filled" onClick={() => pdf('map', laid)}>
              Save the cutting map (PDF)
            </button>
            <button type="button" class="outlined" onClick={() => pdf('slips', laid)}>
              Save slips for the pieces (PDF)
            </button>
          </p>
          <p class="hint">Print it at full size. The page has a line to check with: it measures 100 mm.</p>
          {strange.length > 0 && (
            <p class="hint">
              A box is printed in place of {strange.slice(0, 12).join(' ')}
              {strange.length > 12 ? ' and others' : ''}, which the typeface in this page lacks.
            </p>
          )}
          <h3>For the shop</h3>
          {/* biome-ignore lint/a11y/noNoninteractiveTabindex: what can be scrolled must be reached by the keyboard */}
          <section class="note" tabIndex={0} aria-label="Shop note">
            <pre>{note}</pre>
          </section>
          <p class="buttons">
            <button
              type="button"
              class="outlined"
              onClick={() =>
                doing('Copying', async () => {
                  await navigator.clipboard.writeText(note)
                  return 'The shop note is copied'
                })
              }
            >
              Copy the shop note
            </button>
          </p>
        </>
      ) : (
        <p>As soon as there is a layout, its cutting map can be saved here.</p>
      )}
      <h3>Keep and share</h3>
      <p class="buttons">
        <button type="button" class="outlined" onClick={() => file('plan', null)}>
          Save this plan
        </button>
        {laid && (
          <>
            <button
              type="button"
              class="outlined"
              onClick={() => save(fileName(title, '.csv'), 'text/csv', toCsv(laid))}
            >
              Save the cut table (CSV)
            </button>
            <button type="button" class="outlined" onClick={() => file('layout', laid)}>
              Save the layout (JSON)
            </button>
          </>
        )}
      </p>
      <p class="hint">The plan is a small text file. The command lengthwise reads the same file.</p>
      <p class="buttons">
        {canShare() && (
          <button type="button" class="link" onClick={share}>
            Share this plan
          </button>
        )}
        <button
          type="button"
          class="link"
          onClick={() =>
            setSaid(
              kept.write(JSON.stringify(plan))
                ? 'The plan is kept in this browser until you let it be forgotten'
                : 'This browser does not allow it; save the plan as a file instead',
            )
          }
        >
          Keep this plan in this browser
        </button>
        <button
          type="button"
          class="link"
          onClick={() => {
            kept.forget()
            props.onForget()
            setSaid('What you typed is forgotten')
          }}
        >
          Forget what I typed
        </button>
        {canStay() && (
          <button
            type="button"
            class="link"
            onClick={() =>
              doing('Keeping the page', async () => {
                await stay()
                return 'The page is kept on this device and opens without a network'
              })
            }
          >
            Keep this page on this device
          </button>
        )}
      </p>
      <p role="status" class="said">
        {said}
      </p>
    </>
  )
}

const planFile = (title: string, text: string): File =>
  new File([text], fileName(title, '.yaml.txt'), { type: 'text/plain' })

/** Phones hand files to other programs; most desks do not. */
const canShare = (): boolean => navigator.canShare?.({ files: [planFile('plan', '')] }) ?? false

function Radios(props: {
  readonly name: string
  readonly label: string
  readonly options: readonly (readonly [string, string])[]
  readonly chosen: string
  readonly onChoose: (value: string) => void
}): ComponentChildren {
  return (
    <fieldset class="choice">
      <legend>{props.label}</legend>
      <div class="options row">
        {props.options.map(([value, words]) => (
          <label key={value} class="option">
            <input
              type="radio"
              name={props.name}
              checked={props.chosen === value}
              onChange={() => props.onChoose(value)}
            />
            <span>{words}</span>
          </label>
        ))}
      </div>
    </fieldset>
  )
}
