import { expect, it } from 'vitest'
import { proveHouseDays } from '#tests/prove/house-days.ts'

it('[LA51] random days of two stations, two servers and a larder, with crashes: food is conserved to the milligram, no lot is taken twice, nothing past its date is taken or sold', async () => {
  const { figures, failures } = await proveHouseDays(60, 15)
  console.log(figures.join('\n'))
  expect(failures).toEqual([])
}, 120_000)
