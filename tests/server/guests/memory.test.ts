import { createMemoryGuests } from '#server/guests/memory.ts'
import { registerGuestsContract } from '#tests/server/guests/contract.ts'

registerGuestsContract('memory', createMemoryGuests)
