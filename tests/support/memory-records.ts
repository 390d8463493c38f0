import type { KeptRecord, ServiceRecords } from '#server/records/port.ts'

/** Service records that last as long as the process: for tests and simulations. */
export const createMemoryRecords = (): ServiceRecords => {
  const kept = new Map<string, { readonly revision: number; readonly body: string }>()
  return {
    async put(record) {
      const revision = 1 + (kept.get(record.service)?.revision ?? 0)
      kept.set(record.service, { revision, body: JSON.stringify(record) })
      return revision
    },
    async list() {
      return [...kept.values()]
        .map(({ revision, body }): KeptRecord => ({ revision, record: JSON.parse(body) }))
        .sort((one, other) => one.record.openedAt - other.record.openedAt)
    },
  }
}
