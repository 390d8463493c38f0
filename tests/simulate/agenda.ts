/** What happens when: a heap by minute, in the order of noting where the minute is the same. */
export interface Agenda {
  readonly at: (minute: number, act: (minute: number) => void) => void
  /** Runs all that is noted before a minute, and what that notes. */
  readonly runUntil: (minute: number) => void
}

interface Entry {
  readonly minute: number
  readonly order: number
  readonly act: (minute: number) => void
}

export const createAgenda = (): Agenda => {
  const heap: Entry[] = []
  let noted = 0
  const isBefore = (one: Entry | undefined, other: Entry | undefined): boolean =>
    one !== undefined &&
    other !== undefined &&
    (one.minute < other.minute || (one.minute === other.minute && one.order < other.order))
  const swap = (i: number, j: number): void => {
    const [one, other] = [heap[i], heap[j]]
    if (one && other) {
      heap[i] = other
      heap[j] = one
    }
  }
  const take = (): Entry | undefined => {
    const first = heap[0]
    const last = heap.pop()
    if (heap.length === 0 || last === undefined) return first
    heap[0] = last
    for (let i = 0; ; ) {
      let least = i
      for (const child of [2 * i + 1, 2 * i + 2])
        if (isBefore(heap[child], heap[least])) least = child
      if (least === i) return first
      swap(i, least)
      i = least
    }
  }
  return {
    at: (minute, act) => {
      noted += 1
      heap.push({ minute, order: noted, act })
      for (let i = heap.length - 1; i > 0; ) {
        const parent = (i - 1) >> 1
        if (!isBefore(heap[i], heap[parent])) break
        swap(i, parent)
        i = parent
      }
    },
    runUntil: (minute) => {
      while (heap[0] !== undefined && heap[0].minute < minute) {
        const entry = take()
        entry?.act(entry.minute)
      }
    },
  }
}
