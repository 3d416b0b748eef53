/** Numbers, smallest first (binary heap, Williams 1964). */
export class Heap {
  private readonly items: number[] = []

  push(value: number): void {
    const { items } = this
    let i = items.length
    items.push(value)
    while (i > 0) {
      const parent = (i - 1) >> 1
      if (items[parent]! <= value) break
      items[i] = items[parent]!
      i = parent
    }
    items[i] = value
  }

  pop(): number | undefined {
    const { items } = this
    const top = items[0]
    const last = items.pop()
    if (last === undefined || items.length === 0) return top
    let i = 0
    for (;;) {
      let child = 2 * i + 1
      if (child >= items.length) break
      if (child + 1 < items.length && items[child + 1]! < items[child]!) child++
      if (items[child]! >= last) break
      items[i] = items[child]!
      i = child
    }
    items[i] = last
    return top
  }
}
