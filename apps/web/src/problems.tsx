import type { Problem } from '@lengthwise/units'
import type { ComponentChildren } from 'preact'
import { useEffect, useRef } from 'preact/hooks'
import { idOf } from './scope.ts'

/** Everything there is to mend, each line leading to its field; takes the keyboard when it was asked for. */
export function ProblemSummary(props: {
  readonly problems: readonly Problem[]
  /** says what the thing or cloth of a problem is called; empty where it has no name */
  readonly nameOf?: (path: string) => string
  readonly focus: boolean
  readonly lead?: string
}): ComponentChildren {
  const box = useRef<HTMLElement>(null)
  const there = props.problems.length > 0
  useEffect(() => {
    if (props.focus && there) box.current?.focus()
  }, [props.focus, there])
  if (!there) return null
  return (
    <section class="summary" ref={box} tabIndex={-1} aria-labelledby="problems">
      <h2 id="problems">There is a problem</h2>
      {props.lead && <p>{props.lead}</p>}
      <ul>
        {props.problems.slice(0, MOST).map((problem) => (
          <li key={`${problem.path} ${problem.code}`}>
            <ProblemLink problem={problem} name={props.nameOf?.(problem.path) ?? ''} />
          </li>
        ))}
      </ul>
      {props.problems.length > MOST && <p>And {props.problems.length - MOST} more.</p>}
    </section>
  )
}

const MOST = 20

/** Goes to the field of a problem, or to the closest thing around it that is on the page. */
function ProblemLink(props: { readonly problem: Problem; readonly name: string }): ComponentChildren {
  const { problem, name } = props
  const words = `${name === '' ? '' : `${name}: `}${problem.message}. ${problem.hint}`
  if (problem.path === '') return <span>{words}</span>
  return (
    <a
      href={`#${idOf(problem.path)}`}
      onClick={(event) => {
        event.preventDefault()
        goTo(problem.path)
      }}
    >
      {words}
    </a>
  )
}

export function goTo(path: string): void {
  for (let at = path; at !== ''; at = at.replace(/(\.[^.[\]]+|\[\d+\])$/, '')) {
    const field = document.getElementById(idOf(at))
    if (field !== null) {
      field.scrollIntoView({ block: 'center' })
      field.focus()
      return
    }
    if (!/[.[]/.test(at)) return
  }
}

// the heading is there after the page has been drawn anew
export function focusSoon(path: string): void {
  setTimeout(() => goTo(path), 50)
}
