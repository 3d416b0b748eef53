import type { ComponentChildren } from 'preact'
import { Component } from 'preact'

/** A component that is drawn anew only when one of its properties has changed; functions are taken to do the same as before. */
export function memo<Props extends object>(draw: (props: Props) => ComponentChildren) {
  return class Memo extends Component<Props> {
    override shouldComponentUpdate(next: Props): boolean {
      const before = this.props as Props
      return (Object.keys(next) as (keyof Props)[]).some(
        (key) => next[key] !== before[key] && typeof next[key] !== 'function',
      )
    }

    override render(): ComponentChildren {
      const Draw = draw
      return <Draw {...(this.props as Props)} />
    }
  }
}
