import { createMemoryPassphrases } from '#server/in-charge/memory.ts'
import { registerPassphrasesContract } from '#tests/server/in-charge/contract.ts'

registerPassphrasesContract('memory', createMemoryPassphrases)
