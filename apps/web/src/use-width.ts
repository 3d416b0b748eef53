import type { RefObject } from 'preact'
import { useEffect, useRef, useState } from 'preact/hooks'

/** The width of an element in pixels, kept up to date: a drawing is set anew for its room, never shrunk. */
export function useWidth<E extends HTMLElement>(): readonly [RefObject<E | null>, number] {
  const ref = useRef<E | null>(null)
  const [width, setWidth] = useState(0)
  useEffect(() => {
    const element = ref.current
    if (element === null) return
    const watch = new ResizeObserver(([entry]) => entry && setWidth(Math.floor(entry.contentRect.width)))
    watch.observe(element)
    return () => watch.disconnect()
  }, [])
  return [ref, width]
}
