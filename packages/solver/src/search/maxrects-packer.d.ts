declare module 'maxrects-packer/dist/maxrects-packer.mjs' {
  export class Rectangle {
    constructor(width: number, height: number)
    x: number
    y: number
    width: number
    height: number
    /** turned by 90° against the size it was made with */
    rot: boolean
    allowRotation: boolean
    data: unknown
  }
  export class MaxRectsPacker {
    constructor(
      width: number,
      height: number,
      padding: number,
      options: { smart: boolean; pot: boolean; square: boolean; allowRotation: boolean; logic: number },
    )
    bins: { rects: Rectangle[] }[]
    addArray(rects: Rectangle[]): void
  }
}
