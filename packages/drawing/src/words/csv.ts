import type { Result } from '@lengthwise/planner'
import type { Length } from '@lengthwise/units'
import { printMoney } from '@lengthwise/units'
import type { Unit } from '../measure.ts'
import { measureIn } from '../measure.ts'

/**
 * Pieces to cut and what to buy, as comma-separated values (RFC 4180) in one table. Cells that a spreadsheet would run
 * as a formula begin with an apostrophe.
 */
export function toCsv(result: Result, unit?: Unit): string {
  const measure = measureIn(unit ?? result.order.measureIn)
  const rows: string[][] = [
    ['kind', 'number', 'name', 'item', 'cloth', `width ${measure.unit}`, `length ${measure.unit}`, 'quantity', 'cost'],
  ]
  for (const p of result.pieces)
    rows.push([
      'piece',
      p.label,
      p.words,
      p.item,
      p.cloth,
      measure.bare(p.cutWidth),
      measure.bare(p.cutLength),
      '1',
      '',
    ])
  for (const cloth of result.cloths)
    for (const r of cloth.remnants)
      rows.push(['remnant', r.name, '', '', cloth.name, measure.bare(r.width), measure.bare(r.length), '1', ''])
  for (const row of result.buy) {
    const cost = row.cost === null ? '' : printMoney(row.cost)
    const isLength = row.unit === 'mm'
    const width =
      row.what === 'cloth'
        ? result.cloths.find((each) => each.name === row.name && each.buy !== null)?.buy?.width
        : undefined
    rows.push([
      `buy ${row.what}`,
      '',
      row.name,
      '',
      row.what === 'cloth' ? row.name : '',
      width === undefined ? '' : measure.bare(width),
      isLength ? measure.bare(row.quantity as Length) : '',
      isLength ? '1' : `${row.quantity}`,
      cost,
    ])
  }
  return rows.map((row) => `${row.map(cell).join(',')}\r\n`).join('')
}

function cell(value: string): string {
  // spreadsheets also run formulas behind leading spaces, tabs and line ends, and read full-width signs as signs
  const safe = /^\s*[=+\-@\uff1d\uff0b\uff0d\uff20]|^[\t\r\n]/.test(value) ? `'${value}` : value
  return /[",\r\n]/.test(safe) || safe !== value ? `"${safe.replace(/"/g, '""')}"` : safe
}
