import { registerGuestsContract } from '#tests/server/guests/contract.ts'
import { createMemoryGuests } from '#tests/support/memory-guests.ts'

registerGuestsContract('memory', createMemoryGuests)
