import { isRecord, textOf } from './plan.ts'

const SIZE_IN_CM = /^\d+(\.\d+)?(?: x \d+(\.\d+)?)* cm$/

/** Sizes to start from, given in centimetres, as the inches one would choose instead: large ones whole, small ones in quarters and eighths. */
export function roundInches<T>(value: T, key = ''): T {
  if (Array.isArray(value)) return value.map((one) => roundInches(one, key)) as T
  if (isRecord(value))
    return Object.fromEntries(Object.entries(value).map(([name, one]) => [name, roundInches(one, name)])) as T
  const text = textOf(value)
  if (!SIZE_IN_CM.test(text)) return value
  if (key === 'sold-by') return inShopsStep(text, 'in') as T
  return `${text.slice(0, -3).split(' x ').map(inInches).join(' x ')} in` as T
}

function inInches(centimetres: string): string {
  const inches = Number(centimetres) / 2.54
  const finest = inches < 1.5 ? 8 : inches < 8 ? 4 : 1
  const parts = Math.max(1, Math.round(inches * finest))
  const whole = Math.floor(parts / finest)
  const left = parts % finest
  const half = left % 2 === 0 ? 2 : 1
  const quarter = left % 4 === 0 ? 4 : half
  const fraction = left === 0 ? '' : `${left / quarter}/${finest / quarter}`
  return [whole === 0 ? '' : whole, fraction].filter((part) => part !== '').join(' ')
}

const USUAL_STEPS = { metric: '10 cm', in: '1/8 yd' } as const

/** The step in which a shop sells, where it is the usual one: a decimetre, or an eighth of a yard. */
export function inShopsStep(step: unknown, unit: 'cm' | 'mm' | 'in'): unknown {
  const [from, to] = unit === 'in' ? [USUAL_STEPS.metric, USUAL_STEPS.in] : [USUAL_STEPS.in, USUAL_STEPS.metric]
  return textOf(step).trim() === from ? to : step
}
