import { parsePlan, readPlanObject, writeLayout, writePlan } from '@lengthwise/plan-file'
import { plan } from '@lengthwise/planner'
import type { Ask, Tell } from './messages.ts'

/** Reading, laying out and writing happen here, so that the page answers every key at once; the page ends the worker to stop it. */
const tell = (message: Tell): void => postMessage(message)

addEventListener('message', (event: MessageEvent<Ask>) => {
  try {
    tell(answer(event.data))
  } catch (fault) {
    tell({ tell: 'fault', message: fault instanceof Error ? fault.message : String(fault) })
  }
})

function answer(asked: Ask): Tell {
  switch (asked.ask) {
    case 'plan': {
      const order = readPlanObject(asked.plan)
      if (!order.ok) return { tell: 'problems', problems: order.problems }
      const result = plan(order.value, {
        onProgress: (progress) => tell({ tell: 'progress', words: progress.words }),
        onBetter: (better) => tell({ tell: 'better', result: better }),
      })
      return { tell: 'done', result }
    }
    case 'open':
      return { tell: 'opened', outcome: parsePlan(asked.text) }
    case 'write':
      return { tell: 'text', text: writePlan(asked.plan) }
    case 'layout':
      return { tell: 'text', text: writeLayout(asked.result) }
  }
}
