/**
 * A drawing on paper or screen: marks in millimetres from the top left corner of a page, y downwards.
 * The same scene is written as SVG and as PDF. Black only; weights in millimetres.
 */
export interface Scene {
  readonly title: string
  /** BCP 47 */
  readonly language: string
  readonly paper: 'a4' | 'letter'
  /** from the plan, ISO 8601; null: no date is printed */
  readonly date: string | null
  readonly pages: readonly Page[]
}

export interface Page {
  readonly kind: 'before' | 'pieces' | 'whole' | 'map' | 'order' | 'sewing' | 'widths' | 'slips'
  readonly width: number
  readonly height: number
  /** groups in reading order */
  readonly parts: readonly Part[]
}

/** A part of a page with its role for those who hear the page. `figure` needs `alt`. */
export interface Part {
  readonly role: 'heading-1' | 'heading-2' | 'paragraph' | 'list-item' | 'figure' | 'table' | 'artifact'
  readonly alt?: string
  readonly marks: readonly Mark[]
  /** table: rows of cells; marks of the table are in the cells */
  readonly rows?: readonly {
    readonly cells: readonly { readonly header: boolean; readonly marks: readonly Mark[] }[]
  }[]
}

export type Weight = 500 | 700

export type Mark =
  | {
      readonly kind: 'line'
      readonly x1: number
      readonly y1: number
      readonly x2: number
      readonly y2: number
      readonly weight: number
      readonly dash?: readonly number[]
      readonly cap?: 'butt' | 'round'
    }
  /** many short lines in one stroke: hatches, points (zero length with round caps) */
  | {
      readonly kind: 'lines'
      readonly segments: readonly (readonly [x1: number, y1: number, x2: number, y2: number])[]
      readonly weight: number
      readonly cap?: 'butt' | 'round'
    }
  | {
      readonly kind: 'path' /** closed polygon when `closed` */
      readonly points: readonly (readonly [number, number])[]
      readonly closed: boolean
      readonly weight: number
      readonly fill: 'none' | 'ink' | 'paper'
    }
  | {
      readonly kind: 'circle'
      readonly x: number
      readonly y: number
      readonly r: number
      readonly weight: number
      readonly fill: 'none' | 'ink' | 'paper'
    }
  | {
      readonly kind: 'text'
      readonly x: number
      readonly y: number /** baseline start, middle or end at (x, y) */
      readonly anchor: 'start' | 'middle' | 'end' /** height of capitals */
      readonly capital: number
      readonly weight: Weight
      readonly text: string /** 90: reads from bottom to top */
      readonly turn?: 0 | 90
      /** 'paper': white on ink; default ink */
      readonly ink?: 'ink' | 'paper'
    }

/** One picture without pages, for the screen; millimetres at the asked scale. */
export interface Figure {
  readonly width: number
  readonly height: number
  readonly alt: string
  readonly marks: readonly Mark[]
  /** where each piece, remnant and division lies in the picture, for linking lists to the drawing */
  readonly spots: readonly {
    readonly kind: 'piece' | 'remnant' | 'division'
    readonly name: string
    readonly x: number
    readonly y: number
    readonly width: number
    readonly height: number
  }[]
}

export interface MapOptions {
  readonly paper: 'a4' | 'letter'
  readonly large?: boolean
  /** lengths are printed in this unit; default the plan's */
  readonly unit?: 'cm' | 'mm' | 'in'
}

export interface FigureOptions {
  /** picture millimetres for one metre of cloth */
  readonly mmPerMetre: number
  readonly unit?: 'cm' | 'mm' | 'in'
  /** smallest capital height allowed, in picture millimetres */
  readonly smallestCapital: number
  /** show the cloth after the first `done` divisions, the next one emphasised; null: the whole map */
  readonly done?: number | null
  /** false for pictures of widths side by side: numbers only, no flags or rulers */
  readonly full?: boolean
}
