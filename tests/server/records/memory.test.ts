import { registerRecordsContract } from '#tests/server/records/contract.ts'
import { createMemoryRecords } from '#tests/support/memory-records.ts'

registerRecordsContract('memory', createMemoryRecords)
