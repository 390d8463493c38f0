import { createMemoryRecords } from '#server/records/memory.ts'
import { registerRecordsContract } from '#tests/server/records/contract.ts'

registerRecordsContract('memory', createMemoryRecords)
