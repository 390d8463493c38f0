import type { ApartKind } from '#lib/access/apart.ts'
import type { Guests } from '#server/guests/port.ts'

interface Row {
  readonly service: string
  readonly command: string
  readonly kind: ApartKind
  readonly body: string
}

/** What is said of people, as long as the process lasts: for tests and simulations. */
export const createMemoryGuests = (): Guests => {
  let rows: readonly Row[] = []
  const removed = (goes: (row: Row) => boolean): number => {
    const before = rows.length
    rows = rows.filter((row) => !goes(row))
    return before - rows.length
  }
  return {
    async put(service, command, said) {
      const has = (kind: ApartKind) =>
        rows.some((row) => row.service === service && row.command === command && row.kind === kind)
      rows = [
        ...rows,
        ...said.filter(({ kind }) => !has(kind)).map((one) => ({ service, command, ...one })),
      ]
    },
    async of(service, kind) {
      const found = rows.filter((row) => row.service === service && row.kind === kind)
      return Object.fromEntries(found.map(({ command, body }) => [command, body]))
    },
    async services() {
      return [...new Set(rows.map(({ service }) => service))].sort()
    },
    async counts() {
      const keys = [...new Set(rows.map(({ service, kind }) => `${service}\n${kind}`))].sort()
      return keys.flatMap((key) => {
        const same = rows.filter(({ service, kind }) => `${service}\n${kind}` === key)
        const [first] = same
        return first ? [{ service: first.service, kind: first.kind, count: same.length }] : []
      })
    },
    async sweep(service, keep) {
      return removed((row) => row.service === service && !keep.has(row.command))
    },
    async forget(service, kinds, commands) {
      return removed(
        (row) =>
          row.service === service &&
          kinds.includes(row.kind) &&
          (commands === undefined || commands.includes(row.command)),
      )
    },
    async close() {
      rows = []
    },
  }
}
