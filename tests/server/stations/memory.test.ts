import { registerStationsContract } from '#tests/server/stations/contract.ts'
import { createMemoryStations } from '#tests/support/memory-stations.ts'

registerStationsContract('memory', (parse) => createMemoryStations({ parse }))
