import { createMemoryLog } from '#server/event-log/memory.ts'
import { registerLogContract } from '#tests/server/event-log/contract.ts'

registerLogContract('memory', () => createMemoryLog())
