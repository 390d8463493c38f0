import { createMemoryStations } from '#server/stations/memory.ts'
import { registerStationsContract } from '#tests/server/stations/contract.ts'

registerStationsContract('memory', (parse) => createMemoryStations({ parse }))
