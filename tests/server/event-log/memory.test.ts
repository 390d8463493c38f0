import { registerLogContract } from '#tests/server/event-log/contract.ts'
import { createMemoryLog } from '#tests/support/memory-log.ts'

registerLogContract('memory', () => createMemoryLog())
