import { describe, expect, it } from 'vitest'
import type { ServiceRecords } from '#server/records/port.ts'
import { recordOf } from '#tests/support/records.ts'

/** What every store of service records does. `open` gives a new, empty one. */
export const registerRecordsContract = (kind: string, open: () => ServiceRecords): void => {
  describe(`the ${kind} records`, () => {
    it('[Z47] keep a record as it was put, the oldest service first', async () => {
      const records = open()
      expect(await records.list()).toEqual([])
      expect(await records.put(recordOf(2, 5))).toBe(1)
      expect(await records.put(recordOf(1, 3))).toBe(1)
      expect(await records.list()).toEqual([
        { revision: 1, record: recordOf(1, 3) },
        { revision: 1, record: recordOf(2, 5) },
      ])
    })

    it('[Z47] keep one that is made anew as a revision, and read the newest', async () => {
      const records = open()
      await records.put(recordOf(1, 3))
      expect(await records.put(recordOf(1, 4))).toBe(2)
      expect(await records.list()).toEqual([{ revision: 2, record: recordOf(1, 4) }])
    })
  })
}
