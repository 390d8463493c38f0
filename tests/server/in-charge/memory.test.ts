import { registerPassphrasesContract } from '#tests/server/in-charge/contract.ts'
import { createMemoryPassphrases } from '#tests/support/memory-in-charge.ts'

registerPassphrasesContract('memory', createMemoryPassphrases)
